namespace Warmup.Research;

/// <summary>What lines show of the rule that made them: shapes that may be figures, and which combinators can have had a part.</summary>
internal sealed class LineFeatures
{
    private const int MostFigures = 36;
    private const int MostShapes = 12;
    private const int LongestShape = 16;

    private readonly Scale _scale;
    private readonly HashSet<string> _seen = [];
    private readonly List<Pattern> _figures = [];

    public LineFeatures(Line[] lines, Scale scale)
    {
        _scale = scale;
        Lines = lines;
        var notes = lines.SelectMany(l => l.Notes.AsEnumerable()).ToList();
        Lengths = notes.Select(n => n.Length).Distinct().Order().ToList();
        HasRests = notes.Exists(n => n.Rest != Rational.Zero);
        HasRepeatedNotes = lines.Any(l => l.Notes.Zip(l.Notes.Skip(1)).Any(p => p.First.Tone == p.Second.Tone));
        HasTurns = lines.Any(l => l.Notes.Count > 2 && l.Notes[0].Tone.Degree.Letter == l.Notes[^1].Tone.Degree.Letter);
        var home = notes.GroupBy(n => n.Tone).MaxBy(g => g.Count())!;
        HasHome = notes.Count < 4 || 4 * home.Count() >= notes.Count;

        // The first and the last line as they stand, then every shape that there is, then what can be seen through combinators.
        var distinct = lines.DistinctBy(l => Shape(TonesOf(l))).Take(MostShapes).Select(TonesOf).ToList();
        var whole = (List<ScaleTone[]>)[TonesOf(lines[0]), TonesOf(lines[^1]), .. distinct];
        AddFigures(whole[0], false);
        AddFigures(whole[1], false);
        Look(whole[0]);
        whole.ForEach(tones => AddFigures(tones, false));
        whole.ForEach(Look);
        AddFigures(TonesOf(lines[0]), true);
        AddFigures(TonesOf(lines[^1]), true);

        // A figure may have been split: its pieces put together.
        for (var pieces = 2; pieces <= Math.Min(4, lines.Length); pieces++)
        {
            AddFigures([.. lines.Take(pieces).SelectMany(TonesOf)], false);
        }
    }

    public Scale Scale => _scale;

    public Line[] Lines { get; }

    /// <summary>Figures that the lines suggest.</summary>
    public IReadOnlyList<Pattern> Figures => _figures;

    public List<Rational> Lengths { get; }

    public bool HasLengths => Lengths.Count > 1 || Lengths[0] != Rational.One;

    public bool HasRests { get; }

    public bool HasRepeatedNotes { get; }

    public bool HasTurns { get; }

    /// <summary>Whether a tone comes back often enough for a return to a fixed step.</summary>
    public bool HasHome { get; }

    private static ScaleTone[] TonesOf(Line line) => line.Notes.ConvertAll(n => n.Tone).AsSpan().ToArray();

    private void Look(ScaleTone[] tones)
    {
        for (var times = 2; times <= 3; times++)
        {
            if (Contracted(tones, times) is { } contracted)
            {
                AddFigures(contracted, false);
            }
        }

        if (tones.Length % 2 == 1 && tones.Length > 2 && tones[0].Degree.Letter == tones[^1].Degree.Letter)
        {
            AddFigures(tones[..((tones.Length / 2) + 1)], false);
        }

        if (tones.Length >= 4)
        {
            AddRows(tones);
            AddFigures([.. tones.Where((_, i) => i % 2 == 0)], false);
            AddFigures([.. tones.Where((_, i) => i % 2 == 1)], false);
        }
    }

    // Rows of a figure in one phrase: the first few notes, if as many notes after them are the same shape moved.
    private void AddRows(ScaleTone[] tones)
    {
        foreach (var direction in (ReadOnlySpan<ScaleDirection>)[ScaleDirection.Ascent, ScaleDirection.Descent])
        {
            if (Places(tones, direction) is not { } places)
            {
                continue;
            }

            for (var row = 1; row <= Math.Min(LongestShape, places.Length - 1); row++)
            {
                var next = places[row..Math.Min(places.Length, 2 * row)];
                if (next.Zip(places).All(p => p.First - p.Second == next[0] - places[0]) && next[0] != places[0])
                {
                    AddFigures(tones[..row], false);
                }
            }
        }
    }

    private void AddFigures(ScaleTone[] tones, bool turned)
    {
        if (tones.Length is 0 or > LongestShape)
        {
            return;
        }

        foreach (var (direction, high) in (ReadOnlySpan<(ScaleDirection, bool)>)[(ScaleDirection.Ascent, false), (ScaleDirection.Descent, false), (ScaleDirection.Ascent, true), (ScaleDirection.Descent, true)])
        {
            // In a list that zigzags a note has several places: the nearest to the tonic is tried first, then the nearest to the top.
            var top = _scale.List(direction).Top;
            if ((high && !_scale.IsVakra) || Places(tones, direction, high ? top : 0) is not { } places)
            {
                continue;
            }

            var falling = Array.ConvertAll(places, p => top - p);
            foreach (var steps in (ReadOnlySpan<int[]>)[places, Moved(places, places.Min()), falling, Moved(falling, falling.Min())])
            {
                Add(turned ? [.. Enumerable.Reverse(steps)] : steps);
            }
        }
    }

    private void Add(int[] steps)
    {
        if (_figures.Count < MostFigures
            && Array.TrueForAll(steps, s => Math.Abs(s) <= Pattern.WidestFigure)
            && _seen.Add(string.Join(' ', steps)))
        {
            _figures.Add(Pattern.Figure(steps));
        }
    }

    private string Shape(ScaleTone[] tones) => Places(tones, ScaleDirection.Ascent) is { } places ? string.Join(' ', Moved(places, places[0])) : string.Join(' ', tones);

    private static int[] Moved(int[] places, int by) => Array.ConvertAll(places, p => p - by);

    /// <summary>The places of tones in a list; of several each time the one nearest to the place before. None where a tone is missing.</summary>
    private int[]? Places(ScaleTone[] tones, ScaleDirection direction, int near = 0)
    {
        var list = _scale.List(direction);
        var places = new int[tones.Length];
        for (var i = 0; i < tones.Length; i++)
        {
            var before = i == 0 ? near : places[i - 1];
            int? nearest = null;
            for (var place = -2 * list.Top; place <= 3 * list.Top; place++)
            {
                if (list[place] is { } tone && tone == tones[i] && (nearest is null || Math.Abs(place - before) < Math.Abs(nearest.Value - before)))
                {
                    nearest = place;
                }
            }

            if (nearest is null)
            {
                return null;
            }

            places[i] = nearest.Value;
        }

        return places;
    }

    private static ScaleTone[]? Contracted(ScaleTone[] tones, int times)
    {
        if (tones.Length % times != 0)
        {
            return null;
        }

        for (var i = 0; i < tones.Length; i++)
        {
            if (tones[i] != tones[i - (i % times)])
            {
                return null;
            }
        }

        return [.. tones.Where((_, i) => i % times == 0)];
    }
}

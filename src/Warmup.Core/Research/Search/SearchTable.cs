namespace Warmup.Research;

/// <summary>
/// The small rules over the shapes that the lines show: primitives in each frame, with one or two layers of other combinators. Of rules
/// that sound alike the smallest stays.
/// </summary>
internal sealed class SearchTable
{
    private const int MostEntries = 60_000;
    private const int LongestLayered = 600;

    private readonly Dictionary<ulong, List<SearchEntry>> _bySound = [];
    private readonly Dictionary<ulong, List<(SearchEntry Entry, int Line)>> _byLine = [];
    private readonly HashSet<int> _lineLengths = [];
    private readonly Scale _scale;
    private int _count;

    /// <summary>Makes the table.</summary>
    /// <param name="features">What the lines show.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="size">The most words of a rule, 1 to 4.</param>
    /// <param name="cancellation">Stops the work.</param>
    public SearchTable(LineFeatures features, Scale scale, int size, CancellationToken cancellation)
    {
        _scale = scale;
        var layer = new List<SearchEntry>();
        foreach (var pattern in Frames(features, size).DistinctBy(p => p.Text))
        {
            if (pattern.TryExpand(scale, out var expansion, out _, cancellation) && Add(pattern, expansion!.Lines.AsSpan().ToArray()) is { } entry)
            {
                layer.Add(entry);
            }
        }

        // At most two layers: a third has so many rules that it is left to what can be taken off the lines.
        var combinators = Combinators(features);
        for (var depth = 1; depth <= Math.Min(2, size - 1); depth++)
        {
            var next = new List<SearchEntry>();
            foreach (var entry in layer)
            {
                cancellation.ThrowIfCancellationRequested();
                if (entry.Pattern.Nodes >= size || (depth == 2 && entry.Pattern.Nodes > 2))
                {
                    continue;
                }

                foreach (var combinator in combinators)
                {
                    if (Apply(combinator, entry) is { } made)
                    {
                        next.Add(made);
                    }
                }
            }

            layer = next;
        }

        foreach (var entry in _bySound.Values.SelectMany(e => e).OrderBy(e => e.Pattern.Nodes).ThenBy(e => e.Pattern.Text.Length).ThenBy(e => e.Pattern.Text, StringComparer.Ordinal))
        {
            for (var i = 0; i < entry.Lines.Length; i++)
            {
                _lineLengths.Add(entry.Lines[i].Notes.Count);
                var hash = Sound.HashOf(entry.Lines[i].Notes.AsSpan());
                if (!_byLine.TryGetValue(hash, out var places))
                {
                    _byLine[hash] = places = [];
                }

                places.Add((entry, i));
            }
        }
    }

    /// <summary>The lengths of the lines, in notes, longest first.</summary>
    public IEnumerable<int> LineLengths => _lineLengths.OrderDescending();

    /// <summary>Where notes stand as a line in the table; smallest rules first.</summary>
    public IReadOnlyList<(SearchEntry Entry, int Line)> Find(ReadOnlySpan<LineNote> notes) =>
        _byLine.TryGetValue(Sound.HashOf(notes), out var places) ? places : [];

    private static IEnumerable<Pattern> Frames(LineFeatures features, int size)
    {
        var asymmetric = !features.Scale.IsSymmetric;
        foreach (var primitive in (Pattern[])[Pattern.Run, Pattern.Ladder, .. features.Figures])
        {
            foreach (var reached in Reached(primitive))
            {
                foreach (var mirrored in (Pattern[])[reached, reached.Mirrored()])
                {
                    foreach (var swapped in asymmetric ? (Pattern[])[mirrored, mirrored.Swapped()] : [mirrored])
                    {
                        foreach (var turned in (Pattern[])[swapped, swapped.Reversed()])
                        {
                            if (turned.Nodes <= size)
                            {
                                yield return turned;
                            }
                        }
                    }
                }
            }
        }
    }

    private static IEnumerable<Pattern> Reached(Pattern primitive)
    {
        yield return primitive;
        for (var steps = 1; steps <= 3; steps++)
        {
            yield return primitive.Transposed(steps);
            yield return primitive.Transposed(-steps);
            yield return primitive.Above(steps);
            yield return primitive.Below(steps);
        }

        yield return primitive.Span(1, 0);
        yield return primitive.Span(0, -1);
    }

    private static List<UnaryPattern> Combinators(LineFeatures features)
    {
        var any = Pattern.Run;
        var list = new List<Pattern>
        {
            any.Ends(), any.EveryNth(2), any.EveryNth(3), any.Grow(), any.Windows(2), any.Windows(3), any.Windows(4), any.Split(2), any.Split(3), any.Split(4),
            any.Backwards(), any.Join(), any.UpDown(),
        };
        for (var first = 1; first <= 3; first++)
        {
            for (var last = first; last <= first + 3; last++)
            {
                list.Add(any.Notes(first, last));
            }
        }

        AddIf(features.HasTurns, any.ThereAndBack());
        AddIf(features.HasRepeatedNotes, any.EachNote(2), any.EachNote(3));
        AddIf(features.HasHome, any.Returning(0), any.Returning(1));
        AddIf(features.HasRests, any.Rest(1), any.Rest(2));
        if (features.HasLengths)
        {
            foreach (var length in features.Lengths.Where(l => l.IsInteger && l > Rational.One && l <= Pattern.MostUnits))
            {
                list.Add(any.Hold((int)length.Numerator - 1));
                list.Add(any.Stretch((int)length.Numerator));
            }

            for (var units = 2; units <= 8; units++)
            {
                list.Add(any.Fill(units));
            }

            AddIf(features.Lengths[0] < Rational.One, any.Shrink(2), any.Shrink(3));
        }

        return list.ConvertAll(p => (UnaryPattern)p);

        void AddIf(bool wanted, params ReadOnlySpan<Pattern> patterns)
        {
            if (wanted)
            {
                list.AddRange(patterns);
            }
        }
    }

    private SearchEntry? Apply(UnaryPattern combinator, SearchEntry entry)
    {
        if (entry.Lines.Length == 0 || _count >= MostEntries)
        {
            return null;
        }

        try
        {
            // An up-down needs the pattern's own rule; the others only need its lines.
            if (combinator is UpDownPattern)
            {
                var upDown = entry.Pattern.UpDown();
                return upDown.TryExpand(_scale, out var both, out _) ? Add(upDown, both!.Lines.AsSpan().ToArray()) : null;
            }

            if (entry.Pattern is UnaryPattern inner && NormalForm.Step(combinator, inner, out _, out _) != Rewrite.Stay)
            {
                return null;
            }

            var lines = combinator.Around(new FixedLines([.. entry.Lines])).Lines(Frame.Of(_scale), new Expander(default));
            return lines.Sum(l => l.Notes.Count) <= LongestLayered ? Add(combinator.Around(entry.Pattern), lines) : null;
        }
        catch (Exception refused) when (refused is PatternException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Keeps a rule unless a smaller one sounds alike.</summary>
    private SearchEntry? Add(Pattern pattern, Line[] lines)
    {
        var hash = Sound.HashOf(lines);
        if (!_bySound.TryGetValue(hash, out var alike))
        {
            _bySound[hash] = alike = [];
        }

        for (var i = 0; i < alike.Count; i++)
        {
            if (Sound.Alike(alike[i].Lines, lines))
            {
                if (Compare(pattern, alike[i].Pattern, lines.Length == 1) >= 0)
                {
                    return null;
                }

                alike.RemoveAt(i);
                break;
            }
        }

        var entry = new SearchEntry(pattern, lines);
        alike.Add(entry);
        _count++;
        return entry;
    }

    // Of one line that a figure sings and another rule gives, the other rule is worth more.
    private static int Compare(Pattern a, Pattern b, bool oneLine)
    {
        var (left, right) = (SearchEntry.StepsIn(a), SearchEntry.StepsIn(b));
        return oneLine && left > 0 != right > 0
            ? left.CompareTo(right)
            : a.Nodes != b.Nodes ? a.Nodes.CompareTo(b.Nodes) : a.Text.Length.CompareTo(b.Text.Length);
    }
}

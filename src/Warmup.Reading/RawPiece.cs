using System.Globalization;

namespace Warmup.Reading;

/// <summary>What a file holds, before scale and tonic are known. Times are in quarter notes from the beginning.</summary>
internal sealed class RawPiece
{
    public string Format { get; init; } = string.Empty;

    public string Title { get; set; } = string.Empty;

    /// <summary>Whether this project's own exporters wrote the file.</summary>
    public bool IsOurs { get; set; }

    public List<RawPart> Parts { get; } = [];

    public List<(Rational Onset, Rational Quarters)> Tempi { get; private set; } = [];

    public List<RawMeter> Meters { get; private set; } = [];

    public List<(Rational Onset, int Fifths, bool? IsMinor)> Keys { get; private set; } = [];

    /// <summary>How far the tonic of each section lies from its key, in cents, by the section's number.</summary>
    public Dictionary<int, double> TonicOffsets { get; } = [];

    public RemarkCollector Remarks { get; } = new();

    // Several parts say the same; the first counts.
    private readonly HashSet<(int Kind, Rational Onset)> _known = [];

    public bool HasTempoAt(Rational onset) => _known.Contains((2, onset));

    /// <summary>Takes the times of a part whose repeats were written out.</summary>
    public void Unroll(List<Stretch> stretches)
    {
        Tempi = Unrolled.InForce(Tempi, stretches, t => t.Onset, (t, at) => (at, t.Quarters));
        Meters = Unrolled.InForce(Meters, stretches, m => m.Onset, (m, at) => m with { Onset = at });
        Keys = Unrolled.InForce(Keys, stretches, k => k.Onset, (k, at) => (at, k.Fifths, k.IsMinor));
    }

    public void AddMeter(RawMeter meter)
    {
        if (_known.Add((0, meter.Onset)))
        {
            Meters.Add(meter);
        }
    }

    public void AddKey(Rational onset, int fifths, bool? isMinor)
    {
        if (_known.Add((1, onset)))
        {
            Keys.Add((onset, fifths, isMinor));
        }
    }

    public void AddTempo(Rational onset, Rational quarters)
    {
        if (_known.Add((2, onset)))
        {
            Tempi.Add((onset, quarters));
        }
    }
}

/// <summary>A time signature.</summary>
/// <param name="Onset">Where it begins.</param>
/// <param name="Groups">The beats, in the groups that are written.</param>
/// <param name="Type">The note value that is counted.</param>
/// <param name="IsHidden">Whether it is not shown: free rhythm.</param>
internal sealed record RawMeter(Rational Onset, ValueList<int> Groups, int Type, bool IsHidden)
{
    public Rational Quarters => new(Groups.Sum() * 4L, Type);
}

/// <summary>A part, with one voice of single notes.</summary>
internal sealed class RawPart
{
    public string Name { get; set; } = string.Empty;

    public List<RawNote> Notes { get; set; } = [];

    public List<RawMark> Marks { get; private set; } = [];

    public List<Rational> Measures { get; private set; } = [];

    public Rational End { get; set; }

    /// <summary>How often the whole part is sung.</summary>
    public int Repetitions { get; set; } = 1;

    /// <summary>The stretches that are sung, where repeats were written out; none otherwise.</summary>
    public List<Stretch> Stretches { get; private set; } = [];

    // Which measure each one is as it is written, from 1; none where all are in order.
    private List<int> _written = [];

    public bool IsDrone => Name.Contains("drone", StringComparison.OrdinalIgnoreCase)
        || Name.Contains("tanpura", StringComparison.OrdinalIgnoreCase)
        || Name.Contains("tambura", StringComparison.OrdinalIgnoreCase);

    public int Syllables => Notes.Count(n => n.Syllable is { Length: > 0 });

    /// <summary>Puts the marks in order; those of one point stay in theirs.</summary>
    public void SortMarks() => Marks = [.. Marks.OrderBy(m => m.Onset)];

    /// <summary>Takes numbers that count from 1 or 2 for the numbers of lines, where some program has saved them without their boxes.</summary>
    public void NumberLines()
    {
        if (Marks.Exists(m => m.Kind == MarkKind.LineNumber))
        {
            return;
        }

        var numbers = Marks.Where(m => m.Kind == MarkKind.Words).Select(m => int.TryParse(m.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0).Where(n => n > 0).ToList();
        if (numbers.Count > 1 && numbers.Select((n, i) => n is 1 or 2 || (i > 0 && n == numbers[i - 1] + 1)).All(counts => counts))
        {
            Marks = Marks.ConvertAll(m => m.Kind == MarkKind.Words && int.TryParse(m.Text, NumberStyles.None, CultureInfo.InvariantCulture, out _) ? m with { Kind = MarkKind.LineNumber } : m);
        }
    }

    /// <summary>Writes repeats out, unless that makes more notes or marks than are read.</summary>
    /// <param name="order">The indexes of the measures as they are sung.</param>
    /// <returns>Whether they were written out.</returns>
    public bool Unroll(List<int> order)
    {
        var stretches = Unrolled.Stretches(this, order);
        if (Unrolled.CountOf(Notes, stretches, n => n.Onset) > ReadingLimits.NotesOfPart || Unrolled.CountOf(Marks, stretches, m => m.Onset) > ReadingLimits.Notes)
        {
            return false;
        }

        // A tie over a sign that leads back ends there.
        Notes = Unrolled.Of(Notes, stretches, n => n.Onset, (n, s, at) => n with { Onset = at, Length = Rational.Min(n.End, s.To) - n.Onset });
        Marks = [.. Unrolled.Of(Marks, stretches, m => m.Onset, (m, _, at) => m with { Onset = at }), .. stretches.Select(s => new RawMark(s.At, MarkKind.Repeat))];
        SortMarks();
        var (measures, end) = (new List<Rational>(), Rational.Zero);
        foreach (var measure in order)
        {
            measures.Add(end);
            end += (measure + 1 < Measures.Count ? Measures[measure + 1] : End) - Measures[measure];
        }

        (Measures, End, Stretches, _written) = (measures, end, stretches, order.ConvertAll(m => m + 1));
        return true;
    }

    /// <summary>The measure of a point, and the quarter note within it.</summary>
    public PiecePlace Place(Rational onset)
    {
        var (low, high) = (0, Measures.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Measures[middle] <= onset ? (middle + 1, high) : (low, middle);
        }

        return low == 0
            ? new PiecePlace(PlaceKind.Measure, 1, onset + 1, Name)
            : new PiecePlace(PlaceKind.Measure, _written.Count == 0 ? low : _written[low - 1], onset - Measures[low - 1] + 1, Name);
    }
}

internal enum MarkKind
{
    LineNumber,
    Rehearsal,
    System,
    LyricLine,
    Words,
    DoubleBar,
    Repeat,
    Section,
}

internal readonly record struct RawMark(Rational Onset, MarkKind Kind, string Text = "");

/// <summary>A note as it sounds.</summary>
internal struct RawNote
{
    public Rational Onset;
    public Rational Length;
    public int Midi;

    /// <summary>The written name, where the file has one.</summary>
    public NoteName? Name;

    /// <summary>The syllable; empty where it goes on with the one before, <see langword="null"/> where there is none.</summary>
    public string? Syllable;

    public bool HasBreath;

    public bool HasFermata;

    public Joining Joining;

    public Loudness Loudness;

    public readonly Rational End => Onset + Length;
}

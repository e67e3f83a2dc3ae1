namespace Warmup.Reading;

/// <summary>What a file holds, before scale and tonic are known. Times are in quarter notes from the beginning.</summary>
internal sealed class RawPiece
{
    public string Format { get; init; } = string.Empty;

    public string Title { get; set; } = string.Empty;

    /// <summary>Whether this project's own exporters wrote the file.</summary>
    public bool IsOurs { get; set; }

    public List<RawPart> Parts { get; } = [];

    public List<(Rational Onset, Rational Quarters)> Tempi { get; } = [];

    public List<RawMeter> Meters { get; } = [];

    public List<(Rational Onset, int Fifths, bool? IsMinor)> Keys { get; } = [];

    /// <summary>How far the tonic of each section lies from its key, in cents, by the section's number.</summary>
    public Dictionary<int, double> TonicOffsets { get; } = [];

    public RemarkCollector Remarks { get; } = new();

    // Several parts say the same; the first counts.
    private readonly HashSet<(int Kind, Rational Onset)> _known = [];

    public bool HasTempoAt(Rational onset) => _known.Contains((2, onset));

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

    public List<Rational> Measures { get; } = [];

    public Rational End { get; set; }

    public bool IsDrone => Name.Contains("drone", StringComparison.OrdinalIgnoreCase)
        || Name.Contains("tanpura", StringComparison.OrdinalIgnoreCase)
        || Name.Contains("tambura", StringComparison.OrdinalIgnoreCase);

    public int Syllables => Notes.Count(n => n.Syllable is { Length: > 0 });

    /// <summary>Puts the marks in order; those of one point stay in theirs.</summary>
    public void SortMarks() => Marks = [.. Marks.OrderBy(m => m.Onset)];

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
            : new PiecePlace(PlaceKind.Measure, low, onset - Measures[low - 1] + 1, Name);
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

namespace Warmup.Drawing;

/// <summary>A bar of a range chart: whose comfortable range it is, and how the drill fits it.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record RangeBar
{
    // The octaves of MIDI, and what has room under a bar.
    private const int FarthestOctave = 10;
    private const int MostLines = 3;
    private const int LongestLine = 40;

    private readonly NoteName? _fullLow;
    private readonly NoteName? _fullHigh;
    private readonly int _octaves;
    private readonly ValueList<string> _verdict;

    /// <summary>Makes a bar.</summary>
    /// <param name="band">The comfortable range, by the name that stands under the bar.</param>
    public RangeBar(PitchBand band)
    {
        ArgumentNullException.ThrowIfNull(band);
        Band = band;
    }

    /// <summary>The comfortable range.</summary>
    public PitchBand Band { get; }

    /// <summary>The lowest note of the full range; <see langword="null"/>, the default, where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies above the comfortable range's lowest.</exception>
    public NoteName? FullLow
    {
        get => _fullLow;
        init => _fullLow = value is not { } note || note.Midi <= Band.Low.Midi
            ? value
            : throw new ArgumentException($"FullLow must not lie above the comfortable range, and {note} lies above {Band.Low}", nameof(FullLow));
    }

    /// <summary>The highest note of the full range; <see langword="null"/>, the default, where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies below the comfortable range's highest.</exception>
    public NoteName? FullHigh
    {
        get => _fullHigh;
        init => _fullHigh = value is not { } note || note.Midi >= Band.High.Midi
            ? value
            : throw new ArgumentException($"FullHigh must not lie below the comfortable range, and {note} lies below {Band.High}", nameof(FullHigh));
    }

    /// <summary>How many octaves above the score the drill is drawn in the bar, -10 to 10; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Octaves
    {
        get => _octaves;
        init => _octaves = Require.InRange(value, -FarthestOctave, FarthestOctave, nameof(Octaves));
    }

    /// <summary>Whether the drill goes above the range in that octave; false by default. Its notes above the bar then stand out.</summary>
    public bool IsTooHigh { get; init; }

    /// <summary>Whether the drill goes below the range in that octave; false by default. Its notes below the bar then stand out.</summary>
    public bool IsTooLow { get; init; }

    /// <summary>What stands under the bar, in at most 3 lines of at most 40 characters without control characters: <c>2 semitones</c>, <c>too high</c>.</summary>
    /// <exception cref="ArgumentException">There are too many lines, or one is missing, too long or holds control characters.</exception>
    public ValueList<string> Verdict
    {
        get => _verdict;
        init
        {
            Require.InRange(value.Count, 0, MostLines, "the number of lines under a bar");
            foreach (var line in value)
            {
                Require.PlainText(Require.NotNull(line, nameof(Verdict)), LongestLine, nameof(Verdict));
            }

            _verdict = value;
        }
    }

    /// <summary>Whether a note of the drill lies outside the range.</summary>
    internal bool IsOut => IsTooHigh || IsTooLow;

    /// <summary>The range, and what stands under it.</summary>
    public override string ToString() => OneLine.Of($"{Band}: {string.Join(' ', Verdict)}");
}

using System.Globalization;

namespace Warmup.Voices;

/// <summary>What was measured of a voice on one day: the comfortable range, the sustained tone, and the full range where it is known.</summary>
/// <remarks>
/// It does not matter how it was measured: by ear or from a recording, it is one more dated measurement of a <see cref="Singer"/>, of which the
/// newest counts. Immutable, value equality.
/// </remarks>
public sealed record Measurement
{
    /// <summary>Makes a measurement with one sustained tone.</summary>
    /// <param name="date">The day.</param>
    /// <param name="low">The lowest comfortable note, C1 to C8.</param>
    /// <param name="high">The highest comfortable note, C1 to C8, not below the lowest.</param>
    /// <param name="sustainedSeconds">The longest sustained tone in seconds, 1 to 120.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or the range is upside down.</exception>
    public Measurement(DateOnly date, NoteName low, NoteName high, Rational sustainedSeconds)
        : this((DateOnly?)date, low, high, sustainedSeconds)
    {
    }

    /// <summary>Makes a measurement with several sustained tones.</summary>
    /// <param name="date">The day.</param>
    /// <param name="low">The lowest comfortable note, C1 to C8.</param>
    /// <param name="high">The highest comfortable note, C1 to C8, not below the lowest.</param>
    /// <param name="trials">1 to 14 sustained tones of 1 to 120 seconds; three are usual.</param>
    /// <param name="rule">Which of them counts; the best by default.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or the range is upside down.</exception>
    public Measurement(DateOnly date, NoteName low, NoteName high, ValueList<Rational> trials, TrialRule rule = TrialRule.Best)
        : this((DateOnly?)date, low, high, trials, rule)
    {
    }

    internal Measurement(DateOnly? date, NoteName low, NoteName high, Rational sustainedSeconds)
    {
        SingerFaults.Refuse(SingerFaults.OfRange(low, high), nameof(low));
        (Date, Low, High) = (date, low, high);
        SustainedSeconds = SustainedTone.RequireTone(sustainedSeconds, nameof(sustainedSeconds));
    }

    internal Measurement(DateOnly? date, NoteName low, NoteName high, ValueList<Rational> trials, TrialRule rule)
        : this(date, low, high, SustainedTone.Of(trials, rule)) => (Trials, TrialRule) = (trials, rule);

    /// <summary>The day; <see langword="null"/> where it was not noted.</summary>
    public DateOnly? Date { get; }

    /// <summary>The lowest comfortable note.</summary>
    public NoteName Low { get; }

    /// <summary>The highest comfortable note.</summary>
    public NoteName High { get; }

    /// <summary>The longest sustained tone that counts, in seconds, 1 to 120.</summary>
    public Rational SustainedSeconds { get; }

    /// <summary>The sustained tones it was taken from; empty where only one value is known.</summary>
    public ValueList<Rational> Trials { get; }

    /// <summary>Which of the trials counts; best where there are none.</summary>
    public TrialRule TrialRule { get; }

    /// <summary>The lowest note of the full range, not above the lowest comfortable one; <see langword="null"/> where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies above the lowest comfortable one or below C1.</exception>
    public NoteName? FullLow
    {
        get;
        init
        {
            SingerFaults.Refuse(SingerFaults.OfFullLow(value, Low), nameof(FullLow));
            field = value;
        }
    }

    /// <summary>The highest note of the full range, not below the highest comfortable one; <see langword="null"/> where it is not known.</summary>
    /// <exception cref="ArgumentException">The note lies below the highest comfortable one or above C8.</exception>
    public NoteName? FullHigh
    {
        get;
        init
        {
            SingerFaults.Refuse(SingerFaults.OfFullHigh(value, High), nameof(FullHigh));
            field = value;
        }
    }

    /// <summary>Whether the comfortable range was not measured but taken from the voice type as a starting point; the tone was measured.</summary>
    public bool IsRangeAssumed { get; internal init; }

    /// <summary>The date, the comfortable range and the tone.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{(Date is { } date ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "undated")}: {Low} to {High}{(IsRangeAssumed ? " (assumed)" : string.Empty)}, {SustainedSeconds.ToDouble():0.##} s");
}

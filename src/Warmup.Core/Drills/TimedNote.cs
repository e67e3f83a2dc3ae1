using System.Globalization;

namespace Warmup;

/// <summary>A note of a composition: a tone, when and for how long. Immutable, value equality.</summary>
public sealed record TimedNote
{
    /// <summary>Puts a tone in time.</summary>
    /// <param name="tone">The tone of the scale.</param>
    /// <param name="onset">Aksharas from the line's beginning, 0 to 4,096.</param>
    /// <param name="length">Aksharas, above 0 and at most 4,096. A fraction of an akshara has a denominator of at most 16,383.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public TimedNote(ScaleTone tone, Rational onset, Rational length)
    {
        Tone = tone;
        Onset = Fine(Require.InRange(onset, 0, TimedLine.Longest), nameof(onset));
        Length = length.Sign > 0 && length <= TimedLine.Longest
            ? Fine(length, nameof(length))
            : throw new ArgumentOutOfRangeException(
                nameof(length), length, string.Create(CultureInfo.InvariantCulture, $"length must be above 0 and at most {TimedLine.Longest}, not {length}"));
    }

    /// <summary>The tone of the scale.</summary>
    public ScaleTone Tone { get; }

    /// <summary>Aksharas from the line's beginning.</summary>
    public Rational Onset { get; }

    /// <summary>Its length in aksharas.</summary>
    public Rational Length { get; }

    /// <summary>
    /// What is sung: 1 to 20 characters without control characters; <see langword="null"/>, the default, takes the composition's syllables.
    /// </summary>
    /// <exception cref="ArgumentException">The text is empty or too long, or holds control characters.</exception>
    public string? Syllable
    {
        get;
        init => field = value is { Length: 0 }
            ? throw new ArgumentException($"{nameof(Syllable)} must have 1 to {LongestSyllable} characters, not 0", nameof(Syllable))
            : value is null ? null : Require.PlainText(value, LongestSyllable, nameof(Syllable));
    }

    /// <summary>The breath after the note, in aksharas, 0 to 4,096; none by default. The next note begins no earlier than it ends.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational Breath { get; init => field = Fine(Require.InRange(value, 0, TimedLine.Longest, nameof(Breath)), nameof(Breath)); }

    /// <summary>Whether it is held, as the last note of a line can be; false by default.</summary>
    public bool IsHeld { get; init; }

    /// <summary>Where the note with its breath ends, in aksharas from the line's beginning.</summary>
    internal Rational End => Onset + Length + Breath;

    private static int LongestSyllable => 20;

    /// <summary>The tone and when it is sung.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Tone} at {Onset} for {Length}");

    internal static Rational Fine(Rational aksharas, string name) => aksharas.Denominator <= TimeGrid.MostResolution
        ? aksharas
        : throw new ArgumentOutOfRangeException(
            name, aksharas, string.Create(CultureInfo.InvariantCulture, $"{name} must have a denominator of at most {TimeGrid.MostResolution}, not {aksharas.Denominator}"));
}

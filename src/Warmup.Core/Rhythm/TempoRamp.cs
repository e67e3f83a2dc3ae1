using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>
/// The tempo of each time through a drill, in aksharas a minute: constant, or from a start by equal steps up to a ceiling, where it
/// stays. Immutable, value equality.
/// </summary>
[JsonConverter(typeof(TextJsonConverter<TempoRamp>))]
public sealed record TempoRamp : ITextForm<TempoRamp>
{
    /// <summary>The smallest step of a ramp: 1/4 akshara a minute (the project's own setting). A ramp without a step would never end.</summary>
    internal static Rational SmallestStep => new(1, 4);

    private TempoRamp(Rational tempo)
    {
        Start = InBounds(tempo, "the tempo");
        Ceiling = tempo;
    }

    /// <summary>A ramp.</summary>
    /// <param name="start">The tempo of the first time, 10 to 400.</param>
    /// <param name="step">How much faster each repetition is, 1/4 to 390.</param>
    /// <param name="ceiling">The tempo at which the ramp ends, from <paramref name="start"/> to 400; the last time has it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public TempoRamp(Rational start, Rational step, Rational ceiling)
    {
        Start = InBounds(start, "the start of a ramp");
        Ceiling = Require.InRange(ceiling, start, Tempo.Fastest, "the ceiling of a ramp");
        if (step < SmallestStep || step > Tempo.Fastest - Tempo.Slowest)
        {
            throw new ArgumentOutOfRangeException(
                nameof(step),
                step,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the step of a ramp must be between {SmallestStep} and {Tempo.Fastest - Tempo.Slowest}, not {step}{(step.Sign <= 0 ? ": it would never reach its ceiling" : string.Empty)}"));
        }

        Step = step;
    }

    /// <summary>The tempo of the first time.</summary>
    public Rational Start { get; }

    /// <summary>How much faster each repetition is; 0 where the tempo is constant.</summary>
    public Rational Step { get; }

    /// <summary>The tempo at which the ramp ends.</summary>
    public Rational Ceiling { get; }

    /// <summary>The times it takes to reach the ceiling, the first and the last counted; 1 where the tempo is constant.</summary>
    public int Rounds => Step.Sign == 0 ? 1 : (int)((Ceiling - Start) / Step).Ceiling() + 1;

    /// <summary>The same tempo always.</summary>
    /// <param name="tempo">Aksharas a minute, 10 to 400.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public static TempoRamp Constant(Rational tempo) => new(tempo);

    /// <summary>The same tempo always.</summary>
    /// <param name="tempo">Aksharas a minute, 10 to 400.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public static implicit operator TempoRamp(Rational tempo) => Constant(tempo);

    /// <inheritdoc cref="op_Implicit(Rational)"/>
    public static implicit operator TempoRamp(int tempo) => Constant(tempo);

    // Three numbers of 64 characters and two words.
    static int ITextForm<TempoRamp>.LongestText => 200;

    static string ITextForm<TempoRamp>.What => "a tempo";

    /// <summary>Reads a tempo (<c>60</c>) or a ramp (<c>60 to 90 by 5</c>), in aksharas a minute.</summary>
    /// <param name="text">The text; numbers may be decimals or fractions.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a tempo.</exception>
    public static TempoRamp Parse(string text) => TextForm.Parse<TempoRamp>(text);

    /// <summary>Reads a tempo as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="ramp">The tempo, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a tempo or a ramp.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out TempoRamp? ramp, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse<TempoRamp>(text, out ramp, out error);

    static TempoRamp IParsable<TempoRamp>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<TempoRamp>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out TempoRamp result) =>
        TryParse(s, out result, out _);

    static TempoRamp ISpanParsable<TempoRamp>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<TempoRamp>(s);

    static bool ISpanParsable<TempoRamp>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out TempoRamp result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<TempoRamp>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out TempoRamp value, [NotNullWhen(false)] out TextError? error) =>
        TempoRampText.TryRead(cursor, out value, out error);

    /// <summary>The tempo of a time through the drill.</summary>
    /// <param name="round">The time, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="round"/> is negative.</exception>
    public Rational At(int round)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(round);
        return Rational.Min(Start + (Step * round), Ceiling);
    }

    /// <summary><c>60</c>, or <c>60 to 90 by 5</c>; <see cref="Parse"/> reads it back.</summary>
    public override string ToString() => Step.Sign == 0 ? Start.ToString() : $"{Start} to {Ceiling} by {Step}";

    private static Rational InBounds(Rational tempo, string what) => Require.InRange(tempo, Tempo.Slowest, Tempo.Fastest, what);
}

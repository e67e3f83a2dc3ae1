using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>
/// The tempo of each time through a drill, in aksharas a minute: constant, or from a start by equal steps up to a ceiling, where it
/// stays. Immutable, value equality.
/// </summary>
public sealed record TempoRamp
{
    /// <summary>The smallest step of a ramp, in aksharas a minute (the project's own bound): a ramp without one would never end.</summary>
    public static Rational SmallestStep => new(1, 4);

    private TempoRamp(Rational tempo)
    {
        Start = InBounds(tempo, "the tempo");
        Ceiling = tempo;
    }

    /// <summary>A ramp.</summary>
    /// <param name="start">The tempo of the first time, 10 to 400.</param>
    /// <param name="step">What each further time is faster, 1/4 to 390.</param>
    /// <param name="ceiling">The tempo that is not passed, from <paramref name="start"/> to 400; the last time has it.</param>
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

    /// <summary>What each further time is faster; 0 where the tempo is constant.</summary>
    public Rational Step { get; }

    /// <summary>The tempo that is not passed.</summary>
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

    /// <summary>Reads what <see cref="ToString"/> writes: <c>60</c>, or <c>60 to 90 by 5</c>.</summary>
    /// <param name="text">The text; numbers may be decimals or fractions.</param>
    /// <param name="ramp">The tempo, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a tempo or a ramp.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out TempoRamp? ramp, [NotNullWhen(false)] out TextError? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        return TempoRampText.TryParse(text, out ramp, out error);
    }

    /// <summary>The tempo of a time through the drill.</summary>
    /// <param name="round">The time, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="round"/> is negative.</exception>
    public Rational At(int round)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(round);
        return Rational.Min(Start + (Step * round), Ceiling);
    }

    /// <summary><c>60</c>, or <c>60 to 90 by 5</c>.</summary>
    public override string ToString() => Step.Sign == 0 ? Start.ToString() : $"{Start} to {Ceiling} by {Step}";

    private static Rational InBounds(Rational tempo, string what) => Require.InRange(tempo, Tempo.Slowest, Tempo.Fastest, what);
}

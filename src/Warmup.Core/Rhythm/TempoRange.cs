namespace Warmup;

/// <summary>A range of tempi in aksharas a minute.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record TempoRange
{
    /// <summary>Makes a range.</summary>
    /// <param name="slowest">The slowest tempo, 10 to 400.</param>
    /// <param name="fastest">The fastest tempo, from <paramref name="slowest"/> to 400.</param>
    /// <exception cref="ArgumentOutOfRangeException">A tempo lies outside its range.</exception>
    public TempoRange(Rational slowest, Rational fastest)
    {
        Slowest = Require.InRange(slowest, Tempo.Slowest, Tempo.Fastest);
        Fastest = Require.InRange(fastest, slowest, Tempo.Fastest);
    }

    /// <summary>The slowest tempo.</summary>
    public Rational Slowest { get; }

    /// <summary>The fastest tempo, not below <see cref="Slowest"/>.</summary>
    public Rational Fastest { get; }

    /// <summary><c>54 to 90</c>, or one number.</summary>
    public override string ToString() => Slowest == Fastest ? Slowest.ToString() : $"{Slowest} to {Fastest}";
}

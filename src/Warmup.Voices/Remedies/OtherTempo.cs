namespace Warmup.Voices;

/// <summary>The drill at another tempo, or with another rise. Immutable, value equality.</summary>
public sealed record OtherTempo : Remedy
{
    /// <summary>Names the tempo.</summary>
    /// <param name="tempo">The tempo of each time through the drill, in aksharas a minute.</param>
    public OtherTempo(TempoRamp tempo) => Tempo = Require.NotNull(tempo);

    /// <summary>The tempo of each time through the drill, in aksharas a minute.</summary>
    public TempoRamp Tempo { get; }

    internal override RemedyKind Kind => RemedyKind.Tempo;

    /// <inheritdoc/>
    public override Drill Apply(Drill drill) => Require.NotNull(drill) with { Tempo = Tempo };

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return $"a tempo of {Tempo} instead of {drill.Tempo}";
    }

    /// <summary>The tempo.</summary>
    public override string ToString() => OneLine.Of($"a tempo of {Tempo}");

    internal override int Size(Drill drill) => Steps(drill.Tempo.Start, Tempo.Start) + Steps(drill.Tempo.Ceiling, Tempo.Ceiling);

    /// <summary>How many twentieths of the slower tempo lie between two, begun ones counted.</summary>
    private static int Steps(Rational from, Rational to) => (int)(20 * (Rational.Max(from, to) - Rational.Min(from, to)) / Rational.Min(from, to)).Ceiling();
}

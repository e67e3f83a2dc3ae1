namespace Warmup.Voices;

/// <summary>The drill in other speeds. Immutable, value equality.</summary>
public sealed record OtherSpeeds : Remedy
{
    // One speed up or down doubles or halves the time of every note; the project's own weight.
    private const int SizeOfASpeed = 8;

    /// <summary>Names the speeds.</summary>
    /// <param name="speeds">The speeds, sung one after the other; 1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or too many.</exception>
    public OtherSpeeds(ValueList<Speed> speeds)
    {
        Require.InRange(speeds.Count, 1, Drill.MostSpeeds, "the number of speeds");
        Speeds = speeds;
    }

    /// <summary>The speeds, sung one after the other.</summary>
    public ValueList<Speed> Speeds { get; }

    internal override RemedyKind Kind => RemedyKind.Speeds;

    /// <inheritdoc/>
    public override Drill Apply(Drill drill) => Require.NotNull(drill) with { Speeds = Speeds };

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return $"{Names(Speeds)} instead of {Names(drill.Speeds)}";
    }

    /// <summary>The speeds.</summary>
    public override string ToString() => OneLine.Of(Names(Speeds));

    internal override int Size(Drill drill) => SizeOfASpeed * Math.Max(
        1, Speeds.Count == drill.Speeds.Count ? Math.Abs(Speeds.Sum(s => s.Kalam) - drill.Speeds.Sum(s => s.Kalam)) : Math.Abs(Speeds.Count - drill.Speeds.Count));

    private static string Names(ValueList<Speed> speeds) => string.Join(" then ", speeds);
}

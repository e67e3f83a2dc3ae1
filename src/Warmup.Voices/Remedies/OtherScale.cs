namespace Warmup.Voices;

/// <summary>The drill's pattern in another scale; the last resort, since another scale is another drill. Immutable, value equality.</summary>
public sealed record OtherScale : Remedy
{
    /// <summary>Names the scale.</summary>
    /// <param name="scale">The scale.</param>
    public OtherScale(Scale scale) => Scale = Require.NotNull(scale);

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    internal override RemedyKind Kind => RemedyKind.Scale;

    /// <inheritdoc/>
    /// <remarks>Lines that were given instead of the pattern's own stay as they are.</remarks>
    public override Drill Apply(Drill drill) => Require.NotNull(drill) with { Scale = Scale };

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return $"the scale {Scale.Name} instead of {drill.Scale.Name}";
    }

    /// <summary>The scale.</summary>
    public override string ToString() => OneLine.Of($"the scale {Scale.Name}");

    /// <summary>The size of a change to a scale of the same degrees.</summary>
    internal const int LeastSize = 20;

    internal override int Size(Drill drill) => SizeOf(drill.Scale.Degrees.ToHashSet(), Scale);

    /// <summary>2 more for each degree that one of two scales has and the other has not.</summary>
    internal static int SizeOf(IReadOnlySet<Degree> degrees, Scale other)
    {
        var there = other.Degrees.ToHashSet();
        return LeastSize + (2 * (degrees.Count + there.Count - (2 * there.Count(degrees.Contains))));
    }
}

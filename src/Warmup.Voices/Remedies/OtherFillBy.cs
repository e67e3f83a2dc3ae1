namespace Warmup.Voices;

/// <summary>Each line filled up with something else: silence instead of a held last note, say. Immutable, value equality.</summary>
public sealed record OtherFillBy : Remedy
{
    /// <summary>Says with what.</summary>
    /// <param name="fillBy">What fills each line up.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the three.</exception>
    public OtherFillBy(FillBy fillBy) => FillBy = Require.Defined(fillBy);

    /// <summary>What fills each line up.</summary>
    public FillBy FillBy { get; }

    internal override RemedyKind Kind => RemedyKind.FillBy;

    /// <inheritdoc/>
    public override Drill Apply(Drill drill) => Require.NotNull(drill) with { Delivery = drill.Delivery with { FillBy = FillBy } };

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return ToString();
    }

    /// <summary>The change in words.</summary>
    public override string ToString() => FillBy switch
    {
        FillBy.Room => "each last note held only as far as its line leaves room",
        FillBy.Hold => "each last note held, for one more avartana where its line leaves no room",
        _ => "silence at the end of each line instead of a held last note",
    };

    internal override int Size(Drill drill) => 3;
}

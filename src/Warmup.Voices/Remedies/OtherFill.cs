namespace Warmup.Voices;

/// <summary>Each line filled up to the anga, to the avartana, or not at all. Immutable, value equality.</summary>
public sealed record OtherFill : Remedy
{
    /// <summary>Says how far.</summary>
    /// <param name="fill">How far each line is filled up.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the three.</exception>
    public OtherFill(Fill fill) => Fill = Require.Defined(fill);

    /// <summary>How far each line is filled up.</summary>
    public Fill Fill { get; }

    internal override RemedyKind Kind => RemedyKind.Fill;

    /// <inheritdoc/>
    public override Drill Apply(Drill drill) => Require.NotNull(drill) with { Delivery = drill.Delivery with { Fill = Fill } };

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return ToString();
    }

    /// <summary>How far.</summary>
    public override string ToString() => Fill switch
    {
        Fill.None => "lines not filled up",
        Fill.Anga => "each line filled up to the end of the anga only",
        _ => "each line filled up to the end of the avartana",
    };

    internal override int Size(Drill drill) => 3;
}

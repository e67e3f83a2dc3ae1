namespace Warmup.Voices;

/// <summary>Lines that ran on are sung line by line, or the other way round. Immutable, value equality.</summary>
public sealed record OtherDelivery : Remedy
{
    /// <summary>Says which.</summary>
    /// <param name="isLineByLine">Whether a breath follows each line; otherwise lines run on.</param>
    public OtherDelivery(bool isLineByLine) => IsLineByLine = isLineByLine;

    /// <summary>Whether a breath follows each line.</summary>
    public bool IsLineByLine { get; }

    internal override RemedyKind Kind => RemedyKind.Delivery;

    /// <inheritdoc/>
    /// <remarks>Lines that were filled up stay so; others are filled up as is usual: line by line to the avartana's end.</remarks>
    public override Drill Apply(Drill drill)
    {
        var before = Require.NotNull(drill).Delivery;
        var after = (IsLineByLine ? Delivery.LineByLine : Delivery.Continuous) with
        {
            BreathSeconds = before.BreathSeconds,
            BreathGrid = before.BreathGrid,
            LeastHold = before.LeastHold,
        };
        return drill with { Delivery = before.Fill == Fill.None ? after : after with { Fill = before.Fill, FillBy = before.FillBy } };
    }

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return IsLineByLine ? "line by line, with a breath after each" : ToString();
    }

    /// <summary><c>line by line</c> or <c>continuous</c>.</summary>
    public override string ToString() => IsLineByLine ? "line by line" : "continuous";

    internal override int Size(Drill drill) => 4;
}

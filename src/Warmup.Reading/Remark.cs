namespace Warmup.Reading;

/// <summary>One thing that could not be kept or was mended, and where. Immutable, compared by value.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Message">In plain words.</param>
/// <param name="Place">Where it first is in its measure or line.</param>
public sealed record Remark(RemarkKind Kind, string Message, PiecePlace Place)
{
    /// <summary>The place and the message.</summary>
    public override string ToString() => $"{Place}: {Message}";
}

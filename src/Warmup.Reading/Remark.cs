namespace Warmup.Reading;

/// <summary>One thing that could not be kept or was mended, and where. Immutable, compared by value.</summary>
public sealed record Remark
{
    internal Remark(RemarkKind kind, string message, PiecePlace place) => (Kind, Message, Place) = (kind, message, place);

    /// <summary>What it is.</summary>
    public RemarkKind Kind { get; }

    /// <summary>In plain words.</summary>
    public string Message { get; }

    /// <summary>Where it first is in its measure or line.</summary>
    public PiecePlace Place { get; }


    /// <summary>The place and the message.</summary>
    public override string ToString() => $"{Place}: {Message}";
}

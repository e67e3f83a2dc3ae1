namespace Warmup.Takes;

/// <summary>A stretch of a take that an alignment gives to a note of the drill.</summary>
/// <param name="Note">The index of the note.</param>
/// <param name="From">The first frame.</param>
/// <param name="To">The frame after the last.</param>
/// <param name="IsOther">Whether another pitch was heard there.</param>
internal readonly record struct SungSpan(int Note, int From, int To, bool IsOther);

/// <summary>The notes of a drill in a take, in the order in which they were sung, and what the departures cost.</summary>
/// <param name="Spans">The stretches, in time.</param>
/// <param name="Margins">For each stretch, what the best alignment costs more that does not have its note there; endless where none comes near.</param>
/// <param name="Cost">The cost of the whole take.</param>
internal sealed record TakeAlignment(SungSpan[] Spans, double[] Margins, double Cost)
{
    /// <summary>None that is of use.</summary>
    public static readonly TakeAlignment None = new([], [], double.PositiveInfinity);
}

namespace Warmup.Research;

/// <summary>Lines that are already there, as the operand of a combinator whose effect on them is wanted. It never leaves the search.</summary>
internal sealed record FixedLines(ValueList<Line> Fixed) : Pattern(1, 1, Line.CountNotes(Fixed.AsSpan()), Line.CountNotes(Fixed.AsSpan()))
{
    internal override string Text => "[...]";

    internal override Line[] Lines(Frame frame, Expander expander) => Fixed.AsSpan().ToArray();
}

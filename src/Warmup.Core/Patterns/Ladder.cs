namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// The ladder: from the tonic up the ascent, one more note each line, until the upper tonic is reached.
    /// </summary>
    /// <remarks>
    /// In a zigzag list a line ends only where no earlier note is higher and no later one lower. Seven lines of 2 to 8 notes in a
    /// seven-note scale, 35 notes; five lines and 20 notes in a five-note scale (plain counting). Literal prefixes, also in the middle of
    /// a bend, are <c>run.grow</c>.
    /// </remarks>
    public static Pattern Ladder { get; } = new LadderPattern();
}

internal sealed record LadderPattern : PrimitivePattern
{
    public LadderPattern()
        : base(TriangularNotes, UsualTop + 1)
    {
    }

    public static PatternWord WordEntry { get; } =
        PatternWord.Primitive("ladder", "from the tonic up, one more note each line, to the upper tonic", () => Ladder)
        with { Said = "each line starts on the tonic and adds one note until the upper tonic is reached" };

    internal override Head Head => new(WordEntry, default, default);

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var top = Span(frame);
        expander.Bound((long)top * (top + 3) / 2);
        var run = RunPattern.Walk(frame);
        var lines = new List<Line>(top);
        for (var end = 1; end <= top; end++)
        {
            if (frame.IsProperEnd(end))
            {
                lines.Add(new Line(ValueList.Create<LineNote>(run.AsSpan(0, end + 1))));
            }
        }

        return [.. lines];
    }
}

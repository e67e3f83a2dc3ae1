namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// The ladder: from the tonic up the ascent, one more note each line, until the upper tonic is reached.
    /// </summary>
    /// <remarks>
    /// In a zigzag list a line ends only where no earlier note is higher and no later one lower. Seven lines of 2 to 8 notes in a
    /// seven-note scale, 35 notes; five lines and 20 notes in a five-note scale (plain counting).
    /// </remarks>
    public static Pattern Ladder { get; } = new LadderPattern(false);

    /// <summary>The ladder with a line for every place of the list, also where the list is in the middle of a bend.</summary>
    public static Pattern LiteralLadder { get; } = new LadderPattern(true);
}

internal sealed record LadderPattern : Pattern
{
    public LadderPattern(bool literal)
        : base(1, 1, TriangularNotes) => Literal = literal;

    public static PatternWord PlainWord { get; } = PatternWord.Primitive("ladder", () => Ladder);

    public static PatternWord LiteralWord { get; } = PatternWord.Primitive("literal-ladder", () => LiteralLadder);

    public bool Literal { get; }

    internal override string Text => (Literal ? LiteralWord : PlainWord).Name;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var top = frame.Top;
        var run = new LineNote[top + 1];
        var link = frame.Way == Way.Ascent ? Link.Ascent : Link.Descent;
        for (var step = 0; step <= top; step++)
        {
            run[step] = new LineNote(Tone(frame, step), frame.Way, step == 0 ? Link.Leap : link, Rational.One);
        }

        var lines = new List<Line>(top);
        for (var end = 1; end <= top; end++)
        {
            if (Literal || frame.IsProperEnd(end))
            {
                lines.Add(new Line(ValueList.Create<LineNote>(run.AsSpan(0, end + 1))));
            }
        }

        return [.. lines];
    }
}

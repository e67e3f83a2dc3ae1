namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The ladder: from the tonic up the ascent, one more note in each line, until the upper tonic is reached.</summary>
    /// <remarks>
    /// In a zigzag list a line ends only where no earlier note is higher and no later one lower. Seven lines of 2 to 8 notes in a
    /// seven-note scale, 35 notes; five lines and 20 notes in a five-note scale (plain counting). <c>run.grow</c> gives every beginning
    /// of the run, also those that end in the middle of a bend.
    /// </remarks>
    public static Pattern Ladder { get; } = new LadderPattern();
}

internal sealed record LadderPattern : PrimitivePattern
{
    private const int UsualRun = 32;

    public LadderPattern()
        : base(NotesOver(PatternLimits.UsualSteps), PatternLimits.UsualSteps + 1)
    {
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive(
        "ladder",
        "from the tonic up, one more note in each line, until the upper tonic is reached",
        "each line starts on the tonic and adds one note until the upper tonic is reached",
        () => Ladder);

    internal override Operation Operation => new(WordEntry);

    internal override Line[] Make(Frame frame, Expander expander)
    {
        var top = Steps(frame);
        expander.Bound(NotesOver(top));
        var run = RunPattern.Walk(frame);

        // A list that never turns is left anywhere.
        var turns = !frame.Scale.List(frame.Direction).IsRising;
        var ends = turns ? ProperEnds(run, frame.Mirrored ? -1 : 1, run.Length <= UsualRun ? stackalloc bool[UsualRun] : new bool[run.Length]) : [];

        // Each line is a beginning of the run, and shares its notes.
        var lines = new Line[turns ? ends[1..].Count(true) : top];
        var line = 0;
        for (var end = 1; end <= top; end++)
        {
            if (!turns || ends[end])
            {
                lines[line++] = new Line(ValueList.Part(run, 0, end + 1));
            }
        }

        return lines;
    }

    private static long NotesOver(long steps) => steps * (steps + 3) / 2;

    /// <summary>
    /// Where a line may end: no earlier note is farther and no later one nearer, so that no line stops in the middle of a bend.
    /// </summary>
    /// <param name="run">The run.</param>
    /// <param name="sign">1 where the run rises, -1 where it falls.</param>
    /// <param name="room">Room for the answer to each note.</param>
    private static ReadOnlySpan<bool> ProperEnds(ReadOnlySpan<LineNote> run, int sign, Span<bool> room)
    {
        var ends = room[..run.Length];
        var nearest = int.MaxValue;
        for (var i = run.Length - 1; i >= 0; i--)
        {
            var pitch = sign * run[i].Tone.Semitones;
            ends[i] = pitch <= nearest;
            nearest = Math.Min(nearest, pitch);
        }

        var furthest = int.MinValue;
        for (var i = 0; i < run.Length; i++)
        {
            var pitch = sign * run[i].Tone.Semitones;
            ends[i] &= pitch >= furthest;
            furthest = Math.Max(furthest, pitch);
        }

        return ends;
    }
}

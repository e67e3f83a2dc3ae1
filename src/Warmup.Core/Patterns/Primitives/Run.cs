namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The run: one line over the whole ascent, from the tonic to the upper tonic.</summary>
    public static Pattern Run { get; } = new RunPattern();
}

internal sealed record RunPattern : PrimitivePattern
{
    public RunPattern()
        : base(PatternLimits.UsualSteps + 1, PatternLimits.UsualSteps + 1)
    {
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive(
        "run",
        "one line over the whole scale, from the tonic to the upper tonic",
        "one line goes over the whole scale from the tonic to the upper tonic",
        () => Pattern.Run);

    internal override Operation Operation => new(WordEntry);

    internal override Line[] Make(Frame frame, Expander expander) => [new Line(ValueList.Adopt(Walk(frame)))];

    /// <summary>Every note of the frame's list from the home note to the far end.</summary>
    public static LineNote[] Walk(Frame frame)
    {
        var run = new LineNote[Steps(frame) + 1];
        var approach = frame.Direction == ScaleDirection.Ascent ? Approach.Ascent : Approach.Descent;
        for (var step = 0; step < run.Length; step++)
        {
            run[step] = new LineNote(Tone(frame, step), frame.Direction, step == 0 ? Approach.Leap : approach);
        }

        return run;
    }
}

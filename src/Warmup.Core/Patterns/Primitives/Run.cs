namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The run: one line over the whole ascent, from the tonic to the upper tonic.</summary>
    public static Pattern Run { get; } = new RunPattern();
}

internal sealed record RunPattern : PrimitivePattern
{
    public RunPattern()
        : base(UsualTop + 1, UsualTop + 1)
    {
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive("run", "one line over the whole scale, from the tonic to the upper tonic", () => Pattern.Run)
        with { Said = "one line goes over the whole scale from the tonic to the upper tonic" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override Line[] Lines(Frame frame, Expander expander) => [new Line(ValueList.Adopt(Walk(frame)))];

    /// <summary>Every note of the frame's list from the home note to the far end.</summary>
    public static LineNote[] Walk(Frame frame)
    {
        var run = new LineNote[Span(frame) + 1];
        var approach = frame.Direction == ScaleDirection.Ascent ? Approach.Ascent : Approach.Descent;
        for (var step = 0; step < run.Length; step++)
        {
            run[step] = new LineNote(Tone(frame, step), frame.Direction, step == 0 ? Approach.Leap : approach, Rational.One);
        }

        return run;
    }
}

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
        var direction = frame.Direction;
        var approach = direction == ScaleDirection.Ascent ? Approach.Ascent : Approach.Descent;
        var list = frame.Scale.List(direction);
        var (place, step) = (frame.Place(direction, 0), frame.Mirrored ? -1 : 1);
        for (var i = 0; i < run.Length; i++)
        {
            if (!list.TryGet(place, out var tone))
            {
                throw BeyondScale(frame, i);
            }

            run[i] = new LineNote(tone, direction, i == 0 ? Approach.Leap : approach);
            place += step;
        }

        return run;
    }
}

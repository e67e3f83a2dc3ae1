using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    internal const int LongestFigure = 64;

    internal const int WidestFigure = 24;

    /// <summary>
    /// A figure (alankara): steps sung from the tonic, then from each next degree, until the figure's highest note is the upper tonic.
    /// All its notes come from one list; small turns inside the figure do not switch lists.
    /// </summary>
    /// <param name="steps">1 to 64 steps of the scale, each -24 to 24; 0 is the degree on which the line stands.</param>
    /// <exception cref="ArgumentException">There are no steps or too many, or one lies outside its range.</exception>
    public static Pattern Figure(params ReadOnlySpan<int> steps) => new FigurePattern(ValueList.Create(steps));
}

internal sealed record FigurePattern : PrimitivePattern
{
    public FigurePattern(ValueList<int> steps)
        : base(UsualRows(steps) * (long)steps.Count, steps.Count)
    {
        if (steps.Count is 0 or > LongestFigure)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a figure must have 1 to {LongestFigure} steps, not {steps.Count}"), nameof(steps));
        }

        foreach (var step in steps)
        {
            Require.InRange(step, -WidestFigure, WidestFigure, "a step of a figure");
        }

        Sequence = steps;
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive(
        "figure",
        "places counted from 1, the tonic, sung from each degree in turn until the upper tonic is reached",
        new NumberBounds(-WidestFigure, WidestFigure, 1, LongestFigure),
        n => $"the figure {Said(n)} is sung from the tonic, then from each next degree, until it reaches the upper tonic",
        n => new FigurePattern(n))
        with { CountsPlaces = true };

    /// <summary>The steps of a row, 0 on the row's own degree.</summary>
    public ValueList<int> Sequence { get; }

    internal override Operation Operation => new(WordEntry, Sequence, default);

    internal override Line[] Make(Frame frame, Expander expander)
    {
        var highest = Math.Max(0, Highest(Sequence));

        // Rows stand on the degrees of the span; a figure that dips below its own degree begins below the tonic.
        var top = Steps(frame);
        var rows = Math.Max(0, top - highest + 1);
        expander.Bound((long)rows * Sequence.Count);
        if (rows == 0)
        {
            throw TooWide(frame, highest, top);
        }

        var lines = new LineSheet(rows, rows * Sequence.Count);
        for (var row = 0; row < rows; row++)
        {
            var notes = lines.Add(Sequence.Count);
            for (var i = 0; i < notes.Length; i++)
            {
                notes[i] = new LineNote(Tone(frame, row + Sequence[i]), frame.Direction, Approach.Leap);
            }
        }

        return lines.Lines;
    }

    private static PatternException TooWide(Frame frame, int highest, int top) => new(new Finding(
        FindingCode.PatternRefused,
        Severity.Error,
        $"the figure goes {English.Count(highest, "step")} above the note it starts from, and {frame.Scale.Name} has only {English.Count(top, "step")} from the first note to the last",
        "take a narrower figure or a scale with more notes"));

    private static int Highest(ValueList<int> steps)
    {
        var highest = int.MinValue;
        foreach (var step in steps)
        {
            highest = Math.Max(highest, step);
        }

        return highest;
    }

    private static int UsualRows(ValueList<int> steps) => steps.IsEmpty ? 0 : Math.Max(1, PatternLimits.UsualSteps - Math.Max(0, Highest(steps)) + 1);

    /// <summary>Places counted from 1: <c>1 2 3</c>, or with steps below <c>one step below, 1, 2</c>.</summary>
    private static string Said(ValueList<int> steps)
    {
        var names = steps.ConvertAll(s => s < 0 ? $"{English.Count(-s, "step")} below" : Place.Show(s));
        return string.Join(steps.IndexOf(s => s < 0) < 0 ? " " : ", ", names);
    }
}

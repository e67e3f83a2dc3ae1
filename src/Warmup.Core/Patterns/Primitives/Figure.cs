using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most steps of a figure.</summary>
    public const int LongestFigure = 64;

    /// <summary>The farthest step of a figure from its first degree, either way.</summary>
    public const int WidestFigure = 24;

    /// <summary>
    /// A figure (alankara) of relative steps, sung from the tonic, then from the next degree, until its highest note is the upper tonic.
    /// All its notes come from one list; small turns inside do not switch lists.
    /// </summary>
    /// <param name="steps">1 to 64 steps of the scale, each -24 to 24; 0 is the row's own degree.</param>
    /// <exception cref="ArgumentException">There is no step or there are too many, or one lies outside its range.</exception>
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

        Steps = steps;
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive(
        "figure", "steps counted from 0, sung from each degree until the upper tonic is reached", 1, LongestFigure, -WidestFigure, WidestFigure, n => new FigurePattern(n))
        with { Said = "the figure {*} is sung from the tonic, then from each next degree, until it reaches the upper tonic" };

    public ValueList<int> Steps { get; }

    internal override Operation Operation => new(WordEntry, Steps, default);

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var highest = Math.Max(0, Highest(Steps));

        // Rows stand on the degrees of the span; a figure that dips below its own degree begins below the tonic.
        var rows = Math.Max(0, Span(frame) - highest + 1);
        expander.Bound((long)rows * Steps.Count);
        if (rows == 0)
        {
            throw new PatternException(new Finding(
                FindingCode.PatternRefused,
                Severity.Error,
                string.Create(CultureInfo.InvariantCulture, $"the figure spans {highest} steps and {frame.Scale.Name} has only {frame.Top} to its top"),
                "take a narrower figure or a scale with more notes"));
        }

        var lines = new Line[rows];
        for (var row = 0; row < rows; row++)
        {
            var notes = new LineNote[Steps.Count];
            for (var i = 0; i < notes.Length; i++)
            {
                notes[i] = new LineNote(Tone(frame, row + Steps[i]), frame.Direction, Approach.Leap, Rational.One);
            }

            lines[row] = new Line(ValueList.Adopt(notes));
        }

        return lines;
    }

    private static int Highest(ValueList<int> steps)
    {
        var highest = int.MinValue;
        foreach (var step in steps)
        {
            highest = Math.Max(highest, step);
        }

        return highest;
    }

    private static int UsualRows(ValueList<int> steps) => steps.IsEmpty ? 0 : Math.Max(1, UsualTop - Math.Max(0, Highest(steps)) + 1);
}

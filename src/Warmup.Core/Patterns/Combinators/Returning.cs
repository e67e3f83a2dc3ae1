namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>After each note a fixed step is sung, unless the note is that step itself: 0 gives S R S G S M S and so on.</summary>
    /// <param name="step">Steps forward from the note on which the rule starts, -24 to 24; 0, the default, is the tonic.</param>
    /// <exception cref="ArgumentException">The step lies outside its range, or the result would have too many notes.</exception>
    public Pattern Returning(int step = 0) => new ReturningPattern(this, step);
}

internal sealed record ReturningPattern : UnaryPattern
{
    public ReturningPattern(Pattern inner, int step)
        : base(inner, 2 * inner.UsualNotes, 2 * inner.UsualLongest) => Step = Require.InRange(step, -WidestFigure, WidestFigure);

    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "returning",
        "after each note place n is sung: 1 is the tonic",
        -WidestFigure,
        WidestFigure,
        n => $"after each note {Said(n)} is sung",
        (p, n) => p.Returning(n))
        with { CountsPlaces = true };

    public int Step { get; }

    internal override Operation Operation => new(WordEntry, Step);

    internal override LawClass Class => LawClass.Barrier;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        if (lines.Length == 0)
        {
            return lines;
        }

        expander.BoundTimes(lines, 2);
        var home = new LineNote(Tone(frame, Step), frame.Direction, Approach.Leap);
        return Map(lines, line => Return(line, home));
    }

    private static Line Return(Line line, LineNote home)
    {
        var notes = new List<LineNote>(2 * line.Notes.Count);
        foreach (var note in line.Notes)
        {
            if (note.Tone == home.Tone)
            {
                notes.Add(note with { Approach = Approach.Leap });
                continue;
            }

            notes.Add(note with { Approach = Approach.Leap, Rest = default });
            notes.Add(home with { Length = note.Length, Rest = note.Rest });
        }

        return new Line(notes.ToValueList());
    }

    private static string Said(int step) => step == 0 ? "the tonic" : $"the note {English.Count(Math.Abs(step), "step")} {(step < 0 ? "below" : "above")} the tonic";
}

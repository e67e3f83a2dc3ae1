namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The highest number by which a note of a line is named.</summary>
    public const int MostNotesOfLine = 1_000;

    /// <summary>The first note of each line and every n-th behind it: 2 gives S G P N from S R G M P D N S'.</summary>
    /// <param name="n">1 to 1,000; 1 keeps all.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="n"/> lies outside its range.</exception>
    public Pattern EveryNth(int n) => new EveryNthPattern(this, n);

    /// <summary>A range of notes of each line. A line without any of them vanishes.</summary>
    /// <param name="first">The first note, counted from 1: 1 to 1,000.</param>
    /// <param name="last">The last note: <paramref name="first"/> to 1,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public Pattern Notes(int first, int last) => new NotesPattern(this, first, last);

    /// <summary>After each note a fixed step is sung, unless the note is that step itself: 0 gives S R S G S M S ...</summary>
    /// <param name="step">Steps forward from the note on which the rule starts, -24 to 24; 0 is the tonic.</param>
    /// <exception cref="ArgumentException">The step lies outside its range, or the result would have too many notes.</exception>
    public Pattern Returning(int step = 0) => new ReturningPattern(this, step);
}

internal sealed record EveryNthPattern : UnaryPattern
{
    public EveryNthPattern(Pattern inner, int n)
        : base(inner) => N = Require.InRange(n, 1, MostNotesOfLine);

    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("every-nth", "the first note of each line and every n-th behind it", 1, MostNotesOfLine, (p, n) => p.EveryNth(n))
        with { Said = "of each line the first note and every {0}. note behind it are kept" };

    public int N { get; }

    internal override Operation Operation => new(WordEntry, [N], default);

    internal override LawClass Class => LawClass.EachLine;

    internal override Line[] Lines(Frame frame, Expander expander) => N == 1 ? Inner.Lines(frame, expander) : Map(Inner.Lines(frame, expander), Thin);

    private Line Thin(Line line)
    {
        var notes = new LineNote[(line.Notes.Count + N - 1) / N];
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = line.Notes[i * N] with { Approach = Approach.Leap };
        }

        return new Line(ValueList.Adopt(notes));
    }
}

internal sealed record NotesPattern : UnaryPattern
{
    public NotesPattern(Pattern inner, int first, int last)
        : base(inner)
    {
        First = Require.InRange(first, 1, MostNotesOfLine, "the first note");
        Last = Require.InRange(last, first, MostNotesOfLine, "the last note");
    }

    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "notes", "the notes from one number to another of each line", 2, 2, 1, MostNotesOfLine, (p, n) => p.Notes(n[0], n[1]))
        with { Said = "of each line notes {0} to {1} are kept" };

    public int First { get; }

    public int Last { get; }

    internal override Operation Operation => new(WordEntry, [First, Last], default);

    internal override LawClass Class => LawClass.Other;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var kept = new List<Line>();
        foreach (var line in Inner.Lines(frame, expander))
        {
            if (line.Notes.Count >= First)
            {
                kept.Add(line.Part(First - 1, Math.Min(Last, line.Notes.Count) - First + 1));
            }
        }

        return [.. kept];
    }
}

internal sealed record ReturningPattern : UnaryPattern
{
    public ReturningPattern(Pattern inner, int step)
        : base(inner, 2 * inner.UsualNotes, 2 * inner.UsualLongest) => Step = Require.InRange(step, -WidestFigure, WidestFigure);

    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "returning", "step n is sung after each note (0: the tonic)", -WidestFigure, WidestFigure, (p, n) => p.Returning(n))
        with { Said = "after each note step {0} is sung" };

    public int Step { get; }

    internal override Operation Operation => new(WordEntry, [Step], default);

    internal override LawClass Class => LawClass.Barrier;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        if (lines.Length == 0)
        {
            return lines;
        }

        expander.BoundTimes(lines, 2);
        var home = new LineNote(Tone(frame, Step), frame.Direction, Approach.Leap, Rational.One);
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
}

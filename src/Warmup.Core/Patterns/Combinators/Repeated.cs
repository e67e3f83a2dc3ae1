namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most repetitions of a pattern.</summary>
    public const int MostRepetitions = 10_000;

    /// <summary>The most repetitions of each note or each line.</summary>
    public const int MostEach = 64;

    /// <summary>The whole pattern so many times.</summary>
    /// <param name="times">1 to 10,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern Repeat(int times) => new RepeatedPattern(this, times);

    /// <summary>Each line so many times before the next.</summary>
    /// <param name="times">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern EachLine(int times) => new EachLinePattern(this, times);

    /// <summary>Each note so many times: 2 gives the pairs of janta exercises.</summary>
    /// <param name="times">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern EachNote(int times) => new EachNotePattern(this, times);
}

internal sealed record RepeatedPattern : UnaryPattern
{
    public RepeatedPattern(Pattern inner, int times)
        : base(inner, Require.InRange(times, 1, MostRepetitions) * inner.UsualNotes, inner.UsualLongest) => Times = times;

    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("repeat", "the whole pattern n times", 1, MostRepetitions, (p, n) => p.Repeat(n))
        with { Said = "the whole is sung {0} times" };

    public int Times { get; }

    internal override Operation Operation => new(WordEntry, [Times], default);

    internal override LawClass Class => LawClass.LineOrder;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var once = Inner.Lines(frame, expander);
        expander.BoundTimes(once, Times);
        var all = new Line[once.Length * Times];
        for (var i = 0; i < Times; i++)
        {
            once.CopyTo(all, i * once.Length);
        }

        return all;
    }
}

internal sealed record EachLinePattern : UnaryPattern
{
    public EachLinePattern(Pattern inner, int times)
        : base(inner, Require.InRange(times, 1, MostEach) * inner.UsualNotes, inner.UsualLongest) => Times = times;

    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("each-line", "each line n times before the next", 1, MostEach, (p, n) => p.EachLine(n))
        with { Said = "each line is sung {0} times" };

    public int Times { get; }

    internal override Operation Operation => new(WordEntry, [Times], default);

    internal override LawClass Class => LawClass.LineOrder;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var once = Inner.Lines(frame, expander);
        expander.BoundTimes(once, Times);
        var all = new Line[once.Length * Times];
        for (var i = 0; i < all.Length; i++)
        {
            all[i] = once[i / Times];
        }

        return all;
    }
}

internal sealed record EachNotePattern : UnaryPattern
{
    public EachNotePattern(Pattern inner, int times)
        : base(inner, Require.InRange(times, 1, MostEach) * inner.UsualNotes, times * inner.UsualLongest) => Times = times;

    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("each-note", "each note n times (2: janta)", 1, MostEach, (p, n) => p.EachNote(n))
        with { Said = "each note is sung {0} times" };

    public int Times { get; }

    internal override Operation Operation => new(WordEntry, [Times], default);

    internal override LawClass Class => LawClass.EachLine;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        expander.BoundTimes(lines, Times);
        return Map(lines, Multiply);
    }

    private Line Multiply(Line line)
    {
        var source = line.Notes;
        var notes = new LineNote[source.Count * Times];
        for (var i = 0; i < notes.Length; i++)
        {
            // A note and its own repetition have nothing between them; the silence comes behind the last of them.
            var note = source[i / Times];
            var first = i % Times == 0;
            var last = i % Times == Times - 1;
            notes[i] = note with { Approach = first ? note.Approach : Approach.Leap, Rest = last ? note.Rest : default };
        }

        return new Line(ValueList.Adopt(notes));
    }
}

namespace Warmup;

public abstract partial record Pattern
{
    // The most repetitions of each note or each line.
    internal const int MostEach = 64;

    /// <summary>Each note a number of times: 2 gives the pairs of janta exercises.</summary>
    /// <param name="times">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern EachNote(int times) => new EachNotePattern(this, Require.InRange(times, 1, MostEach));
}

internal sealed record EachNotePattern(Pattern Inner, int Times) : UnaryPattern(Inner, Times * Inner.UsualNotes, Times * Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "each-note", "each note n times (2: janta)", 1, MostEach, n => $"each note is sung {English.Times(n)}", (p, n) => p.EachNote(n));

    internal override Operation Operation => new(WordEntry, Times);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsIdentity => Times == 1;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is EachNotePattern first && Times * first.Times <= MostEach ? new EachNotePattern(Anything, Times * first.Times) : null;

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
            // A note and its own repetition have nothing between them; the silence comes after the last of them.
            var note = source[i / Times];
            var first = i % Times == 0;
            var last = i % Times == Times - 1;
            notes[i] = note with { Approach = first ? note.Approach : Approach.Leap, Rest = last ? note.Rest : default };
        }

        return new Line(ValueList.Adopt(notes));
    }
}

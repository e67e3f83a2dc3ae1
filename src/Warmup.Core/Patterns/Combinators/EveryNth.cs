namespace Warmup;

public abstract partial record Pattern
{
    // The highest number by which a note of a line is named.
    internal const int MostNotesOfLine = 1_000;

    /// <summary>The first note of each line and every n-th note after it: 2 gives S G P N from S R G M P D N S'.</summary>
    /// <param name="n">1 to 1,000; 1 keeps all notes.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="n"/> lies outside its range.</exception>
    public Pattern EveryNth(int n) => new EveryNthPattern(this, n);
}

internal sealed record EveryNthPattern : UnaryPattern
{
    public EveryNthPattern(Pattern inner, int n)
        : base(inner) => N = Require.InRange(n, 1, MostNotesOfLine);

    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "every-nth",
        "the first note of each line and every n-th note after it",
        1,
        MostNotesOfLine,
        n => n == 1 ? "every note of each line is kept" : $"of each line the first note and every {English.Ordinal(n)} note after it are kept",
        (p, n) => p.EveryNth(n))
        with { FormerName = "every" };

    public int N { get; }

    internal override Operation Operation => new(WordEntry, N);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsIdentity => N == 1;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is EveryNthPattern first && N * first.N <= MostNotesOfLine ? new EveryNthPattern(Anything, N * first.N) : null;

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

namespace Warmup;

public abstract partial record Pattern
{
    internal const int MostRepetitions = 10_000;

    /// <summary>The whole pattern a number of times.</summary>
    /// <param name="times">1 to 10,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern Repeat(int times) => new RepeatedPattern(this, Require.InRange(times, 1, MostRepetitions));
}

internal sealed record RepeatedPattern(Pattern Inner, int Times) : UnaryPattern(Inner, Times * Inner.UsualNotes, Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "repeat", "the whole pattern n times", 1, MostRepetitions, n => $"the whole is sung {English.Times(n)}", (p, n) => p.Repeat(n));

    internal override Operation Operation => new(WordEntry, Times);

    internal override LawClass Class => LawClass.LineOrder;

    internal override bool IsIdentity => Times == 1;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is RepeatedPattern first && Times * first.Times <= MostRepetitions ? new RepeatedPattern(Anything, Times * first.Times) : null;

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

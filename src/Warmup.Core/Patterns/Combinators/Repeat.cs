namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most repetitions of a pattern.</summary>
    public const int MostRepetitions = 10_000;

    /// <summary>The whole pattern so many times.</summary>
    /// <param name="times">1 to 10,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern Repeat(int times) => new RepeatedPattern(this, times);
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

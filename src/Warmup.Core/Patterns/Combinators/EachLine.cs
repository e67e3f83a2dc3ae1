namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each line so many times before the next.</summary>
    /// <param name="times">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern EachLine(int times) => new EachLinePattern(this, times);
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

    internal override bool IsIdentity => Times == 1;

    internal override bool DistributesOverSums => true;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is EachLinePattern first && Times * first.Times <= MostEach ? new EachLinePattern(Anything, Times * first.Times) : null;

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

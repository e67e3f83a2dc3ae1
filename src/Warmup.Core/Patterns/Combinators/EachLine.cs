namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each line a number of times before the next.</summary>
    /// <param name="times">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> lies outside its range.</exception>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern EachLine(int times) => new EachLinePattern(this, Require.InRange(times, 1, MostEach));
}

internal sealed record EachLinePattern(Pattern Inner, int Times) : UnaryPattern(Inner, Times * Inner.UsualNotes, Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "each-line", "each line n times before the next", 1, MostEach, n => $"each line is sung {English.Times(n)} before the next", (p, n) => p.EachLine(n));

    internal override Operation Operation => new(WordEntry, Times);

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

using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most repetitions.</summary>
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
        : base(inner, Require.InRange(times, 1, MostRepetitions) * inner.UsualNotes) => Times = times;

    public static PatternWord WordEntry { get; } =
        PatternWord.CombinatorWithNumber("repeat", 1, MostRepetitions, (p, n) => p.Repeat(n));

    public int Times { get; }

    private protected override string Word => string.Create(CultureInfo.InvariantCulture, $"{WordEntry.Name}({Times})");

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var once = Inner.Lines(frame, expander);
        expander.Bound(Times * once.Sum(l => (long)l.Notes.Count));
        var all = new Line[once.Length * Times];
        for (var i = 0; i < Times; i++)
        {
            once.CopyTo(all, i * once.Length);
        }

        return all;
    }
}

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The farthest that a span is moved at once, in steps.</summary>
    public const int FarthestSpan = 24;

    /// <summary>The rule so many steps of the scale further forward: 1 starts the ladder on R and ends it on R'.</summary>
    /// <param name="steps">-24 to 24. Moving composes by addition and is undone by the opposite number.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="steps"/> lies outside its range.</exception>
    public Pattern Transposed(int steps) => new SpanPattern(this, steps, steps);

    /// <summary>The rule begins so many steps before the tonic: 3 starts the ladder on the low P of a seven-note scale.</summary>
    /// <param name="steps">0 to 24.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="steps"/> lies outside its range.</exception>
    public Pattern Below(int steps) => new SpanPattern(this, -Require.InRange(steps, 0, FarthestSpan), 0);

    /// <summary>The rule goes so many steps beyond the upper tonic.</summary>
    /// <param name="steps">0 to 24.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="steps"/> lies outside its range.</exception>
    public Pattern Above(int steps) => new SpanPattern(this, 0, Require.InRange(steps, 0, FarthestSpan));

    /// <summary>
    /// The rule in another span: it begins and ends so many steps further forward. Inside a mirrored pattern forward is down.
    /// </summary>
    /// <param name="home">Steps by which the first note moves forward, -24 to 24.</param>
    /// <param name="end">Steps by which the far end moves forward, -24 to 24.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public Pattern Span(int home, int end) => new SpanPattern(this, home, end);
}

internal sealed record SpanPattern : UnaryPattern
{
    public SpanPattern(Pattern inner, int home, int end)
        : base(inner)
    {
        Home = Require.InRange(home, -FarthestSpan, FarthestSpan, "a span");
        End = Require.InRange(end, -FarthestSpan, FarthestSpan, "a span");
    }

    public static PatternWord TransposedWord { get; } =
        PatternWord.Combinator("transposed", "the rule n steps of the scale higher", -FarthestSpan, FarthestSpan, (p, n) => p.Transposed(n))
        with { Said = "all of it begins and ends {0} steps further on" };

    public static PatternWord BelowWord { get; } =
        PatternWord.Combinator("below", "the rule begins n steps below the tonic", 0, FarthestSpan, (p, n) => p.Below(n))
        with { Said = "it begins {0} steps below the tonic" };

    public static PatternWord AboveWord { get; } =
        PatternWord.Combinator("above", "the rule goes n steps beyond the upper tonic", 0, FarthestSpan, (p, n) => p.Above(n))
        with { Said = "it goes {0} steps beyond the upper tonic" };

    public static PatternWord SpanWord { get; } = PatternWord.Combinator(
        "span", "the rule begins and ends so many steps further on", 2, 2, -FarthestSpan, FarthestSpan, (p, n) => p.Span(n[0], n[1]))
        with { Said = "it begins {0} and ends {1} steps further on" };

    public int Home { get; }

    public int End { get; }

    // One combinator with the plainest of its names.
    internal override Operation Operation => (Home, End) switch
    {
        _ when Home == End => new(TransposedWord, [Home], default),
        ( < 0, 0) => new(BelowWord, [-Home], default),
        (0, > 0) => new(AboveWord, [End], default),
        _ => new(SpanWord, [Home, End], default),
    };

    internal override LawClass Class => LawClass.Frame;

    internal override int Rank => 0;

    internal override bool IsIdentity => Home == 0 && End == 0;

    internal override bool IsStuck => Inner is UpDownPattern;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is SpanPattern first && Math.Abs(Home + first.Home) <= FarthestSpan && Math.Abs(End + first.End) <= FarthestSpan
            ? new SpanPattern(Anything, Home + first.Home, End + first.End)
            : null;

    // The way down of an up-down goes below the home note when its way up goes beyond the top.
    internal override bool GoesInside(UnaryPattern other) => other.Class != LawClass.UpDown && base.GoesInside(other);

    // Inside a mirror forward is down, and the home note is the far end.
    internal override UnaryPattern Past(UnaryPattern other) => other is MirroredPattern ? new SpanPattern(Anything, -End, -Home) : this;

    internal override Line[] Lines(Frame frame, Expander expander) => Inner.Lines(frame.Span(Home, End), expander);
}

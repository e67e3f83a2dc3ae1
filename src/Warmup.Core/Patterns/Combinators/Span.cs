namespace Warmup;

public abstract partial record Pattern
{
    // The farthest that an end of a pattern is moved at once, in steps.
    internal const int FarthestSpan = 24;

    /// <summary>The rule moved up or down by steps of the scale: 1 starts the ladder on R and ends it on R'.</summary>
    /// <param name="steps">-24 to 24; negative is down. Moving adds up, and the opposite number undoes it.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="steps"/> lies outside its range.</exception>
    public Pattern Transposed(int steps) => new SpanPattern(this, Require.InRange(steps, -FarthestSpan, FarthestSpan), steps);

    /// <summary>The rule begins below the tonic: 3 starts the ladder on the low P of a seven-note scale.</summary>
    /// <param name="steps">0 to 24 steps.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="steps"/> lies outside its range.</exception>
    public Pattern Below(int steps) => new SpanPattern(this, -Require.InRange(steps, 0, FarthestSpan), 0);

    /// <summary>The rule goes beyond the upper tonic.</summary>
    /// <param name="steps">0 to 24 steps.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="steps"/> lies outside its range.</exception>
    public Pattern Above(int steps) => new SpanPattern(this, 0, Require.InRange(steps, 0, FarthestSpan));

    /// <summary>The rule between other ends: where it begins and where it ends are each moved by steps of the scale.</summary>
    /// <param name="home">Steps by which the beginning moves up, -24 to 24; negative is down.</param>
    /// <param name="end">Steps by which the far end moves up, -24 to 24; negative is down.</param>
    /// <remarks>Inside a mirrored pattern the directions are turned round: what moves up there moves down.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public Pattern Span(int home, int end) =>
        new SpanPattern(this, Require.InRange(home, -FarthestSpan, FarthestSpan), Require.InRange(end, -FarthestSpan, FarthestSpan));
}

internal sealed record SpanPattern(Pattern Inner, int Home, int End) : UnaryPattern(Inner)
{
    public static PatternWord TransposedWord { get; } = PatternWord.Unary(
        "transposed",
        "the rule n steps of the scale higher; a negative n moves it down",
        -FarthestSpan,
        FarthestSpan,
        n => n == 0 ? "the whole rule stays in its place" : $"the whole rule moves {English.UpOrDown(n)} of the scale",
        (p, n) => p.Transposed(n));

    public static PatternWord BelowWord { get; } = PatternWord.Unary(
        "below",
        "the rule begins n steps below the tonic",
        0,
        FarthestSpan,
        n => n == 0 ? "its lowest note stays in its place" : $"it reaches {English.Count(n, "step")} further down",
        (p, n) => p.Below(n));

    public static PatternWord AboveWord { get; } = PatternWord.Unary(
        "above",
        "the rule goes n steps beyond the upper tonic",
        0,
        FarthestSpan,
        n => n == 0 ? "its highest note stays in its place" : $"it reaches {English.Count(n, "step")} further up",
        (p, n) => p.Above(n));

    public static PatternWord SpanWord { get; } = PatternWord.Unary(
        "span",
        "the rule's lower end moved up by the first number of steps, its upper end by the second; a negative number moves an end down",
        new NumberBounds(-FarthestSpan, FarthestSpan, 2, 2),
        n => $"its lower end {Moves(n[0])} and its upper end {Moves(n[1])}",
        (p, n) => p.Span(n[0], n[1]))
        with { FormerName = "reach" };

    // One combinator with the plainest of its names.
    internal override Operation Operation => (Home, End) switch
    {
        _ when Home == End => new(TransposedWord, Home),
        ( < 0, 0) => new(BelowWord, -Home),
        (0, > 0) => new(AboveWord, End),
        _ => new(SpanWord, Home, End),
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

    private static string Moves(int steps) => steps == 0 ? "stays in its place" : $"moves {English.UpOrDown(steps)}";
}

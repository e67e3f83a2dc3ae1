namespace Warmup;

/// <summary>How lines follow each other: without a break, or line by line with a held last note and a breath.</summary>
/// <remarks>
/// Line by line the breath comes out of the hold: the last note lasts to the end of the avartana less the breath. Where it would last
/// less than <see cref="LeastHold"/>, one more avartana is taken. In free rhythm the last note lasts <see cref="LeastHold"/> and the
/// breath goes on to the next whole akshara. Immutable, value equality.
/// </remarks>
public sealed record Delivery
{
    /// <summary>The fraction of an akshara to which a breath given in seconds is rounded up (the project's own setting).</summary>
    public const int BreathGrid = 24;

    private readonly Rational _breathSeconds = Rational.One;
    private readonly Rational _leastHold = Rational.One;

    private Delivery(bool lineByLine) => IsLineByLine = lineByLine;

    /// <summary>Lines run on.</summary>
    public static Delivery Continuous { get; } = new(false);

    /// <summary>The last note of each line is held, then a breath of one second.</summary>
    public static Delivery LineByLine { get; } = new(true);

    /// <summary>Whether each line ends with a hold and a breath.</summary>
    public bool IsLineByLine { get; }

    /// <summary>The breath after a line, in seconds: 0.2 to 10; 1 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational BreathSeconds
    {
        get => _breathSeconds;
        init => _breathSeconds = Require.InRange(value, new Rational(1, 5), 10, nameof(BreathSeconds));
    }

    /// <summary>The least length of a held last note, in aksharas: 1/4 to 64; 1 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational LeastHold
    {
        get => _leastHold;
        init => _leastHold = Require.InRange(value, new Rational(1, 4), 64, nameof(LeastHold));
    }

    /// <summary>The breath in aksharas at a tempo, rounded up to the grid so that all lengths stay simple fractions.</summary>
    /// <param name="tempo">Aksharas a minute.</param>
    public Rational BreathAksharas(Rational tempo) => new((BreathSeconds * tempo / 60 * BreathGrid).Ceiling(), BreathGrid);

    /// <summary><c>continuous</c> or <c>line by line</c>.</summary>
    public override string ToString() => IsLineByLine ? "line by line" : "continuous";
}

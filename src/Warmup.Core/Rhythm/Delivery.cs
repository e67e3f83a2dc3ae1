namespace Warmup;

/// <summary>How far a line is filled up before the next one begins.</summary>
public enum Fill
{
    /// <summary>Not at all: lines flow over bar lines.</summary>
    None,

    /// <summary>To the end of the anga.</summary>
    Anga,

    /// <summary>To the end of the avartana.</summary>
    Avartana,
}

/// <summary>What fills a line up.</summary>
public enum FillBy
{
    /// <summary>
    /// The last note is held, as far as the line leaves room in its avartana (or anga). Line by line a line that leaves none is not made
    /// longer: the breath is taken out of its last note.
    /// </summary>
    Room,

    /// <summary>The last note is held, line by line for one more avartana (or anga) where the line leaves no room.</summary>
    Hold,

    /// <summary>Silence after the last note, and after the breath where there is one; line by line one more avartana (or anga) of it where the line leaves no room.</summary>
    Rest,
}

/// <summary>How lines follow each other: without a break, or line by line with a held last note and a breath.</summary>
/// <remarks>
/// <para>Continuous lines run on; with a <see cref="Fill"/> each is filled up to the end of the anga or avartana, by a hold or a rest.</para>
/// <para>Line by line the breath comes out of the hold: the last note lasts to the end of the avartana (or anga) less the breath. Where it
/// would last less than <see cref="LeastHold"/> or its own length, the breath is what these leave, if that is as long as the note; else it
/// takes the second half of the note's own length too, as far as it needs it: all of it where the line fills its avartana (common
/// practice). Only <see cref="FillBy.Hold"/> and <see cref="FillBy.Rest"/> then take one more avartana (or anga): the first holds the note in it, the
/// second leaves it silent, for an answer. Without a fill, and always in free rhythm, the last note lasts <see cref="LeastHold"/>, or its
/// own length where that is longer, and the breath goes on to the next whole akshara.</para>
/// <para>The free meter has no avartana and so no fill. Immutable, value equality.</para>
/// </remarks>
public sealed record Delivery
{
    private readonly Rational _breathSeconds = Rational.One;
    private readonly Rational _leastHold = Rational.One;
    private readonly int _breathGrid = 2;
    private readonly Fill _fill;
    private readonly FillBy _fillBy;

    private Delivery(bool lineByLine, Fill fill)
    {
        IsLineByLine = lineByLine;
        _fill = fill;
    }

    /// <summary>The finest grid of breaths: 24 parts of an akshara (the project's own setting), fine enough for every speed, and all lengths stay simple fractions.</summary>
    public static int FinestBreathGrid => 24;

    /// <summary>Lines run on.</summary>
    public static Delivery Continuous { get; } = new(false, Fill.None);

    /// <summary>
    /// The last note of each line is held to the end of the avartana less a breath of one second; a line that fills its avartana breathes in
    /// the second half of its last note.
    /// </summary>
    public static Delivery LineByLine { get; } = new(true, Fill.Avartana);

    /// <summary>Whether each line ends with a hold and a breath.</summary>
    public bool IsLineByLine { get; }

    /// <summary>The breath after a line, in seconds: 0.2 to 10; 1 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational BreathSeconds
    {
        get => _breathSeconds;
        init => _breathSeconds = Require.InRange(value, new Rational(1, 5), 10, nameof(BreathSeconds));
    }

    /// <summary>
    /// The parts of an akshara to which a breath given in seconds is rounded up: 1, 2, 3, 4, 6, 8, 12 or 24; 2 by default (the project's
    /// own setting), so that a breath is written with plain notes and rests at any tempo.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value does not divide 24.</exception>
    public int BreathGrid
    {
        get => _breathGrid;
        init => _breathGrid = Require.InRange(value, 1, FinestBreathGrid, nameof(BreathGrid)) is var grid && FinestBreathGrid % grid == 0
            ? grid
            : throw new ArgumentOutOfRangeException(
                nameof(BreathGrid), value, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"BreathGrid must divide {FinestBreathGrid}, and {value} does not"));
    }

    /// <summary>
    /// The least length of a held last note, in aksharas: 1/4 to 64; 1 by default. Without a fill it is the length of the hold, unless the
    /// note is longer by itself. With <see cref="FillBy.Room"/> a line that leaves less room has a shorter breath.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public Rational LeastHold
    {
        get => _leastHold;
        init => _leastHold = Require.InRange(value, new Rational(1, 4), 64, nameof(LeastHold));
    }

    /// <summary>How far each line is filled up; not at all by default where lines run on, to the avartana's end line by line.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the three.</exception>
    public Fill Fill
    {
        get => _fill;
        init => _fill = (Fill)Require.InRange((int)value, (int)Fill.None, (int)Fill.Avartana, nameof(Fill));
    }

    /// <summary>What fills a line up; a hold in the room that the line leaves, by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the three.</exception>
    public FillBy FillBy
    {
        get => _fillBy;
        init => _fillBy = (FillBy)Require.InRange((int)value, (int)FillBy.Room, (int)FillBy.Rest, nameof(FillBy));
    }

    /// <summary>The breath in aksharas at a tempo, rounded up to the grid.</summary>
    /// <param name="tempo">Aksharas a minute.</param>
    public Rational BreathAksharas(Rational tempo) => new((BreathSeconds * tempo / 60 * BreathGrid).Ceiling(), BreathGrid);

    /// <summary><c>continuous</c> or <c>line by line</c>, and the fill where it is not the usual one.</summary>
    public override string ToString()
    {
        var way = IsLineByLine ? "line by line" : "continuous";
        return (Fill, FillBy) switch
        {
            (Fill.None, FillBy.Room) => IsLineByLine ? $"{way}, lines not filled up" : way,
            (Fill.None, _) => $"{way}, lines not filled up",
            (Fill.Avartana, FillBy.Room) when IsLineByLine => way,
            (var fill, var by) => $"{way}, each line filled up to the {(fill == Fill.Anga ? "anga" : "avartana")}{Means(by)}",
        };
    }

    private string Means(FillBy by) => by switch
    {
        FillBy.Rest => " by a rest",
        FillBy.Room when IsLineByLine => string.Empty,
        _ => " by a hold",
    };
}

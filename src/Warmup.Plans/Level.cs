using System.Globalization;

namespace Warmup.Plans;

/// <summary>
/// What singers of a level practise, how, and how it grows from week to week. All values are the project's own settings; the defaults are the
/// beginner's.
/// </summary>
/// <remarks>Moving on to another level is the teacher's choice; nothing here decides it. Immutable, value equality.</remarks>
public sealed record Level
{
    private const int LongestName = 100;
    private const int MostGroups = 100;

    /// <summary>The level's name, 1 to 100 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The name is empty or too long, or holds a control character.</exception>
    public required string Name
    {
        get;
        init => field = Checks.Name(value, LongestName, "the name of a level");
    }

    /// <summary>The groups of exercises that the middle drills come from, as <see cref="Exercise.Group"/> names them (those of <see cref="Repertoire"/> and of <see cref="NarrowExercises"/>), 1 to 100; sarali, choir and neighbours by default.</summary>
    /// <exception cref="ArgumentException">There are none or too many, or one of them is <see langword="null"/>.</exception>
    public ValueList<string> Groups
    {
        get;
        init
        {
            Require.InRange(value.Count, 1, MostGroups, "the number of exercise groups of a level");
            field = Checks.NoNulls(value, nameof(Groups));
        }
    } = ["sarali", "choir", "neighbours"];

    /// <summary>How the lines of a middle drill follow each other; line by line, each filled to the end of its anga, by default.</summary>
    public Delivery Delivery
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(Delivery));
    } = FramingExercises.LineByLine;

    /// <summary>
    /// The speeds in which each middle drill is sung, one after the other, 1 to 64; the first by default. The opening and the descent are sung in
    /// the first speed alone.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or too many.</exception>
    public ValueList<Speed> Speeds
    {
        get;
        init
        {
            Require.InRange(value.Count, 1, Drill.MostSpeeds, "the number of speeds of a level");
            field = value;
        }
    } = [Speed.First];

    /// <summary>
    /// The tempo of each week, in whole aksharas a minute: the first week has the ramp's start, and each further week goes one step on. 60 to 72
    /// by 2 by default.
    /// </summary>
    /// <exception cref="ArgumentException">The start, the step or the ceiling is not a whole number.</exception>
    public TempoRamp Tempo
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Tempo));
            field = value.Start.Denominator == 1 && value.Step.Denominator == 1 && value.Ceiling.Denominator == 1
                ? value
                : throw new ArgumentException($"the tempo of a level must rise in whole aksharas a minute, not {value}", nameof(Tempo));
        }
    } = new(60, 2, 72);

    /// <summary>The share of a scale's middle drills, the easiest first, that is open in the first week, in per cent, 0 to 100; 40 by default. One drill is always open.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int StartCeiling
    {
        get;
        init => field = Require.InRange(value, 0, 100, "the start ceiling of a level");
    } = 40;

    /// <summary>How many per cent more are open each further week, 0 to 100; 10 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int CeilingStep
    {
        get;
        init => field = Require.InRange(value, 0, 100, "the ceiling step of a level");
    } = 10;

    /// <summary>
    /// How far the floor lies below the ceiling, in per cent of the scale's drills, 1 to 100; 30 by default. Each day's hardest drill lies between
    /// the two.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Band
    {
        get;
        init => field = Require.InRange(value, 1, 100, "the band of a level");
    } = 30;

    /// <summary>Scale exercises, what choirs sing and a few neighbouring notes, line by line in the first speed, at 60 to 72 aksharas a minute, 2 faster each week.</summary>
    public static Level Beginner { get; } = new() { Name = "beginner" };

    /// <summary>Doubled notes, leaps (datu varisai) and the alankaras too, line by line in two speeds, at 66 to 84 aksharas a minute, 2 faster each week.</summary>
    public static Level Intermediate { get; } = new()
    {
        Name = "intermediate",
        Groups = ["sarali", "choir", "neighbours", "janta", "datu", "alankara"],
        Speeds = [Speed.First, Speed.Second],
        Tempo = new TempoRamp(66, 2, 84),
        StartCeiling = 50,
    };

    /// <summary>Both sthayi groups too, in two speeds without a break between the lines, at 72 to 99 aksharas a minute, 3 faster each week.</summary>
    public static Level Advanced { get; } = new()
    {
        Name = "advanced",
        Groups = ["sarali", "choir", "neighbours", "janta", "datu", "alankara", "melsthayi", "mandrasthayi"],
        Delivery = Delivery.Continuous,
        Speeds = [Speed.First, Speed.Second],
        Tempo = new TempoRamp(72, 3, 99),
        StartCeiling = 60,
    };

    /// <summary>The three levels, the easiest first.</summary>
    public static ValueList<Level> All => [Beginner, Intermediate, Advanced];

    /// <summary>The ways in which a middle drill may be sung: as the level wants it; line by line; line by line in the first of its speeds alone.</summary>
    internal IReadOnlyList<(Delivery Delivery, ValueList<Speed> Speeds)> Renderings =>
        [.. ((List<(Delivery, ValueList<Speed>)>)[(Delivery, Speeds), (FramingExercises.LineByLine, Speeds), (FramingExercises.LineByLine, [Speeds[0]])]).Distinct()];

    internal int StartTempo => TempoOf(0);

    /// <summary>The level for an experience.</summary>
    /// <param name="experience">The experience.</param>
    /// <exception cref="ArgumentOutOfRangeException">The experience is none of the three.</exception>
    public static Level Of(Experience experience) => experience switch
    {
        Experience.Beginner => Beginner,
        Experience.Intermediate => Intermediate,
        Experience.Advanced => Advanced,
        _ => throw new ArgumentOutOfRangeException(nameof(experience), experience, "experience must be beginner, intermediate or advanced"),
    };

    /// <summary>The level that suits everyone in a class: that of the least experienced singer.</summary>
    /// <param name="singers">The singers, at least one.</param>
    /// <exception cref="ArgumentException">There are no singers.</exception>
    public static Level Of(ValueList<Singer> singers) => singers.IsEmpty
        ? throw new ArgumentException("a class must have at least 1 singer, not 0", nameof(singers))
        : Of(Checks.NoNulls(singers, nameof(singers)).Min(s => s.Experience));

    /// <summary>How many of a scale's middle drills, counted from the easiest, are open in a week: at least one, if there is one.</summary>
    /// <param name="drills">How many middle drills the scale has, 0 or more.</param>
    /// <param name="week">The week, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative.</exception>
    public int OpenOf(int drills, int week)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(drills);
        ArgumentOutOfRangeException.ThrowIfNegative(week);
        return drills == 0 ? 0 : Math.Max(1, Share(drills, CeilingOf(week)));
    }

    /// <summary>How many of the open middle drills are too easy to be a day's hardest in a week.</summary>
    /// <param name="drills">How many middle drills the scale has, 0 or more.</param>
    /// <param name="week">The week, from 0.</param>
    /// <param name="atLeast">How many drills must lie between floor and ceiling, so that one is left while others wait to come again; 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies below its range.</exception>
    public int FloorOf(int drills, int week, int atLeast = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(atLeast, 1);
        return Math.Max(0, OpenOf(drills, week) - Math.Max(atLeast, Share(drills, Band)));
    }

    /// <summary>The name and the tempo.</summary>
    public override string ToString() => $"{Name}, {Tempo} a week";

    /// <summary>The tempo of a week, counted from 0.</summary>
    internal int TempoOf(int week) => (int)Tempo.At(week).Numerator;

    /// <summary>The share of a scale's middle drills, the easiest first, that is open in a week, in per cent.</summary>
    internal int CeilingOf(int week) => (int)Math.Min(StartCeiling + ((long)CeilingStep * week), 100);

    private static int Share(int drills, int percent) => (int)((((long)drills * percent) + 99) / 100);
}

using System.Globalization;

namespace Warmup.Plans;

/// <summary>What a level of singing practises, how and at what tempo. All values are the project's own settings.</summary>
/// <param name="Name">The level's name.</param>
/// <param name="Families">The groups of exercises its middle drills come from, as <see cref="Exercise.Group"/> names them.</param>
/// <param name="Delivery">How lines follow each other.</param>
/// <param name="Speeds">The speeds in which each middle drill is sung; the opening and the descent are sung in the first alone.</param>
/// <param name="StartTempo">The first week's tempo in aksharas a minute, 10 to 400.</param>
/// <param name="TempoStep">What each further week is faster, 0 to 100.</param>
/// <param name="TopTempo">The tempo that is not passed, from the start to 400.</param>
/// <param name="StartCeiling">How many of a scale's middle drills, the easiest first, are open in the first week, in per cent, 0 to 100; one at least.</param>
/// <param name="CeilingStep">How many per cent more are open each further week, 0 to 100.</param>
/// <remarks>Moving on to another level is the teacher's choice; nothing here decides it. Immutable, value equality.</remarks>
public sealed record Level(
    string Name,
    ValueList<string> Families,
    Delivery Delivery,
    ValueList<Speed> Speeds,
    int StartTempo,
    int TempoStep,
    int TopTempo,
    int StartCeiling,
    int CeilingStep)
{
    /// <summary>
    /// How far below the ceiling the floor lies, in per cent of the scale's drills, 1 to 100; 30 by default (the project's own setting). Each
    /// day's hardest drill lies between the two.
    /// </summary>
    public int Band { get; init; } = 30;

    /// <summary>The ways in which a middle drill may be sung: as the level asks; line by line; line by line in the first of its speeds alone.</summary>
    internal IReadOnlyList<(Delivery Delivery, ValueList<Speed> Speeds)> Renderings =>
        [.. ((List<(Delivery, ValueList<Speed>)>)[(Delivery, Speeds), (Delivery.LineByLine, Speeds), (Delivery.LineByLine, [Speeds[0]])]).Distinct()];

    /// <summary>Scale exercises and what choirs sing, line by line in the first speed, 60 to 72 aksharas a minute by 2 a week.</summary>
    public static Level Beginner { get; } =
        new("beginner", ["sarali", "choir"], Delivery.LineByLine, [Speed.First], 60, 2, 72, 40, 10);

    /// <summary>Doubled notes and the alankaras too, line by line in two speeds, 66 to 84 by 2 a week.</summary>
    public static Level Intermediate { get; } =
        new("intermediate", ["sarali", "choir", "janta", "alankara"], Delivery.LineByLine, [Speed.First, Speed.Second], 66, 2, 84, 50, 10);

    /// <summary>All groups, without a break between the lines in two speeds, 72 to 99 by 3 a week.</summary>
    public static Level Advanced { get; } = new(
        "advanced",
        ["sarali", "choir", "janta", "alankara", "melsthayi", "mandrasthayi"],
        Delivery.Continuous,
        [Speed.First, Speed.Second],
        72,
        3,
        99,
        60,
        10);

    /// <summary>The three levels, the easiest first.</summary>
    public static ValueList<Level> All => [Beginner, Intermediate, Advanced];

    /// <summary>The level for an experience.</summary>
    /// <param name="experience">The experience.</param>
    public static Level Of(Experience experience) => experience switch
    {
        Experience.Beginner => Beginner,
        Experience.Intermediate => Intermediate,
        _ => Advanced,
    };

    /// <summary>The level that suits everyone of a class: that of the least experienced.</summary>
    /// <param name="singers">The singers, at least one.</param>
    /// <exception cref="ArgumentException">There are no singers.</exception>
    public static Level Of(ValueList<Singer> singers) => singers.IsEmpty
        ? throw new ArgumentException("a class must have at least 1 singer, not 0", nameof(singers))
        : Of(singers.Min(s => s.Experience));

    /// <summary>The tempo of a week.</summary>
    /// <param name="week">The week, counted from 0.</param>
    public int TempoOf(int week) => (int)Math.Min(StartTempo + ((long)TempoStep * week), TopTempo);

    /// <summary>The per cent of a scale's middle drills, the easiest first, that are open in a week.</summary>
    /// <param name="week">The week, counted from 0.</param>
    public int CeilingOf(int week) => (int)Math.Min(StartCeiling + ((long)CeilingStep * week), 100);

    /// <summary>How many of a scale's middle drills, counted from the easiest, are open in a week: at least one, if there is one.</summary>
    /// <param name="drills">How many there are.</param>
    /// <param name="week">The week, counted from 0.</param>
    public int OpenOf(int drills, int week) => drills == 0 ? 0 : Math.Max(1, Share(drills, CeilingOf(week)));

    /// <summary>How many of the open middle drills are too easy to be a day's hardest in a week.</summary>
    /// <param name="drills">How many middle drills the scale has.</param>
    /// <param name="week">The week, counted from 0.</param>
    /// <param name="atLeast">How many must lie between floor and ceiling, so that a drill is left while others wait to come again.</param>
    public int FloorOf(int drills, int week, int atLeast = 1) => Math.Max(0, OpenOf(drills, week) - Math.Max(atLeast, Share(drills, Band)));

    private static int Share(int drills, int percent) => (int)((((long)drills * percent) + 99) / 100);

    /// <summary>Refuses values outside their ranges.</summary>
    internal void Validate()
    {
        Require.InRange(StartTempo, Tempo.Slowest, Tempo.Fastest, "the start tempo of a level");
        Require.InRange(TempoStep, 0, 100, "the tempo step of a level");
        Require.InRange(TopTempo, StartTempo, Tempo.Fastest, "the top tempo of a level");
        Require.InRange(StartCeiling, 0, 100, "the start ceiling of a level");
        Require.InRange(CeilingStep, 0, 100, "the ceiling step of a level");
        Require.InRange(Band, 1, 100, "the band of a level");
        Require.InRange(Speeds.Count, 1, Drill.MostSpeeds, "the number of speeds of a level");
        Require.InRange(Families.Count, 1, 100, "the number of exercise groups of a level");
    }
}

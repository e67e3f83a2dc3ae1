using System.Globalization;

namespace Warmup.Plans;

/// <summary>What a plan must be like. Immutable, value equality.</summary>
public sealed record PlanRequest
{
    /// <summary>The most days of a plan: 20,000 (the project's own bound).</summary>
    public static int MostDays => 20_000;

    /// <summary>The most scales of a plan: 200 (the project's own bound).</summary>
    public static int MostScales => 200;

    /// <summary>The shortest warm-up, in minutes: 5 (the project's own setting).</summary>
    public static int FewestMinutes => 5;

    /// <summary>The longest warm-up, in minutes: 20 (the project's own setting).</summary>
    public static int MostMinutes => 20;

    /// <summary>The most days for which a drill may be kept from coming back: 365 (the project's own bound).</summary>
    public static int MostNoRepeatDays => 365;

    /// <summary>The most drills of the teacher's own: 100 (the project's own bound).</summary>
    public static int MostAdded => 100;

    /// <summary>The farthest climb of a plan's drills, in semitones: 7, a fifth (the project's own bound).</summary>
    public static int MostClimb => 7;

    /// <summary>The scales, 1 to 200; one that is given twice counts once.</summary>
    /// <exception cref="ArgumentException">There are none or too many, or one of them is <see langword="null"/>.</exception>
    public required ValueList<Scale> Scales
    {
        get;
        init
        {
            Require.InRange(value.Count, 1, MostScales, "the number of scales");
            field = Checks.NoNulls(value, nameof(Scales)).Distinct().ToValueList();
        }
    }

    /// <summary>The singers, at least one.</summary>
    /// <exception cref="ArgumentException">There are none, or one of them is <see langword="null"/>.</exception>
    public required ValueList<Singer> Singers
    {
        get;
        init => field = value.IsEmpty ? throw new ArgumentException("a class must have at least 1 singer, not 0", nameof(Singers)) : Checks.NoNulls(value, nameof(Singers));
    }

    /// <summary>The first day. There is no default: nothing reads the clock.</summary>
    public required DateOnly Start { get; init; }

    /// <summary>The number of days, rest days included, 1 to 20,000; 28 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Days
    {
        get;
        init => field = Require.InRange(value, 1, MostDays, "days");
    } = 28;

    /// <summary>The most minutes of a warm-up, 5 to 20; 8 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Minutes
    {
        get;
        init => field = Require.InRange(value, FewestMinutes, MostMinutes, "minutes");
    } = 8;

    /// <summary>The seed of every choice; 1 by default.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>
    /// For how many days of singing a drill does not come back, 0 to 365; 3 by default. Rest days are not counted, so on the calendar the distance
    /// is at least as great.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int NoRepeatDays
    {
        get;
        init => field = Require.InRange(value, 0, MostNoRepeatDays, "the days without a repeat");
    } = 3;

    /// <summary>
    /// How much of the minutes a scale's warm-ups must be able to fill on average, in per cent, 0 to 100; 50 by default (the project's own
    /// setting). A scale that cannot is left out.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int LeastFillPercent
    {
        get;
        init => field = Require.InRange(value, 0, 100, "the least per cent of the minutes");
    } = 50;

    /// <summary>The weekdays without singing; Sunday by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a weekday.</exception>
    public ValueList<DayOfWeek> RestDays
    {
        get;
        init
        {
            foreach (var day in value)
            {
                _ = Enum.IsDefined(day) ? day : throw new ArgumentOutOfRangeException(nameof(RestDays), day, "a day of rest must be a weekday");
            }

            field = value;
        }
    } = [DayOfWeek.Sunday];

    /// <summary>
    /// How far the climbing drills may climb, in semitones, 0 to <see cref="MostClimb"/>; 0, none of them, by default. With 1 or more, short figures of
    /// choirs (<see cref="ClimbingExercises"/>) join the middle drills of every scale: sung again a semitone higher each time, up and back, as far as
    /// every singer's comfortable range, breath and agility allow. They begin on the plan's tonic, and have no drone.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Climb
    {
        get;
        init => field = Require.InRange(value, 0, MostClimb, "the semitones of a climb");
    }

    /// <summary>The level; that of the least experienced singer by default.</summary>
    public Level? Level { get; init; }

    /// <summary>The tonic, in the octave the files are written in; by default the one that suits the class best.</summary>
    public Tonic? Tonic { get; init; }

    /// <summary>The teacher's own drills, each in its own tala, which are middle drills of every scale beside the level's; at most 100, none by default. One
    /// whose name the level has already counts once.</summary>
    /// <exception cref="ArgumentException">There are too many, one of them is <see langword="null"/>, or two have the same name.</exception>
    public ValueList<Exercise> Added
    {
        get;
        init
        {
            Require.InRange(value.Count, 0, MostAdded, "the number of added drills");
            field = Checks.NoNulls(value, nameof(Added));
            if (value.Select(e => e.Name).Distinct().Count() < value.Count)
            {
                throw new ArgumentException("two of the added drills have the same name; give each its own group or number", nameof(Added));
            }
        }
    }

    /// <summary>The tuning; equal by default.</summary>
    public Tuning Tuning
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(Tuning));
    } = Tuning.Equal;

    /// <summary>What was sung before, which the plan goes on from; nothing by default.</summary>
    /// <exception cref="ArgumentException">An entry is <see langword="null"/>.</exception>
    public ValueList<LogEntry> Log
    {
        get;
        init => field = Checks.NoNulls(value, nameof(Log));
    }

    /// <summary>
    /// Whether drills of which lines stayed off, by their last entry in the log (<see cref="LogEntry.OffLines"/>) and without the teacher's tick,
    /// are retried: they get their turn again before others; true by default.
    /// </summary>
    public bool HasRetries { get; init; } = true;

    /// <summary>The days, the seed and how much there is to choose from.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Days} days from {Start:yyyy-MM-dd}, {Minutes} minutes, seed {Seed}: {Singers.Count} singers, {Scales.Count} scales");
}

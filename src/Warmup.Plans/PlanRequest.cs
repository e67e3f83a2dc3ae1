using System.Globalization;

namespace Warmup.Plans;

/// <summary>What is asked of a plan. Immutable, value equality.</summary>
public sealed record PlanRequest
{
    /// <summary>The most days of a plan (the project's own bound).</summary>
    public const int MostDays = 20_000;

    /// <summary>The most scales of a plan (the project's own bound).</summary>
    public const int MostScales = 200;

    /// <summary>The shortest warm-up, in minutes (the project's own setting).</summary>
    public const int FewestMinutes = 5;

    /// <summary>The longest warm-up, in minutes (the project's own setting).</summary>
    public const int MostMinutes = 20;

    /// <summary>The most days within which a drill may be kept from coming back.</summary>
    public const int MostNoRepeatDays = 365;

    private readonly ValueList<Scale> _scales;
    private readonly ValueList<Singer> _singers;
    private readonly int _days = 28;
    private readonly int _minutes = 8;
    private readonly int _noRepeatDays = 3;
    private readonly int _leastPercent = 50;

    /// <summary>The scales, 1 to 200.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are none, or too many.</exception>
    public required ValueList<Scale> Scales
    {
        get => _scales;
        init
        {
            Require.InRange(value.Count, 1, MostScales, "the number of scales");
            _scales = value.Distinct().ToValueList();
        }
    }

    /// <summary>The singers, at least one.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public required ValueList<Singer> Singers
    {
        get => _singers;
        init => _singers = value.IsEmpty ? throw new ArgumentException("a class must have at least 1 singer, not 0") : value;
    }

    /// <summary>The first day. There is no default: nothing reads the clock.</summary>
    public required DateOnly Start { get; init; }

    /// <summary>The number of days, rest days counted, 1 to 20,000; 28 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Days
    {
        get => _days;
        init => _days = Require.InRange(value, 1, MostDays, "days");
    }

    /// <summary>The most minutes of a warm-up, 5 to 20; 8 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int Minutes
    {
        get => _minutes;
        init => _minutes = Require.InRange(value, FewestMinutes, MostMinutes, "minutes");
    }

    /// <summary>The seed of every choice; 1 by default.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>
    /// On so many days of singing after a drill it does not come back, 0 to 365; 3 by default. Rest days are not counted, so on the calendar
    /// the distance is at least as great.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int NoRepeatDays
    {
        get => _noRepeatDays;
        init => _noRepeatDays = Require.InRange(value, 0, MostNoRepeatDays, "the days without a repeat");
    }

    /// <summary>
    /// How much of the minutes a scale's warm-ups must be able to fill on average, in per cent, 0 to 100; 50 by default (the project's own
    /// setting). A scale that cannot is left out.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int LeastPercent
    {
        get => _leastPercent;
        init => _leastPercent = Require.InRange(value, 0, 100, "the least per cent of the minutes");
    }

    /// <summary>The weekdays without singing; Sunday by default.</summary>
    public ValueList<DayOfWeek> RestDays { get; init; } = [DayOfWeek.Sunday];

    /// <summary>The level; that of the least experienced singer by default.</summary>
    public Level? Level { get; init; }

    /// <summary>The tonic, in the octave the files are written in; by default the one that suits the class best.</summary>
    public Tonic? Tonic { get; init; }

    /// <summary>The tuning; equal by default.</summary>
    public Tuning Tuning { get; init; } = Tuning.Equal;

    /// <summary>What was sung before, which the plan goes on from; nothing by default.</summary>
    public ValueList<LogEntry> Log { get; init; }

    /// <summary>The days, the seed and how much there is to choose from.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Days} days from {Start:yyyy-MM-dd}, {Minutes} minutes, seed {Seed}: {Singers.Count} singers, {Scales.Count} scales");
}

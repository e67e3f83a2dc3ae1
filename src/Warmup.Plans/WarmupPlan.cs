using System.Globalization;

namespace Warmup.Plans;

/// <summary>A plan: which drills are sung on which day, and all that is needed to make each day's score again.</summary>
/// <remarks>It holds no singer's alias or range, only the breath that is enough for the whole class. Immutable, value equality.</remarks>
public sealed record WarmupPlan
{
    internal WarmupPlan(Tonic tonic, Tuning tuning, BreathNeed breathNeed) => (Tonic, Tuning, BreathNeed) = (tonic, tuning, breathNeed);

    /// <summary>The cautions in one line, for places that have no room for <see cref="Cautions.All"/>.</summary>
    public static string ShortCaution => "Stop if it hurts; see a doctor about hoarseness that lasts. The teacher's ear overrules the plan.";

    /// <summary>The name and the number of the generator that drew the choices.</summary>
    public string Generator { get; internal init; } = SeededSource.Name;

    /// <summary>The seed of the choices.</summary>
    public ulong Seed { get; internal init; }

    /// <summary>The level's name.</summary>
    public string LevelName { get; internal init; } = string.Empty;

    /// <summary>The most minutes of a warm-up, 5 to 20.</summary>
    public int Minutes { get; internal init; }

    /// <summary>For how many days of singing a drill does not come back, 0 to 365.</summary>
    public int NoRepeatDays { get; internal init; }

    /// <summary>The weekdays without singing.</summary>
    public ValueList<DayOfWeek> RestDays { get; internal init; }

    /// <summary>The <see cref="PlanFile.Fingerprint"/> of the plan that this one renews; <see langword="null"/> for a plan that renews none.</summary>
    internal string? Origin { get; init; }

    /// <summary>The tonic of the files. Singers whose voices lie elsewhere sing in their own octave.</summary>
    public Tonic Tonic { get; }

    /// <summary>The tuning.</summary>
    public Tuning Tuning { get; }

    /// <summary>The breath that is enough for everyone in the class.</summary>
    public BreathNeed BreathNeed { get; }

    /// <summary>The drills that the days draw on.</summary>
    public ValueList<PlanDrill> Drills { get; internal init; }

    /// <summary>The days in order, without gaps; at least one, except in <see cref="PlanDraw.Outline"/>.</summary>
    public ValueList<PlanDay> Days { get; internal init; }

    /// <summary>Makes a plan.</summary>
    /// <param name="request">What the plan must be like.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>The plan and what was left out of it.</returns>
    /// <exception cref="PlanImpossibleException">The rules clash: the exception names a smallest set of them.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static PlanResult Make(PlanRequest request, CancellationToken cancellationToken = default) => Draw(request, cancellationToken).ToResult();

    /// <summary>Begins a plan whose days are drawn when they are asked for, so that the memory it takes does not grow with them.</summary>
    /// <param name="request">What the plan must be like.</param>
    /// <param name="cancellationToken">Stops the work, also while the days are drawn.</param>
    /// <exception cref="PlanImpossibleException">The rules clash: the exception names a smallest set of them.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static PlanDraw Draw(PlanRequest request, CancellationToken cancellationToken = default) => Planner.Draw(request, [], cancellationToken);

    /// <summary>Plans anew the days that no longer fit a class that has changed. All other days stay as they are.</summary>
    /// <param name="singers">The singers as they are now, at least one.</param>
    /// <param name="from">The first day that is looked at; the plan's first day by default.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>The plan, which days no longer fitted and why, and where no other warm-up is possible.</returns>
    /// <exception cref="ArgumentException">There are no singers, or one is <see langword="null"/>.</exception>
    /// <exception cref="PatternException">A drill of the plan cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public PlanRenewal Renew(ValueList<Singer> singers, DateOnly? from = null, CancellationToken cancellationToken = default)
    {
        var level = Level.All.FirstOrDefault(l => l.Name == LevelName) ?? Level.Of(singers);
        return PlanRenewer.Renew(this, Checks.NoNulls(singers, nameof(singers)), from ?? Days[0].Date, level, cancellationToken);
    }

    /// <summary>The day of a date.</summary>
    /// <param name="date">The date.</param>
    /// <exception cref="ArgumentOutOfRangeException">The plan does not reach that day.</exception>
    public PlanDay DayOf(DateOnly date)
    {
        if (Days.IsEmpty)
        {
            throw new ArgumentOutOfRangeException(nameof(date), date, "this plan has no days yet; take them from its draw");
        }

        var index = date.DayNumber - Days[0].Date.DayNumber;
        return index >= 0 && index < Days.Count
            ? Days[index]
            : throw new ArgumentOutOfRangeException(
                nameof(date),
                string.Create(CultureInfo.InvariantCulture, $"the day must be between {Days[0].Date:yyyy-MM-dd} and {Days[^1].Date:yyyy-MM-dd}, not {date:yyyy-MM-dd}"));
    }

    /// <summary>A day's warm-up as one score: a section for each drill, each with a count-in before it that is the rest between drills.</summary>
    /// <param name="day">A day of this plan.</param>
    /// <param name="tonic">Another tonic, such as one an octave lower for lower voices; the plan's own by default.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">Nothing is sung on that day.</exception>
    /// <exception cref="PatternException">A drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(PlanDay day, Tonic? tonic = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(day);
        return ToScore(day, planned => ToScore(planned, day.BreathNeed, tonic ?? Tonic, cancellationToken));
    }

    /// <summary>The score of a drill of a day.</summary>
    /// <param name="planned">The drill.</param>
    /// <param name="need">The day's own breath need; <see langword="null"/> for the plan's.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal Score ToScore(DayDrill planned, BreathNeed? need, Tonic tonic, CancellationToken cancellation) =>
        planned.Drill.ToScore(tonic, Tuning, planned.Tempo, planned.Times, need ?? BreathNeed, cancellation);

    /// <summary>A day's score from the scores of its drills.</summary>
    internal static Score ToScore(PlanDay day, Func<DayDrill, Score> scoreOf) => day.IsRest
        ? throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{day.Date:yyyy-MM-dd} is a day of rest; name another day"), nameof(day))
        : Score.Join(string.Create(CultureInfo.InvariantCulture, $"Warm-up {day.Date:yyyy-MM-dd}: {day.Scale!.Name}"), day.Drills.Select(scoreOf).ToList());

    /// <summary>The days, the level and the seed.</summary>
    public override string ToString() => Days.IsEmpty
        ? string.Create(CultureInfo.InvariantCulture, $"days not drawn, {Minutes} minutes, level {LevelName}, seed {Seed}")
        : string.Create(CultureInfo.InvariantCulture, $"{Days.Count} days from {Days[0].Date:yyyy-MM-dd}, {Minutes} minutes, level {LevelName}, seed {Seed}");
}

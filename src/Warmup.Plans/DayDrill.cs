using System.Globalization;

namespace Warmup.Plans;

/// <summary>A drill as it is sung on a day of a plan. Immutable, value equality.</summary>
public sealed record DayDrill
{
    internal DayDrill(PlanDrill drill, int tempo, int times) => (Drill, Tempo, Times) = (drill, tempo, times);

    /// <summary>The greatest number of times: 12 (the project's own setting).</summary>
    public static int MostTimes => 12;

    /// <summary>The drill, one of <see cref="WarmupPlan.Drills"/>.</summary>
    public PlanDrill Drill { get; }

    /// <summary>The tempo on that day, in aksharas a minute, 10 to 400.</summary>
    public int Tempo { get; }

    /// <summary>How many times its usual repetitions the drill is sung, 1 to 12: up to 6, and more on a day that would otherwise be short.</summary>
    public int Times { get; }

    /// <summary>The drill in words, without what its title says after a colon, the tempo and the times: <c>five notes down at 62, twice</c>.</summary>
    internal string InWords => Sung(Drill.Title.Split(':')[0]);

    /// <summary>The exercise, the tempo and the times: <c>sarali-3 at 62, twice</c>.</summary>
    public override string ToString() => Sung(Drill.ExerciseName);

    private string Sung(string name) => Times switch
    {
        1 => string.Create(CultureInfo.InvariantCulture, $"{name} at {Tempo}"),
        2 => string.Create(CultureInfo.InvariantCulture, $"{name} at {Tempo}, twice"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{name} at {Tempo}, {Times} times"),
    };
}

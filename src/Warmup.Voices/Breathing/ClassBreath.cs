using System.Globalization;

namespace Warmup.Voices;

/// <summary>What one singer's breath asks of a class: how much they sing, and how often lines would be broken if everybody breathed with them.</summary>
/// <remarks>
/// Most of the class breathes together (<see cref="BreathNeed.OfMost"/>); whoever needs more breaths takes them at places of their own while
/// the others sing on, as choirs do (staggered breathing, common practice). Immutable, value equality.
/// </remarks>
public sealed record ClassBreath
{
    private ClassBreath(Singer singer, SungTime time, int own, int? together, int? without) =>
        (Singer, Time, OwnBreathsInside, Together, WithoutSinger) = (singer, time, own, together, without);

    /// <summary>The singer.</summary>
    public Singer Singer { get; }

    /// <summary>How much this singer sings, with the class's breaths and their own.</summary>
    public SungTime Time { get; }

    /// <summary>The breaths inside lines that this singer takes while the others sing on.</summary>
    public int OwnBreathsInside { get; }

    /// <summary>The breaths inside lines if the whole class breathed together; <see langword="null"/> where a score has no such breaths.</summary>
    public int? Together { get; }

    /// <summary>The same without this singer; <see langword="null"/> where a score has no such breaths either, and in a class of one.</summary>
    public int? WithoutSinger { get; }

    /// <summary>Whether the others would breathe inside lines less often without this singer.</summary>
    public bool HasCostForOthers => WithoutSinger is { } without && (Together is not { } together || without < together);

    /// <summary>What each singer's breath asks of the class.</summary>
    /// <param name="scores">The scores as they are made, without planned breaths; one that is sung several times may be given several times.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <param name="most">How many singers are looked at, those with the shortest breath first, 1 or more; all by default.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>One for each singer who is looked at, the shortest breath first.</returns>
    /// <exception cref="ArgumentException">There are no singers, or <paramref name="most"/> is below 1.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ValueList<ClassBreath> Of(ValueList<Score> scores, ValueList<Singer> singers, int most = int.MaxValue, CancellationToken cancellationToken = default)
    {
        var common = BreathNeed.OfMost(singers);
        Require.InRange(most, 1, int.MaxValue);
        var counted = scores.GroupBy(s => s, ReferenceEqualityComparer.Instance).Select(g => (Score: g.First(), Times: g.Count())).ToList();
        var sung = counted.ConvertAll(c => (Score: c.Score.WithBreathsFor(common, cancellationToken), c.Times));
        var inside = new Dictionary<BreathNeed, int?>();
        var times = new Dictionary<BreathNeed, SungTime>();
        var all = Inside(BreathNeed.Of(singers));
        var breaths = new List<ClassBreath>();
        foreach (var s in Enumerable.Range(0, singers.Count).OrderBy(s => (singers[s].BreathSeconds, -singers[s].ShortestBreathSeconds)).Take(most))
        {
            int? without = singers.Count == 1 ? null : Inside(BreathNeed.Of(singers.Where((_, i) => i != s).ToValueList()));
            var time = Time(BreathNeed.Of(singers[s]));
            breaths.Add(new ClassBreath(singers[s], time, time.BreathsInside - Time(common).BreathsInside, all, without));
        }

        return breaths.ToValueList();

        int? Inside(BreathNeed need)
        {
            if (!inside.TryGetValue(need, out var count))
            {
                count = inside[need] = CountInside(counted, need, cancellationToken);
            }

            return count;
        }

        SungTime Time(BreathNeed need)
        {
            if (!times.TryGetValue(need, out var time))
            {
                time = times[need] = sung.Aggregate(SungTime.None, (sum, s) => sum.Plus(SungTime.Of(s.Score.WithBreathsFor(need, cancellationToken)), s.Times));
            }

            return time;
        }
    }

    /// <summary>The singer and what they cost: <c>Robin: 212 own breaths inside lines; breathing together would take 554 inside lines, without Robin 31</c>.</summary>
    public override string ToString()
    {
        var own = string.Create(CultureInfo.InvariantCulture, $"{Singer.Alias}: {OwnBreathsInside} own {(OwnBreathsInside == 1 ? "breath" : "breaths")} inside lines");
        var together = Together is { } all ? string.Create(CultureInfo.InvariantCulture, $"would take {all} inside lines") : "is not possible";
        return OneLine.Of(HasCostForOthers
            ? string.Create(CultureInfo.InvariantCulture, $"{own}; breathing together {together}, without {Singer.Alias} {WithoutSinger}")
            : own);
    }

    private static int? CountInside(List<(Score Score, int Times)> scores, BreathNeed need, CancellationToken cancellation)
    {
        var count = 0;
        foreach (var (score, times) in scores)
        {
            if (!BreathPlan.TryMake(score, need, out var plan, out _, cancellation))
            {
                return null;
            }

            count += times * SungTime.Of(score.WithBreaths(plan)).BreathsInside;
        }

        return count;
    }
}

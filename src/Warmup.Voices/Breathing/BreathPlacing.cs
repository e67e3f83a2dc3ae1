namespace Warmup.Voices;

/// <summary>Puts a breath plan into a score.</summary>
public static class BreathPlacing
{
    /// <summary>The score with the plan's breaths: notes before them end early, and each is among the section's breaths.</summary>
    /// <param name="score">The score the plan was made for.</param>
    /// <param name="plan">The plan.</param>
    /// <exception cref="ArgumentException">A breath of the plan does not follow a note of the score, or a section is too long for a finer grid.</exception>
    public static Score WithBreaths(this Score score, BreathPlan plan)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(plan);
        foreach (var group in plan.Breaths.GroupBy(b => b.Place.Section - 1))
        {
            var breaths = group.Select(b => IsOf(score, b) ? new Breath(b.Onset, b.Length, b.AfterNote) : throw NotOf(score, b));
            score = score.WithBreaths(group.Key, breaths.ToValueList());
        }

        return score;
    }

    /// <summary>
    /// The score as one singer of a class sings it: where the breath does not last, with breaths at places of the singer's own, in which the
    /// others sing on. The same score where the breath lasts, and where no breaths would be enough: a check says so then.
    /// </summary>
    /// <param name="score">The score of the class.</param>
    /// <param name="singer">The singer.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Score AsSungBy(this Score score, Singer singer, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(singer);
        return score.WithBreathsFor(BreathNeed.Of(singer), cancellationToken);
    }

    /// <summary>The score with the cheapest breaths for a need; the same score where it has enough already, or can have no breaths that are enough.</summary>
    internal static Score WithBreathsFor(this Score score, BreathNeed need, CancellationToken cancellation) =>
        BreathSpan.Of(score, need.ShortestBreathSeconds).Any(s => s.Seconds > need.CapacitySeconds)
        && BreathPlanner.Find(score, need, cancellation) is { } plan
            ? score.WithBreaths(plan)
            : score;

    private static bool IsOf(Score score, PlannedBreath breath) =>
        breath.Place.Section <= score.Sections.Count
        && score.Sections[breath.Place.Section - 1] is var section
        && breath.AfterNote < section.Notes.Count
        && breath.Onset > section.Notes[breath.AfterNote].Onset
        && breath.Onset <= section.Notes[breath.AfterNote].End;

    private static ArgumentException NotOf(Score score, PlannedBreath breath) =>
        new($"the breath {breath} does not follow a note of '{OneLine.Cut(score.Title, 60)}'; the plan was made for another score", nameof(breath));
}

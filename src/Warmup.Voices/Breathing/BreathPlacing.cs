namespace Warmup.Voices;

/// <summary>Puts a breath plan into a score.</summary>
public static class BreathPlacing
{
    /// <summary>The score with the plan's breaths: notes before them end early, and each stands among the section's breaths.</summary>
    /// <param name="score">The score the plan was made for.</param>
    /// <param name="plan">The plan.</param>
    /// <exception cref="ArgumentException">A breath of the plan does not stand behind a note of the score, or a section is too long for a finer grid.</exception>
    public static Score WithBreaths(this Score score, BreathPlan plan)
    {
        if (plan.Breaths.IsEmpty)
        {
            return score;
        }

        var sections = score.Sections.AsSpan().ToArray();
        foreach (var group in ((IEnumerable<PlannedBreath>)plan.Breaths).GroupBy(b => b.Section))
        {
            if (group.Key < 0 || group.Key >= sections.Length)
            {
                throw NotOf(score, group.First());
            }

            sections[group.Key] = Place(score, sections[group.Key], group.OrderBy(b => b.AfterNote).ToList());
        }

        return score with { Sections = sections.ToValueList() };
    }

    private static Section Place(Score score, Section section, List<PlannedBreath> planned)
    {
        foreach (var breath in planned)
        {
            if (breath.AfterNote < 0 || breath.AfterNote >= section.Notes.Count
                || breath.Onset <= section.Notes[breath.AfterNote].Onset || breath.Onset > section.Notes[breath.AfterNote].End)
            {
                throw NotOf(score, breath);
            }
        }

        return section.WithBreaths(planned.ConvertAll(b => new Breath(b.Onset, b.Length, b.AfterNote)).ToValueList());
    }

    private static ArgumentException NotOf(Score score, PlannedBreath breath) =>
        new($"the breath {breath.Where} does not stand behind a note of '{score.Title}'; the plan was made for another score", nameof(breath));
}

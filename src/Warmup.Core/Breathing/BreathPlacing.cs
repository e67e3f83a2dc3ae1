namespace Warmup;

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

        return score with { Sections = ValueList.Adopt(sections) };
    }

    private static Section Place(Score score, Section section, List<PlannedBreath> planned)
    {
        var resolution = planned.TrueForAll(b => FallsOn(section.Resolution, b)) ? section.Resolution : BreathPlaces.Resolution(section.Resolution);
        var factor = resolution / section.Resolution;
        if ((long)section.LengthSteps * factor > int.MaxValue)
        {
            throw new ArgumentException($"'{section.Title}' is too long to be given breaths; take fewer lines", nameof(score));
        }

        var notes = new ScoreNote[section.Notes.Count];
        for (var n = 0; n < notes.Length; n++)
        {
            var note = section.Notes[n];
            notes[n] = Resized(note, note.OnsetSteps * factor, note.LengthSteps * factor, resolution);
        }

        var breaths = new SortedDictionary<int, Breath>();
        foreach (var breath in section.Breaths)
        {
            breaths[breath.AfterNote] = breath;
        }

        foreach (var breath in planned)
        {
            var kept = breath.AfterNote < 0 || breath.AfterNote >= notes.Length ? 0 : (breath.Onset - notes[breath.AfterNote].Onset) * resolution;
            if (!kept.IsInteger || kept.Sign <= 0 || kept > notes[breath.AfterNote].LengthSteps)
            {
                throw NotOf(score, breath);
            }

            var note = notes[breath.AfterNote];
            notes[breath.AfterNote] = Resized(note, note.OnsetSteps, (int)kept.Numerator, resolution);
            breaths[breath.AfterNote] = new Breath(breath.Onset, breath.Length, breath.AfterNote);
        }

        return section with
        {
            Resolution = resolution,
            Notes = ValueList.Adopt(notes),
            Breaths = breaths.Values.ToValueList(),
            LengthSteps = section.LengthSteps * factor,
        };
    }

    private static bool FallsOn(int resolution, PlannedBreath breath) => (breath.Onset * resolution).IsInteger && (breath.Length * resolution).IsInteger;

    private static ScoreNote Resized(ScoreNote note, int onset, int length, int resolution) =>
        new(onset, length, resolution, note.PitchIndex, note.LineIndex, note.Syllable, note.IsHeld);

    private static ArgumentException NotOf(Score score, PlannedBreath breath) =>
        new($"the breath {breath.Where} does not stand behind a note of '{score.Title}'; the plan was made for another score", nameof(breath));
}

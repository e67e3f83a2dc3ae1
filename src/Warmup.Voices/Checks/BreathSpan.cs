namespace Warmup.Voices;

/// <summary>What is sung on one breath: from the first note after a breath to the end of the last note before the next.</summary>
/// <param name="Section">The index of the section in which it begins.</param>
/// <param name="FirstLine">The line in which it begins, counted from 1.</param>
/// <param name="LastLine">The line in which it ends, counted from 1 in its own section.</param>
/// <param name="Onset">Its onset in aksharas from the section's beginning.</param>
/// <param name="Start">Its beginning in seconds from the score's beginning.</param>
/// <param name="End">Its end in seconds from the score's beginning.</param>
/// <remarks>A silence ends a span only if it lasts at least the shortest breath; shorter silences and holds count in the span.</remarks>
public readonly record struct BreathSpan(int Section, int FirstLine, int LastLine, Rational Onset, Rational Start, Rational End)
{
    /// <summary>Its length in seconds.</summary>
    public Rational Seconds => End - Start;

    /// <summary>The spans of a score.</summary>
    /// <param name="score">The score.</param>
    /// <param name="shortestBreath">The shortest silence in which a breath can be taken, in seconds, above 0.</param>
    /// <returns>The spans in order; every note lies in one.</returns>
    public static IEnumerable<BreathSpan> Of(Score score, Rational shortestBreath)
    {
        BreathSpan? open = null;
        var sectionStart = Rational.Zero;
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var section = score.Sections[s];
            for (var i = 0; i < section.Notes.Count; i++)
            {
                // Notes that touch have no silence between them, so only a run's ends are asked for their seconds.
                var first = section.Notes[i];
                var start = sectionStart + section.SecondsAt(first.Onset);
                while (i + 1 < section.Notes.Count && section.Notes[i + 1].OnsetSteps == section.Notes[i].EndSteps)
                {
                    i++;
                }

                var last = section.Notes[i];
                var end = sectionStart + section.SecondsAt(last.End);
                if (open is { } span && start - span.End < shortestBreath)
                {
                    open = span with { End = end, LastLine = last.LineIndex + 1 };
                    continue;
                }

                if (open is { } closed)
                {
                    yield return closed;
                }

                open = new BreathSpan(s, first.LineIndex + 1, last.LineIndex + 1, first.Onset, start, end);
            }

            sectionStart += section.Seconds;
        }

        if (open is { } final)
        {
            yield return final;
        }
    }
}

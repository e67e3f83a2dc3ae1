namespace Warmup;

/// <summary>Makes room for the singer to answer: each line is given, then the same time is silent.</summary>
public static class CallAndResponse
{
    /// <summary>
    /// The same score with a silence after each line, as long as the line with its hold and breath. The drone and the beat go on; silence
    /// fills the last avartana.
    /// </summary>
    /// <param name="score">The score.</param>
    /// <returns>A score that every format writes like any other. Each line's <see cref="ScoreLine.Answer"/> is the silence after it.</returns>
    /// <exception cref="ArgumentException">The score has answers already, or becomes too long.</exception>
    /// <remarks>Check singers against the score without answers: there the lines follow each other as they are sung.</remarks>
    public static Score WithAnswers(this Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        return score with { Sections = score.Sections.ConvertAll(Answered) };
    }

    private static Section Answered(Section section)
    {
        // Lines follow each other without gaps, so the answers before a line last as long as the lines before it, and all as long as the lines.
        var last = section.Lines[^1];
        var steps = last.EndSteps + (long)last.EndSteps - section.Lines[0].OnsetSteps;
        if (steps > int.MaxValue - ((long)Meter.MostBeats * section.Resolution))
        {
            throw new ArgumentException(
                $"with answers '{OneLine.Cut(section.Title, 60)}' would last {new Rational(steps, section.Resolution)} aksharas, which is too long to be put in time; take fewer lines");
        }

        var (lines, spans) = (new ScoreLine[section.Lines.Count], new ScoreLine[2 * section.Lines.Count]);
        var shifts = new int[lines.Length];
        var start = section.Lines[0].OnsetSteps;
        for (var l = 0; l < lines.Length; l++)
        {
            var line = section.Lines[l];
            if (line.HasAnswer)
            {
                throw new ArgumentException("the score has answers already; make it from the score without them");
            }

            shifts[l] = line.OnsetSteps - start;
            var onset = line.OnsetSteps + shifts[l];
            lines[l] = line with { OnsetSteps = onset, LengthSteps = line.LengthSteps * 2, AnswerSteps = line.LengthSteps };
            spans[2 * l] = line with { OnsetSteps = onset };
            spans[(2 * l) + 1] = line with { OnsetSteps = onset + line.LengthSteps };
        }

        // Tempi change where lines begin.
        var tempi = new TempoMap(section.Tempo);
        foreach (var change in section.TempoChanges)
        {
            tempi.ChangeTo(change.Tempo, change.Onset + change.Onset - section.Lines[0].Onset);
        }

        var end = lines[^1].EndSteps;
        var notes = section.Notes.ConvertAll(n => n.At(n.OnsetSteps + shifts[n.LineIndex]));
        var measures = Measures(section, spans, end);
        var length = measures[^1].OnsetSteps + measures[^1].LengthSteps;
        return section with
        {
            Lines = ValueList.Adopt(lines),
            Notes = notes,
            Breaths = section.Breaths.ConvertAll(b => b with { Onset = b.Onset + new Rational(shifts[notes[b.AfterNote].LineIndex], section.Resolution) }),
            Measures = measures,
            TempoChanges = tempi.Changes,
            RoundsToFirstBeat = RoundsToFirstBeat(section, new Rational(end - start, section.Resolution), end == length),
            LengthSteps = length,
        };
    }

    /// <summary>The times after which the end fills an avartana.</summary>
    private static int? RoundsToFirstBeat(Section section, Rational length, bool isFull)
    {
        if (section.Meter.IsFree || isFull)
        {
            return section.Meter.IsFree ? null : section.Rounds;
        }

        if (section.Delivery.IsLineByLine || section.Delivery.Fill != Fill.None)
        {
            // Where the lines alone fill it, the lines with their answers do; a smaller number is not searched.
            return section.RoundsToFirstBeat;
        }

        var needed = (length / section.Rounds / section.Meter.Beats).Denominator;
        return (int)((section.Rounds + needed - 1) / needed * needed);
    }

    /// <summary>The measures, with bars of free rhythm for the answers too; only a line that is given begins a system.</summary>
    private static ValueList<Measure> Measures(Section section, ScoreLine[] spans, int end)
    {
        var measures = MeasurePlan.For(section.Meter, spans, end, section.Resolution).AsSpan().ToArray();
        var span = 0;
        for (var m = 0; m < measures.Length; m++)
        {
            while (span < spans.Length && spans[span].OnsetSteps < measures[m].OnsetSteps)
            {
                span += 2;
            }

            measures[m] = measures[m] with { IsLineStart = span < spans.Length && spans[span].OnsetSteps == measures[m].OnsetSteps };
        }

        return ValueList.Adopt(measures);
    }
}

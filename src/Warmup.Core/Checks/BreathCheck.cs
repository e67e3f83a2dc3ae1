using System.Globalization;

namespace Warmup;

/// <summary>How long each breath span lasts, against what is asked of a singer.</summary>
/// <remarks>A silence ends a span only if the singer can breathe in it; shorter silences and holds count in the span.</remarks>
internal static class BreathCheck
{
    public static IEnumerable<Finding> Check(Score score, Singer singer)
    {
        foreach (var span in Spans(score, singer.ShortestBreathSeconds))
        {
            if (span.Seconds > singer.BreathSeconds)
            {
                yield return Say(span, singer);
            }
        }
    }

    private static IEnumerable<Span> Spans(Score score, Rational shortest)
    {
        Span? open = null;
        var sectionStart = Rational.Zero;
        foreach (var section in score.Sections)
        {
            for (var i = 0; i < section.Notes.Count; i++)
            {
                var note = section.Notes[i];
                var onset = sectionStart + section.SecondsAt(note.Onset);
                var end = sectionStart + section.SecondsAt(note.Onset + note.Length);
                if (open is { } span && onset - span.End < shortest)
                {
                    open = span with { End = end, LastLine = note.LineIndex };
                    continue;
                }

                if (open is { } closed)
                {
                    yield return closed;
                }

                open = new Span(section, note.LineIndex, note.LineIndex, note.Onset, onset, end);
            }

            sectionStart += section.Seconds;
        }

        if (open is { } last)
        {
            yield return last;
        }
    }

    private static Finding Say(Span span, Singer singer)
    {
        var lines = span.FirstLine == span.LastLine
            ? string.Create(CultureInfo.InvariantCulture, $"line {span.FirstLine + 1}")
            : string.Create(CultureInfo.InvariantCulture, $"lines {span.FirstLine + 1} to {span.LastLine + 1}");
        return new Finding(
            FindingCode.BreathTooLong,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"one breath has to last {span.Seconds.ToDouble():0.0} s ({lines}); {singer.BreathSeconds.ToDouble():0.0} s are asked of this singer at most"),
            Fix(span, singer))
        {
            Singer = singer.Alias,
            Line = span.FirstLine + 1,
            Beat = span.Onset,
            Measured = span.Seconds.ToDouble(),
            Limit = singer.BreathSeconds.ToDouble(),
            Unit = "s",
        };
    }

    private static string Fix(Span span, Singer singer)
    {
        // Line by line a faster tempo may cost one more avartana for the breath, a rest that fills a line up may become too short to
        // breathe in, and a ramp has more than one tempo: no tempo is promised there.
        var delivery = span.Section.Delivery;
        if (!delivery.IsLineByLine && (delivery.Fill != Fill.None || !span.Section.TempoChanges.IsEmpty))
        {
            return span.FirstLine != span.LastLine ? "breathe after each line (line by line)" : "take shorter lines, or try the next speed";
        }

        // A line that fits one avartana is held to its end whatever its speed and its number of notes.
        if (delivery.IsLineByLine)
        {
            return delivery is { Fill: Fill.Avartana, FillBy: FillBy.Hold } && span.Seconds < span.Section.Meter.Beats * 60 / span.Section.TempoAt(span.Onset)
                ? "take free rhythm or a shorter avartana, in which the last note is held less"
                : "take shorter lines, or try the next speed";
        }

        // Without breaths a span's seconds shrink as the tempo grows.
        var tempo = (span.Section.Tempo * span.Seconds / singer.BreathSeconds).Ceiling();
        var faster = tempo <= Tempo.Fastest
            ? string.Create(CultureInfo.InvariantCulture, $"a tempo of {tempo} if the throat allows it")
            : null;
        if (span.FirstLine != span.LastLine)
        {
            return faster is null ? "breathe after each line" : $"breathe after each line (line by line), or take {faster}";
        }

        return faster is null ? "take shorter lines" : $"take shorter lines, the next speed, or {faster}";
    }

    private readonly record struct Span(Section Section, int FirstLine, int LastLine, Rational Onset, Rational Start, Rational End)
    {
        public Rational Seconds => End - Start;
    }
}

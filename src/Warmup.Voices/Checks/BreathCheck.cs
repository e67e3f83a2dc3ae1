using System.Globalization;

namespace Warmup.Voices;

/// <summary>How long each breath span lasts, against what is asked of a singer.</summary>
internal static class BreathCheck
{
    public static IEnumerable<Finding> Check(Score score, Singer singer)
    {
        foreach (var span in BreathSpan.Of(score, singer.ShortestBreathSeconds))
        {
            if (span.Seconds > singer.BreathSeconds)
            {
                yield return Say(score.Sections[span.Section], span, singer);
            }
        }
    }

    private static Finding Say(Section section, BreathSpan span, Singer singer)
    {
        var lines = span.FirstLine == span.LastLine
            ? string.Create(CultureInfo.InvariantCulture, $"line {span.FirstLine}")
            : string.Create(CultureInfo.InvariantCulture, $"lines {span.FirstLine} to {span.LastLine}");
        return new Finding(
            FindingCode.BreathTooLong,
            Severity.Error,
            string.Create(
                CultureInfo.InvariantCulture,
                $"one breath has to last {span.Seconds.ToDouble():0.0} s ({lines}); {singer.BreathSeconds.ToDouble():0.0} s are asked of this singer at most"),
            Fix(section, span, singer))
        {
            Singer = singer.Alias,
            Line = span.FirstLine,
            Beat = span.Onset,
            Measured = span.Seconds.ToDouble(),
            Limit = singer.BreathSeconds.ToDouble(),
            Unit = "s",
        };
    }

    private static string Fix(Section section, BreathSpan span, Singer singer)
    {
        if (section.Delivery.IsLineByLine && span.FirstLine == span.LastLine)
        {
            return ShorterHold(section, span, singer);
        }

        var breathe = span.FirstLine != span.LastLine ? "breathe after each line (line by line)" : "breathe inside the line, or take shorter lines";

        // Where a rest or a breath lies between notes, another tempo changes more than the spans' lengths, and a ramp has several: none is
        // promised there.
        var tempo = (section.Tempo * span.Seconds / singer.BreathSeconds).Ceiling();
        return tempo <= Tempo.Fastest && !section.Delivery.IsLineByLine && section.TempoChanges.IsEmpty && IsWithoutRests(section)
            ? string.Create(CultureInfo.InvariantCulture, $"{breathe}, or take a tempo of {tempo} if the throat allows it")
            : breathe;
    }

    /// <summary>Line by line the hold gives way first: a longer breath in its place.</summary>
    private static string ShorterHold(Section section, BreathSpan span, Singer singer)
    {
        var line = section.Lines[span.FirstLine - 1];
        var held = section.Notes[line.FirstNote + line.NoteCount - 1];
        var seconds = section.SecondsAt(held.Onset + held.Length) - section.SecondsAt(held.Onset);
        var less = span.Seconds - singer.BreathSeconds;
        if (seconds - less < BreathCosts.LeastSoundSeconds)
        {
            return "breathe inside the line as well, and hold its last note less";
        }

        // A line that fits one avartana is held to its end whatever its speed and its number of notes.
        var orElse = !section.Meter.IsFree && span.Seconds < section.SecondsAt(section.Meter.Beats)
            ? ", or take free rhythm or a shorter avartana, in which it is held less"
            : string.Empty;
        return string.Create(
            CultureInfo.InvariantCulture, $"let go of the held last note {Math.Ceiling(10 * less.ToDouble()) / 10:0.0} s earlier, for a longer breath{orElse}");
    }

    private static bool IsWithoutRests(Section section)
    {
        for (var n = 1; n < section.Notes.Count; n++)
        {
            if (section.Notes[n - 1].EndSteps != section.Notes[n].OnsetSteps)
            {
                return false;
            }
        }

        return true;
    }
}

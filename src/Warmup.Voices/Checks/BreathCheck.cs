using System.Globalization;

namespace Warmup.Voices;

/// <summary>Whether each span between breaths is short enough for a singer.</summary>
internal static class BreathCheck
{
    /// <summary>The least that a note keeps where a breath shortens it, in seconds (the project's own setting).</summary>
    public static Rational LeastSoundSeconds => new(1, 10);

    public static IEnumerable<Finding> Check(Score score, Singer singer)
    {
        foreach (var span in BreathSpan.Of(score, singer.ShortestBreathSeconds))
        {
            if (span.Seconds > singer.BreathSeconds)
            {
                yield return Say(score.Sections[span.First.Section - 1], span, singer);
            }
        }
    }

    /// <summary>How long a span is and how long it may be, in words.</summary>
    public static string Describe(BreathSpan span, Singer singer, string who)
    {
        var lines = span.IsWithinLine ? $"{span.First}"
            : span is { IsWithinSection: true, First.Title: null } ? string.Create(CultureInfo.InvariantCulture, $"lines {span.First.Line} to {span.Last.Line}")
            : $"{span.First} to {span.Last}";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"one breath has to last {span.Seconds.ToDouble():0.0} s ({lines}); the most for {who} is {singer.BreathSeconds.ToDouble():0.0} s");
    }

    private static Finding Say(Section section, BreathSpan span, Singer singer) =>
        new(VoiceFindingCode.BreathTooLong, Severity.Error, Describe(span, singer, "this singer"), Fix(section, span, singer))
        {
            Singer = singer.Alias,
            Place = span.First,
            Measured = span.Seconds.ToDouble(),
            Limit = singer.BreathSeconds.ToDouble(),
            Unit = "s",
        };

    private static string Fix(Section section, BreathSpan span, Singer singer)
    {
        if (section.Delivery.IsLineByLine && span.IsWithinLine)
        {
            return ShorterHold(section, span, singer);
        }

        var breathe = span.IsWithinLine ? "breathe inside the line, or take shorter lines" : "breathe after each line (line by line)";

        // Where a rest or a breath lies between notes, another tempo changes more than the spans' lengths; a ramp, and a span over several
        // sections, have several tempi: none is promised there.
        var tempo = (section.Tempo * span.Seconds / singer.BreathSeconds).Ceiling();
        return tempo <= Tempo.Fastest && !section.Delivery.IsLineByLine && section.TempoChanges.IsEmpty && span.IsWithinSection && IsWithoutRests(section)
            ? string.Create(CultureInfo.InvariantCulture, $"{breathe}, or take a tempo of {tempo} if the throat allows it")
            : breathe;
    }

    /// <summary>Line by line the hold gives way first: a longer breath in its place.</summary>
    private static string ShorterHold(Section section, BreathSpan span, Singer singer)
    {
        var line = section.Lines[span.First.Line - 1];
        var held = section.Notes[line.FirstNote + line.NoteCount - 1];
        var seconds = section.SecondsAt(held.Onset + held.Length) - section.SecondsAt(held.Onset);
        var less = span.Seconds - singer.BreathSeconds;
        if (seconds - less < LeastSoundSeconds)
        {
            return "breathe inside the line as well, and hold its last note less";
        }

        // A line that fits one avartana is held to its end at any speed and with any number of notes.
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

using System.Globalization;

namespace Warmup;

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
        // Without other breaths a span's seconds shrink as the tempo grows.
        var tempo = (section.Tempo * span.Seconds / singer.BreathSeconds).Ceiling();
        var faster = tempo <= Tempo.Fastest
            ? string.Create(CultureInfo.InvariantCulture, $"a tempo of {tempo} if the throat allows it")
            : null;
        if (span.FirstLine != span.LastLine)
        {
            return faster is null ? "breathe after each line" : $"breathe after each line (line by line), or take {faster}";
        }

        return faster is null ? "take shorter lines" : $"take shorter lines, the next speed, or {faster}";
    }
}

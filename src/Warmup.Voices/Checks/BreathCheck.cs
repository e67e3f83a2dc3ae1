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
                yield return Say(span, singer);
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

    private static Finding Say(BreathSpan span, Singer singer) =>
        new(VoiceFindingCode.BreathTooLong, Severity.Error, Describe(span, singer, "this singer"))
        {
            Singer = singer.Alias,
            Place = span.First,
            Measured = span.Seconds.ToDouble(),
            Limit = singer.BreathSeconds.ToDouble(),
            Unit = "s",
        };
}

using System.Globalization;

namespace Warmup.Voices;

/// <summary>Whether each span between breaths is short enough for a singer.</summary>
internal static class BreathCheck
{
    /// <summary>The least that a note keeps where a breath shortens it, in seconds (the project's own setting).</summary>
    public static Rational LeastSoundSeconds => new(1, 10);

    // Products of fractions that are no finer than this fit 64 bits.
    private const long FinestFraction = 10_000;

    public static IEnumerable<Finding> Check(Score score, Singer singer) => IsShort(score, singer) ? [] : Each(score, singer);

    private static IEnumerable<Finding> Each(Score score, Singer singer)
    {
        foreach (var span in BreathSpan.Of(score, singer.ShortestBreathSeconds))
        {
            if (span.Seconds > singer.BreathSeconds)
            {
                yield return Say(span, singer);
            }
        }
    }

    /// <summary>
    /// Whether whole grid steps show already that each span is short enough, as in most drills; the spans of several tempi are measured in
    /// seconds.
    /// </summary>
    private static bool IsShort(Score score, Singer singer)
    {
        var (section, shortest, most) = (score.Sections[0], singer.ShortestBreathSeconds, singer.BreathSeconds);
        if (score.Sections.Count > 1 || !section.TempoChanges.IsEmpty
            || Math.Max(section.Tempo.Denominator, Math.Max(shortest.Denominator, most.Denominator)) > FinestFraction)
        {
            return false;
        }

        var stepsASecond = section.Tempo * section.Resolution / 60;
        var (silence, longest) = ((shortest * stepsASecond).Ceiling(), (most * stepsASecond).Floor());
        var notes = section.Notes.AsSpan();
        var first = notes[0].OnsetSteps;
        for (var n = 0; n < notes.Length; n++)
        {
            if (n > 0 && notes[n].OnsetSteps - notes[n - 1].EndSteps >= silence)
            {
                first = notes[n].OnsetSteps;
            }

            if (notes[n].EndSteps - first > longest)
            {
                return false;
            }
        }

        return true;
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

using System.Text.Json.Serialization;
using System.Globalization;

namespace Warmup.Voices;

/// <summary>What is sung on one breath: from the first note after a breath to the end of the last note before the next.</summary>
/// <remarks>
/// A silence ends a span only if it lasts at least the shortest breath; shorter silences and holds count in the span. Immutable, value
/// equality.
/// </remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<BreathSpan>))]
public readonly record struct BreathSpan
{
    internal BreathSpan(ScorePlace first, ScorePlace last, Rational start, Rational end) => (First, Last, Start, End) = (first, last, start, end);

    /// <summary>The place of its first note.</summary>
    public ScorePlace First { get; }

    /// <summary>The place of its last note; it can lie in a later section.</summary>
    public ScorePlace Last { get; private init; }

    /// <summary>Its beginning in seconds from the score's beginning.</summary>
    public Rational Start { get; }

    /// <summary>Its end in seconds from the score's beginning.</summary>
    public Rational End { get; private init; }

    /// <summary>Its length in seconds.</summary>
    public Rational Seconds => End - Start;

    /// <summary>Whether it begins and ends in the same line.</summary>
    public bool IsWithinLine => IsWithinSection && First.Line == Last.Line;

    /// <summary>Whether it begins and ends in the same section.</summary>
    internal bool IsWithinSection => First.Section == Last.Section;

    /// <summary>The spans of a score.</summary>
    /// <param name="score">The score.</param>
    /// <param name="shortestBreath">The shortest silence in which a breath can be taken, in seconds, above 0.</param>
    /// <returns>The spans in order; every note lies in one.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shortestBreath"/> is not above 0.</exception>
    public static IEnumerable<BreathSpan> Of(Score score, Rational shortestBreath)
    {
        ArgumentNullException.ThrowIfNull(score);
        return shortestBreath.Sign > 0
            ? Each(score, shortestBreath)
            : throw new ArgumentOutOfRangeException(nameof(shortestBreath), shortestBreath, $"shortestBreath must be above 0, not {shortestBreath}");
    }

    /// <summary>The places and the length.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{(IsWithinLine ? $"{First}" : $"{First} to {Last}")}, {Seconds.ToDouble():0.0##} s"));

    private static IEnumerable<BreathSpan> Each(Score score, Rational shortestBreath)
    {
        BreathSpan? open = null;
        var starts = score.SectionStarts();
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var (section, sectionStart) = (score.Sections[s], starts[s]);
            for (var i = 0; i < section.Notes.Count; i++)
            {
                // Notes that touch have no silence between them, so only the ends of a run are turned into seconds.
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
                    open = span with { End = end, Last = score.PlaceOf(s, last) };
                    continue;
                }

                if (open is { } closed)
                {
                    yield return closed;
                }

                open = new BreathSpan(score.PlaceOf(s, first), score.PlaceOf(s, last), start, end);
            }
        }

        if (open is { } final)
        {
            yield return final;
        }
    }
}

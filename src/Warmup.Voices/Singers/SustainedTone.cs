using System.Globalization;

namespace Warmup.Voices;

/// <summary>Which of several sustained tones counts.</summary>
public enum TrialRule
{
    /// <summary>The longest.</summary>
    Best,

    /// <summary>The middle one; of an even number the mean of the two in the middle.</summary>
    Median,
}

/// <summary>The measurement of the longest sustained tone, in seconds.</summary>
/// <remarks>
/// Three trials in one short session are enough for adults (Maslan et al. 2011, J Voice 25:709-713); children may need up to 14 before the
/// value stays (Finnegan 1984, J Commun Disord 17:309-317, who also warns against comparing one child with a group's mean). A short tone
/// is a number to plan with; it is never a sign of illness by itself.
/// </remarks>
public static class SustainedTone
{
    /// <summary>The shortest tone that counts as a measurement, in seconds: 1 (the project's own bound).</summary>
    public static int Shortest => 1;

    /// <summary>The longest tone that counts as a measurement, in seconds: 120 (the project's own bound).</summary>
    public static int Longest => 120;

    /// <summary>The most trials: 14 (Finnegan 1984 needed up to 14 with children).</summary>
    public static int MostTrials => 14;

    /// <summary>The value that counts of several trials.</summary>
    /// <param name="trials">1 to 14 tones of 1 to 120 seconds each.</param>
    /// <param name="rule">Which one counts.</param>
    /// <returns>The value in seconds, exactly.</returns>
    /// <exception cref="ArgumentException">There are no trials or too many, a tone lies outside its range, or the rule is unknown.</exception>
    public static Rational Of(ValueList<Rational> trials, TrialRule rule = TrialRule.Best)
    {
        if (SingerFaults.OfTrials(trials.Count) is { } fault)
        {
            throw new ArgumentOutOfRangeException(nameof(trials), trials.Count, fault);
        }

        Require.Defined(rule);
        var sorted = trials.AsSpan().ToArray();
        foreach (var trial in sorted)
        {
            RequireTone(trial, nameof(trials));
        }

        Array.Sort(sorted);
        var middle = sorted.Length / 2;
        return rule == TrialRule.Best ? sorted[^1]
            : sorted.Length % 2 == 1 ? sorted[middle]
            : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    internal static Rational RequireTone(Rational seconds, string name) => seconds >= Shortest && seconds <= Longest
        ? seconds
        : throw new ArgumentOutOfRangeException(
            name,
            seconds,
            string.Create(CultureInfo.InvariantCulture, $"the sustained tone must be between {Shortest} and {Longest} seconds, not {seconds.ToDouble():0.###}"));
}

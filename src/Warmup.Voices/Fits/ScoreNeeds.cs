using System.Globalization;

namespace Warmup.Voices;

/// <summary>
/// All that the standard checks ask of singers in a score, worked out once: how far the range must reach, how long one breath must last, and which
/// levels it is too fast for. Comparing it with a singer takes no time, so that a class may have many.
/// </summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record ScoreNeeds
{
    private ScoreNeeds(int low, int high, ValueList<Rational> shortestBreaths, ValueList<Rational> spans, ValueList<Experience> tooFastFor) =>
        (Low, High, ShortestBreaths, LongestSpans, TooFastFor) = (low, high, shortestBreaths, spans, tooFastFor);

    /// <summary>
    /// The highest lowest note of a comfortable range that still holds the score, in semitones above the keyboard note of its first tonic; a note of
    /// the score may lie 50 cents outside, as in the range check.
    /// </summary>
    public int Low { get; }

    /// <summary>The lowest highest note of a comfortable range that still holds the score, counted like <see cref="Low"/>.</summary>
    public int High { get; }

    /// <summary>The shortest breaths for which the spans were measured, in seconds.</summary>
    public ValueList<Rational> ShortestBreaths { get; }

    /// <summary>For each of <see cref="ShortestBreaths"/> the longest span between breaths, in seconds.</summary>
    public ValueList<Rational> LongestSpans { get; }

    /// <summary>The levels, of those asked for, that the score is too fast for.</summary>
    public ValueList<Experience> TooFastFor { get; }

    /// <summary>What a score asks.</summary>
    /// <param name="score">The score.</param>
    /// <param name="shortestBreaths">The shortest breaths to measure spans for, in seconds, each above 0.</param>
    /// <param name="levels">The levels to measure the speed for.</param>
    /// <exception cref="ArgumentOutOfRangeException">A shortest breath is not above 0, or a level is none of the three.</exception>
    public static ScoreNeeds Of(Score score, ValueList<Rational> shortestBreaths, ValueList<Experience> levels)
    {
        ArgumentNullException.ThrowIfNull(score);
        var reach = PitchSpan.Of([score]);
        return new ScoreNeeds(
            (int)Millicents.Semitones(reach.Lowest + Millicents.Tolerance).Floor(),
            (int)Millicents.Semitones(reach.Highest - Millicents.Tolerance).Ceiling(),
            shortestBreaths,
            shortestBreaths.ConvertAll(s => BreathSpan.Of(score, s).Select(span => span.Seconds).DefaultIfEmpty().Max()),
            levels.Where(l => AgilityCheck.All(score, AgilityLimits.Of(l)).Any()).ToValueList());
    }

    /// <summary>
    /// The same needs where singers of a class may breathe at places of their own (<see cref="BreathPlacing.AsSungBy"/>): for each shortest breath
    /// the least of the capacities with which the score, or the score with such breaths, can be sung stands for the longest span.
    /// </summary>
    /// <param name="score">The score that was measured.</param>
    /// <param name="needs">The singers' needs.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public ScoreNeeds WithOwnBreaths(Score score, ValueList<BreathNeed> needs, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        var spans = new Rational[ShortestBreaths.Count];
        for (var i = 0; i < spans.Length; i++)
        {
            spans[i] = LongestSpans[i];
            var sorted = needs.Where(n => n.ShortestBreathSeconds == ShortestBreaths[i]).OrderBy(n => n.CapacitySeconds).ToList();
            if (sorted.Count == 0 || spans[i] <= sorted[0].CapacitySeconds)
            {
                continue;
            }

            // A longer breath can do whatever a shorter one can; mostly the shortest can do it already.
            var (low, high) = (0, sorted.Count);
            for (var middle = 0; low < high; middle = (low + high) / 2)
            {
                (low, high) = spans[i] <= sorted[middle].CapacitySeconds || BreathPlan.TryMake(score, sorted[middle], out _, out _, cancellationToken)
                    ? (low, middle)
                    : (middle + 1, high);
            }

            spans[i] = low < sorted.Count ? Rational.Min(spans[i], sorted[low].CapacitySeconds) : spans[i];
        }

        return new ScoreNeeds(Low, High, ShortestBreaths, ValueList.Create<Rational>(spans), TooFastFor);
    }

    /// <summary>Whether a singer's comfortable range holds the score.</summary>
    /// <param name="singer">The singer.</param>
    /// <param name="tonic">The MIDI note of the tonic that the singer takes.</param>
    public bool IsInRange(Singer singer, int tonic)
    {
        ArgumentNullException.ThrowIfNull(singer);
        return singer.Low.Midi - tonic <= Low && singer.High.Midi - tonic >= High;
    }

    /// <summary>Whether a singer's breath lasts for every span.</summary>
    /// <param name="singer">The singer, whose shortest breath is one of <see cref="ShortestBreaths"/>.</param>
    /// <exception cref="ArgumentException">No spans were measured for the singer's shortest breath.</exception>
    public bool IsInBreath(Singer singer)
    {
        ArgumentNullException.ThrowIfNull(singer);
        for (var i = 0; i < ShortestBreaths.Count; i++)
        {
            if (ShortestBreaths[i] == singer.ShortestBreathSeconds)
            {
                return LongestSpans[i] <= singer.BreathSeconds;
            }
        }

        throw new ArgumentException($"no spans were measured for breaths of {singer.ShortestBreathSeconds} s; measure them with the score", nameof(singer));
    }

    /// <summary>The reach, the longest span and the levels.</summary>
    public override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture,
        $"{Low} to {High} semitones above the tonic; one breath of {string.Join(" or ", LongestSpans.ConvertAll(s => string.Create(CultureInfo.InvariantCulture, $"{s.ToDouble():0.0##} s")))}; too fast for {(TooFastFor.IsEmpty ? "none" : string.Join(", ", TooFastFor.ConvertAll(l => l.ToWord())))}"));
}

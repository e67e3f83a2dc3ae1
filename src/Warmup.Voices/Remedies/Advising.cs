using System.Globalization;

namespace Warmup.Voices;

/// <summary>Finds what makes drills fit singers.</summary>
public static class Advising
{
    // Notes that may be looked at, by all searches together; the project's own bound.
    private const long MostCost = 4_000_000;

    /// <summary>What the checks find about a drill, and for each finding the changes that clear it.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="singers">Everyone who sings it together: a remedy for one brings no new finding for another.</param>
    /// <param name="checks">The checks; <see cref="ScoreChecks.Standard"/> by default. Those of your own are honoured as the standard ones are.</param>
    /// <param name="planned">
    /// What breaths have been planned for, where the drill is sung with <see cref="PlannedBreaths"/>; <see langword="null"/>, the default,
    /// where it is not, and planned breaths are a remedy.
    /// </param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Singer after singer, each one's findings as <see cref="Checking.Check"/> gives them; empty where all fits.</returns>
    /// <exception cref="PatternException">The drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    /// <remarks>
    /// A remedy was applied and checked: its finding is gone for this singer and this line, and no singer has a finding on a line that had none of
    /// its kind, or a worse one. Tried are tonics up to two octaves away, all whole tempi, other speeds, deliveries and scales of the catalogue,
    /// fewer lines and planned breaths, then two of these (tempi there in steps of a twentieth). The work is bounded: with many notes and
    /// singers not everything is tried, and <see cref="Advice.Otherwise"/> says so.
    /// </remarks>
    public static ValueList<Advice> Advise(
        this Drill drill, ValueList<Singer> singers, ScoreChecks? checks = null, BreathNeed? planned = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(drill);
        checks ??= ScoreChecks.Standard;
        var scores = new TrialScores(drill, cancellationToken);
        var trial = new RemedyTrial(scores, singers, checks, planned);
        if (trial.Findings.Count == 0)
        {
            return [];
        }

        var together = new RemedySearch(scores, trial, checks, planned is null ? BreathNeed.Of(singers) : null, MostCost);
        var alone = new Dictionary<int, RemedySearch>();
        var advice = new List<Advice>();
        foreach (var (complaint, finding) in trial.Findings)
        {
            var singer = singers[complaint.Singer];
            var remedies = together.For(complaint);
            if (!remedies.IsEmpty)
            {
                advice.Add(new Advice(singer, finding, remedies, [], string.Empty));
                continue;
            }

            if (singers.Count > 1 && scores.Cost < MostCost && !alone.ContainsKey(complaint.Singer))
            {
                var own = new RemedyTrial(scores, [singer], checks, planned is null ? null : BreathNeed.Of(singer));
                alone[complaint.Singer] = new RemedySearch(scores, own, checks, planned is null ? BreathNeed.Of(singer) : null, MostCost);
            }

            var apart = alone.TryGetValue(complaint.Singer, out var search) ? search.For(complaint with { Singer = 0 }) : [];
            advice.Add(new Advice(singer, finding, [], apart, Otherwise(trial, finding, singer, singers.Count, together.IsComplete, apart)));
        }

        return advice.ToValueList();
    }

    /// <summary>What would have to give.</summary>
    private static string Otherwise(RemedyTrial trial, Finding finding, Singer singer, int singers, bool isComplete, ValueList<Remedy> alone)
    {
        if (!alone.IsEmpty)
        {
            return $"nothing that was tried clears this for all {singers} singers together; for {singer.Alias} alone";
        }

        if (!isComplete)
        {
            return "not everything could be tried, with so many notes and singers: take fewer of either";
        }

        var (lowest, highest) = (long.MaxValue, long.MinValue);
        foreach (var height in trial.Written.Sections.SelectMany(s => Millicents.Of(s)))
        {
            (lowest, highest) = (Math.Min(lowest, height), Math.Max(highest, height));
        }

        var range = Millicents.Of(singer.High) - Millicents.Of(singer.Low);
        return finding.Code is VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange && highest - lowest > range + (2 * Millicents.Tolerance)
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"no tonic fits, since the drill spans {Millicents.Semitones(highest - lowest).ToDouble():0.#} semitones and the range {Millicents.Semitones(range).ToDouble():0}: a narrower pattern would be needed")
            : "no change that was tried, and no two of them, clear this without another finding: another pattern would be needed";
    }
}

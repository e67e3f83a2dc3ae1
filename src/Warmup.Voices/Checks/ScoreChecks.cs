namespace Warmup.Voices;

/// <summary>Holds scores against singers.</summary>
public static class ScoreChecks
{
    // A new check is one new file and one line here.
    private static readonly ValueList<Func<Score, Singer, IEnumerable<Finding>>> Checks = [RangeCheck.Check, BreathCheck.Check, AgilityCheck.Check];

    /// <summary>What does not fit a singer; empty where the drill fits.</summary>
    /// <param name="score">The score.</param>
    /// <param name="singer">The singer.</param>
    /// <returns>The findings: range first, then breath, then agility, each in the order of the lines.</returns>
    public static ValueList<Finding> Check(this Score score, Singer singer)
    {
        var findings = new List<Finding>();
        foreach (var check in Checks)
        {
            findings.AddRange(check(score, singer));
        }

        return findings.ToValueList();
    }

    /// <summary>Whether a score fits a singer: no finding is an error.</summary>
    /// <param name="score">The score.</param>
    /// <param name="singer">The singer.</param>
    public static bool Fits(this Score score, Singer singer)
    {
        foreach (var finding in score.Check(singer))
        {
            if (finding.Severity == Severity.Error)
            {
                return false;
            }
        }

        return true;
    }
}

namespace Warmup.Voices;

/// <summary>Checks scores against singers.</summary>
public static class Checking
{
    /// <summary>What does not fit a singer; empty where the score fits.</summary>
    /// <param name="score">The score.</param>
    /// <param name="singer">The singer.</param>
    /// <param name="checks">The checks; <see cref="ScoreChecks.Standard"/> by default.</param>
    /// <returns>The findings check after check, each check's in the order of the lines.</returns>
    public static ValueList<Finding> Check(this Score score, Singer singer, ScoreChecks? checks = null)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(singer);
        var findings = new List<Finding>();
        foreach (var check in (checks ?? ScoreChecks.Standard).All)
        {
            findings.AddRange(check(score, singer));
        }

        return findings.ToValueList();
    }

    /// <summary>Whether a score fits a singer: no finding is an error.</summary>
    /// <param name="score">The score.</param>
    /// <param name="singer">The singer.</param>
    /// <param name="checks">The checks; <see cref="ScoreChecks.Standard"/> by default.</param>
    public static bool Fits(this Score score, Singer singer, ScoreChecks? checks = null)
    {
        foreach (var finding in score.Check(singer, checks))
        {
            if (finding.Severity == Severity.Error)
            {
                return false;
            }
        }

        return true;
    }
}

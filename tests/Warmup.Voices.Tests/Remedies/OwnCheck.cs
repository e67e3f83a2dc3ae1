namespace Warmup.Voices.Tests;

/// <summary>Checks of a test's own, to see which changes are tried and to find any of them good.</summary>
internal static class OwnCheck
{
    /// <summary>A check by itself, without the standard ones.</summary>
    public static ScoreChecks Only(params ReadOnlySpan<ScoreCheck> checks)
    {
        var all = ScoreChecks.Standard.Without(ScoreChecks.Range).Without(ScoreChecks.Breath).Without(ScoreChecks.Agility);
        foreach (var check in checks)
        {
            all = all.With(check);
        }

        return all;
    }

    /// <summary>A check that finds a fault of a code where a section is as told: on a line, or on none; as large as told.</summary>
    public static ScoreCheck Of(string code, Predicate<Section> isFaulty, int line = 0, Func<Section, double>? amount = null) => (score, singer) =>
        isFaulty(score.Sections[0])
            ? [new Finding(code, Severity.Error, "not so") { Singer = singer.Alias, Place = line > 0 ? new ScorePlace(1, line) : null, Measured = amount?.Invoke(score.Sections[0]), Limit = 0 }]
            : [];
}

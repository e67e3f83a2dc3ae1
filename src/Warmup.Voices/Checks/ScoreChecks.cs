namespace Warmup.Voices;

/// <summary>A check: what in a score does not fit a singer. It reads the two values and nothing else, so that it gives the same findings each time.</summary>
/// <param name="score">The score.</param>
/// <param name="singer">The singer.</param>
/// <returns>The findings in the order of the lines; one of <see cref="Severity.Error"/> says that the score does not fit.</returns>
public delegate IEnumerable<Finding> ScoreCheck(Score score, Singer singer);

/// <summary>The checks that a score goes through: the standard ones, and those you add. Immutable, value equality.</summary>
public sealed record ScoreChecks
{
    private ScoreChecks(ValueList<ScoreCheck> all) => All = all;

    /// <summary>Range, then breath, then agility.</summary>
    public static ScoreChecks Standard { get; } = new([RangeCheck.Check, BreathCheck.Check, AgilityCheck.Check]);

    /// <summary>Whether each note lies in the comfortable range.</summary>
    public static ScoreCheck Range => Standard.All[0];

    /// <summary>Whether each span between breaths is short enough.</summary>
    public static ScoreCheck Breath => Standard.All[1];

    /// <summary>Whether the notes follow each other slowly enough.</summary>
    public static ScoreCheck Agility => Standard.All[2];

    /// <summary>The checks in order.</summary>
    public ValueList<ScoreCheck> All { get; }

    /// <summary>The same checks and one more at the end; a check that is there already is not added again.</summary>
    /// <param name="check">The check.</param>
    public ScoreChecks With(ScoreCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return Has(check) ? this : new ScoreChecks([.. All, check]);
    }

    /// <summary>The same checks but one.</summary>
    /// <param name="check">The check to leave out.</param>
    public ScoreChecks Without(ScoreCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new ScoreChecks(All.Where(c => c != check).ToValueList());
    }

    /// <summary>How many checks there are.</summary>
    public override string ToString() => All.Count == 1 ? "1 check" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{All.Count} checks");

    /// <summary>Whether there are checks beyond the standard ones.</summary>
    internal bool HasOwn => All.Any(c => !Standard.Has(c));

    internal bool Has(ScoreCheck check) => All.Contains(check);

    /// <summary>What the checks beyond the standard ones find.</summary>
    internal IEnumerable<Finding> FindBeyondStandard(Score score, Singer singer)
    {
        foreach (var check in All)
        {
            if (!Standard.Has(check))
            {
                foreach (var finding in check(score, singer))
                {
                    yield return finding;
                }
            }
        }
    }
}

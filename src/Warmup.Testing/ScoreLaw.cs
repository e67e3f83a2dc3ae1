namespace Warmup.Testing;

/// <summary>A law about how the lines of a pattern rule are sung: one of <see cref="ScoreLaws"/>, or your own.</summary>
/// <remarks>
/// It compares the score of one to three drills with the score of the same drills after the rule, a section for each drill. Where a scale refuses either,
/// it says nothing. Immutable, value equality; what two laws check is equal if it is the same function.
/// </remarks>
public sealed record ScoreLaw : Law
{
    private readonly Func<Score, Score, LawVerdict> _check;

    /// <summary>Makes a law.</summary>
    /// <param name="name">A short name, 1 to 60 characters without control characters.</param>
    /// <param name="algebra">The law in one line, where <c>f</c> is the rule and <c>d</c> the drills; at most 500 characters.</param>
    /// <param name="sentence">The law in one sentence; at most 500 characters.</param>
    /// <param name="check">Compares the score without the rule with the score after it.</param>
    /// <exception cref="ArgumentException">A text is empty or too long, or holds a control character.</exception>
    public ScoreLaw(string name, string algebra, string sentence, Func<Score, Score, LawVerdict> check)
        : base(name, algebra, sentence)
    {
        ArgumentNullException.ThrowIfNull(check);
        _check = check;
    }

    /// <summary>Compares two scores.</summary>
    /// <param name="before">The score without the rule.</param>
    /// <param name="after">The score after it, with as many sections.</param>
    public LawVerdict Check(Score before, Score after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return _check(before, after);
    }
}

namespace Warmup.Testing;

/// <summary>A law, in words: a <see cref="PatternLaw"/> about the lines of a pattern rule, or a <see cref="ScoreLaw"/> about how they are sung.</summary>
/// <remarks>Immutable, value equality; what two laws check is equal if it is the same function.</remarks>
public abstract record Law
{
    private const int LongestName = 60;
    private const int LongestText = 500;

    private protected Law(string name, string algebra, string sentence)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentException.ThrowIfNullOrWhiteSpace(algebra);
        ArgumentException.ThrowIfNullOrWhiteSpace(sentence);
        Name = Require.PlainText(name, LongestName, "the name of a law");
        Algebra = Require.PlainText(algebra, LongestText, "the algebra of a law");
        Sentence = Require.PlainText(sentence, LongestText, "the sentence of a law");
    }

    /// <summary>A short name.</summary>
    public string Name { get; }

    /// <summary>The law in one line, where <c>f</c> is the rule, <c>p</c> and <c>q</c> are patterns and <c>d</c> are drills.</summary>
    public string Algebra { get; }

    /// <summary>The law in one sentence.</summary>
    public string Sentence { get; }

    /// <summary>The name.</summary>
    public sealed override string ToString() => Name;
}

namespace Warmup;

/// <summary>What stands in a word's parentheses.</summary>
internal enum WordTakes
{
    /// <summary>Nothing; there are no parentheses.</summary>
    Nothing,

    /// <summary>Whole numbers.</summary>
    Numbers,

    /// <summary>A pattern.</summary>
    Pattern,

    /// <summary>Words that are sung.</summary>
    Texts,
}

namespace Warmup.Research;

/// <summary>A combinator that may have made some lines, and the lines it may have been applied to.</summary>
/// <param name="Before">The lines before it: one set for a combinator of one pattern, two for an interleaving.</param>
/// <param name="Build">Applies it to the rules found for them.</param>
/// <param name="IsCheap">Whether the lines before it are only looked up, and not taken apart further.</param>
internal sealed record SearchGuess(Line[][] Before, Func<Pattern[], Pattern> Build, bool IsCheap = false)
{
    public Pattern? Explain(Func<Line[], Pattern?> explain)
    {
        var found = new Pattern[Before.Length];
        for (var i = 0; i < found.Length; i++)
        {
            if (explain(Before[i]) is not { } rule)
            {
                return null;
            }

            found[i] = rule;
        }

        try
        {
            return Build(found);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}

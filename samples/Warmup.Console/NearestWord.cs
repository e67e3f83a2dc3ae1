namespace Warmup.Cli;

/// <summary>Finds the word that was probably meant.</summary>
internal static class NearestWord
{
    /// <summary>
    /// The word that takes the fewest changes, if they are few for its length; none otherwise. Upper and lower case and the hyphens before an
    /// option do not matter.
    /// </summary>
    public static string? Of(string typed, IEnumerable<string> words)
    {
        var (best, least) = ((string?)null, int.MaxValue);
        foreach (var word in words)
        {
            var bare = word.TrimStart('-');
            var changes = Changes(typed.TrimStart('-').ToLowerInvariant(), bare.ToLowerInvariant());
            if (changes < least && changes <= Math.Max(1, bare.Length / 3))
            {
                (best, least) = (word, changes);
            }
        }

        return best;
    }

    /// <summary>The fewest letters to put in, take out, replace, or exchange with a neighbour (optimal string alignment).</summary>
    private static int Changes(string from, string to)
    {
        if (Math.Abs(from.Length - to.Length) > to.Length)
        {
            return int.MaxValue;
        }

        var costs = new int[from.Length + 1, to.Length + 1];
        for (var i = 0; i <= from.Length; i++)
        {
            for (var j = 0; j <= to.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    costs[i, j] = i + j;
                    continue;
                }

                var replace = costs[i - 1, j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1);
                costs[i, j] = Math.Min(replace, 1 + Math.Min(costs[i - 1, j], costs[i, j - 1]));
                if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                {
                    costs[i, j] = Math.Min(costs[i, j], 1 + costs[i - 2, j - 2]);
                }
            }
        }

        return costs[from.Length, to.Length];
    }
}

namespace Warmup.Research;

/// <summary>One search: a table of small rules, what they sum up to, and what combinators leave when they are taken off.</summary>
internal sealed class Searcher(Line[] goal, Scale scale, CancellationToken cancellation)
{
    // How many sets of lines are looked at with each table, at most.
    private const int MostGoals = 400;

    private readonly Dictionary<(ulong, int), Pattern?> _known = [];
    private readonly int _notes = goal.Sum(l => l.Notes.Count);
    private SearchTable _table = null!;
    private int _goals;

    public Pattern? Find()
    {
        var features = new LineFeatures(goal, scale);
        Pattern? best = null;

        // A larger table is made only where it can hold a smaller rule than the best one so far. The more a table holds, the fewer
        // combinators are taken off the lines before they are looked up in it.
        foreach (var (size, depth) in (ReadOnlySpan<(int, int)>)[(2, 3), (3, 2), (4, 1)])
        {
            if (best is not null && (best.Nodes <= size || size == 4))
            {
                break;
            }

            _table = new SearchTable(features, scale, size, cancellation);
            _known.Clear();
            _goals = 0;
            best = Better(best, Explain(goal, depth));
        }

        return best;
    }

    /// <summary>The smallest rule found for some lines.</summary>
    private Pattern? Explain(Line[] lines, int depth)
    {
        cancellation.ThrowIfCancellationRequested();
        var key = (Sound.HashOf(lines), depth);
        if (lines.Length == 0 || _known.TryGetValue(key, out var known))
        {
            return lines.Length == 0 ? null : _known[key];
        }

        if (++_goals > MostGoals)
        {
            return null;
        }

        // A goal met again on the way to itself is no explanation.
        _known[key] = null;
        var best = Checked(SearchCover.OfLines(_table, lines), lines);
        if (lines.Length == 1 && (best is null || best.Nodes > 2))
        {
            best = Better(best, Checked(SearchCover.OfNotes(_table, lines[0]), lines));
        }

        // Nothing is taken off what one or two words explain.
        if (depth > 0 && (best is null || best.Nodes > 2))
        {
            foreach (var guess in SearchGuesses.Of(lines, scale))
            {
                var limit = guess.IsCheap ? 0 : depth - 1;
                if (guess.Explain(rest => Explain(rest, limit)) is { } built && (best is null || built.Nodes <= best.Nodes))
                {
                    best = Better(best, Checked(built, lines));
                }
            }
        }

        _known[key] = best;
        return best;
    }

    private static Pattern? Better(Pattern? one, Pattern? other) =>
        one is null ? other : other is null ? one : Compare(other, one) < 0 ? other : one;

    private static int Compare(Pattern a, Pattern b) =>
        a.Nodes != b.Nodes ? a.Nodes.CompareTo(b.Nodes) : a.Text.Length != b.Text.Length ? a.Text.Length.CompareTo(b.Text.Length) : string.CompareOrdinal(a.Text, b.Text);

    /// <summary>A rule in its smallest form, if it gives exactly the lines.</summary>
    private Pattern? Checked(Pattern? pattern, Line[] lines)
    {
        if (pattern is null)
        {
            return null;
        }

        Pattern? best = null;
        foreach (var form in (ReadOnlySpan<Pattern>)[pattern, pattern.Normalize()])
        {
            if ((!ReferenceEquals(lines, goal) || IsRule(form))
                && form.TryExpand(scale, out var expansion, out _, cancellation)
                && Sound.Alike(expansion!.Lines.AsSpan(), lines))
            {
                best = Better(best, form);
            }
        }

        return best;
    }

    /// <summary>
    /// Whether a pattern says less than the lines it explains. A figure that is sung only once is a line written out in other words, and
    /// so is a sum of as many words as there are notes.
    /// </summary>
    private bool IsRule(Pattern pattern) =>
        SearchEntry.StepsIn(pattern) < _notes && (pattern.Nodes <= SmallRule || pattern.Nodes + NumbersIn(pattern) < _notes);

    private const int SmallRule = 4;

    private static int NumbersIn(Pattern pattern) => pattern.Numbers.Count + pattern.Operands.Sum(NumbersIn);
}

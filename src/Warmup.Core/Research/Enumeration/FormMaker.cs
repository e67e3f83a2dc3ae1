namespace Warmup.Research;

/// <summary>Makes a normal form from its number, by the counts of a table.</summary>
internal readonly struct FormMaker(FormTable table)
{
    /// <summary>The form of a size and an outermost symbol that has a number of forms of its kind before it.</summary>
    public Pattern Make(int size, int symbol, Int128 rank)
    {
        if (table.IsPrimitive(symbol))
        {
            return table.Words.Primitives[symbol];
        }

        if (table.CombinatorAt(symbol) is { } combinator)
        {
            var inner = 0;
            for (; !table.Inside[symbol, inner] || rank >= table.Counts[size - 1, inner]; inner++)
            {
                rank -= table.Inside[symbol, inner] ? table.Counts[size - 1, inner] : 0;
            }

            return combinator.Around(Make(size - 1, inner, rank));
        }

        return symbol == table.SumSymbol
            ? Pattern.Sum([.. MakeRow(size - 1, null, rank, false)])
            : MakePair(size, table.ConnectiveOf(symbol), rank);
    }

    private Pattern MakePair(int size, int connective, Int128 rank)
    {
        for (var first = 1; ; first++)
        {
            for (var a = 0; a < table.Symbols; a++)
            {
                var partners = table.Partners(size - 1 - first, connective, a);
                var block = table.Counts[first, a] * partners;
                if (rank >= block)
                {
                    rank -= block;
                    continue;
                }

                var one = Make(first, a, rank / partners);
                rank %= partners;
                var b = 0;
                for (; !table.Between[connective, a, b] || rank >= table.Counts[size - 1 - first, b]; b++)
                {
                    rank -= table.Between[connective, a, b] ? table.Counts[size - 1 - first, b] : 0;
                }

                return table.Words.Connectives[connective].Build(new WordParts(one, default, Make(size - 1 - first, b, rank)));
            }
        }
    }

    /// <summary>The parts of a sum: by the size of the first part and its word, one part alone before more.</summary>
    private List<Pattern> MakeRow(int size, int? before, Int128 rank, bool oneIsEnough)
    {
        for (var first = oneIsEnough ? size : size - 1; first >= 1; first--)
        {
            for (var a = 0; a < table.SumSymbol; a++)
            {
                if (before is { } left && !table.Beside[left, a])
                {
                    continue;
                }

                var more = first == size ? Int128.One : table.Following(size - first, a);
                var block = table.Counts[first, a] * more;
                if (rank >= block)
                {
                    rank -= block;
                    continue;
                }

                var part = Make(first, a, rank / more);
                return first == size ? [part] : [part, .. MakeRow(size - first, a, rank % more, true)];
            }
        }

        throw new InvalidOperationException("the table of counts does not agree with itself");
    }
}

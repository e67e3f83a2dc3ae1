namespace Warmup.Research;

/// <summary>The number of a normal form, by the counts of a table.</summary>
internal readonly struct FormRank(FormTable table)
{
    /// <summary>The number of patterns of the same size and outermost word before one.</summary>
    public Int128? Rank(Pattern pattern) => pattern switch
    {
        UnaryPattern unary => RankInside(unary),
        BinaryPattern binary => RankPair(binary),
        SumPattern sum => RankRow(sum.Parts.AsSpan(), sum.Nodes - 1, null, false),
        _ => 0,
    };

    private Int128? RankInside(UnaryPattern unary)
    {
        if (table.SymbolOf(unary) is not { } symbol || table.SymbolOf(unary.Inner) is not { } inside || !table.Inside[symbol, inside] || Rank(unary.Inner) is not { } rank)
        {
            return null;
        }

        for (var inner = 0; inner < inside; inner++)
        {
            rank += table.Inside[symbol, inner] ? table.Counts[unary.Nodes - 1, inner] : 0;
        }

        return rank;
    }

    private Int128? RankPair(BinaryPattern pair)
    {
        if (table.SymbolOf(pair) is not { } symbol || table.SymbolOf(pair.First) is not { } one || table.SymbolOf(pair.Second) is not { } other
            || Rank(pair.First) is not { } first || Rank(pair.Second) is not { } second)
        {
            return null;
        }

        var connective = table.ConnectiveOf(symbol);
        if (!table.Between[connective, one, other])
        {
            return null;
        }

        for (var b = 0; b < other; b++)
        {
            second += table.Between[connective, one, b] ? table.Counts[pair.Second.Nodes, b] : 0;
        }

        var rank = (first * table.Partners(pair.Second.Nodes, connective, one)) + second;
        for (var size = 1; size <= pair.First.Nodes; size++)
        {
            for (var a = 0; a < (size == pair.First.Nodes ? one : table.Symbols); a++)
            {
                rank += table.Counts[size, a] * table.Partners(pair.Nodes - 1 - size, connective, a);
            }
        }

        return rank;
    }

    private Int128? RankRow(ReadOnlySpan<Pattern> parts, int size, int? before, bool oneIsEnough)
    {
        var part = parts[0];
        if (table.SymbolOf(part) is not { } symbol || (before is { } left && !table.Beside[left, symbol]) || Rank(part) is not { } rank)
        {
            return null;
        }

        if (parts.Length > 1)
        {
            if (RankRow(parts[1..], size - part.Nodes, symbol, true) is not { } rest)
            {
                return null;
            }

            rank = (rank * table.Following(size - part.Nodes, symbol)) + rest;
        }

        for (var first = oneIsEnough ? size : size - 1; first >= part.Nodes; first--)
        {
            for (var a = 0; a < (first == part.Nodes ? symbol : table.SumSymbol); a++)
            {
                if (before is null || table.Beside[before.Value, a])
                {
                    rank += table.Counts[first, a] * (first == size ? Int128.One : table.Following(size - first, a));
                }
            }
        }

        return rank;
    }
}

namespace Warmup.Research;

/// <summary>
/// All patterns up to a size over a choice of words, each once under the laws that hold in all scales, addressed by index.
/// </summary>
/// <remarks>
/// <para>What is counted are normal forms (<see cref="Pattern.Normalize"/>) whose words all belong to the choice; size is the number of
/// parts (<see cref="Pattern.Nodes"/>). Indexes go by size, then by the order of the words, so a range of indexes can be worked on by any
/// number of machines. An index becomes its pattern from a table of counts, without the patterns before it.</para>
/// <para>Immutable, safe to share between threads.</para>
/// </remarks>
public sealed class PatternEnumeration
{
    /// <summary>The largest size.</summary>
    public const int LargestSize = 12;

    private readonly PatternVocabulary _words;
    private readonly ValueList<UnaryPattern> _unary;
    private readonly int _primitives;
    private readonly int _combinators;
    private readonly int _connectives;
    private readonly int _symbols;

    // Which word may stand directly inside a combinator, beside another in a sum, and beside another in an interleaving.
    private readonly bool[,] _inside;
    private readonly bool[,] _beside;
    private readonly bool[,,] _between;

    // By size and outermost word: the patterns, and the rows of parts of a sum that begin with such a pattern.
    private readonly Int128[,] _counts;
    private readonly Int128[,] _rows;

    /// <summary>Makes the table of counts.</summary>
    /// <param name="words">The words.</param>
    /// <param name="largestSize">The largest size, 1 to 12.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside its range.</exception>
    public PatternEnumeration(PatternVocabulary words, int largestSize)
    {
        Size = Require.InRange(largestSize, 1, LargestSize);
        _words = words;
        _primitives = words.Primitives.Count;

        // A reach that stands on an up-down is a word of its own: the laws let less stand on it.
        var hasUpDown = words.Combinators.IndexOf(c => c is UpDownPattern) >= 0;
        _unary = [.. words.Combinators, .. words.Combinators.Where(c => hasUpDown && c is SpanPattern).Select(c => (UnaryPattern)c.Around(Pattern.Run.UpDown()))];
        _combinators = _unary.Count;
        _connectives = words.Connectives.Count;
        _symbols = _primitives + _combinators + _connectives + 1;
        _inside = new bool[_symbols, _symbols];
        _beside = new bool[_symbols, _symbols];
        _between = new bool[_connectives, _symbols, _symbols];
        _counts = new Int128[Size + 1, _symbols];
        _rows = new Int128[Size + 1, _symbols];
        Allow();
        for (var size = 1; size <= Size; size++)
        {
            Fill(size);
        }
    }

    /// <summary>The largest size.</summary>
    public int Size { get; }

    /// <summary>The number of patterns of all sizes.</summary>
    public Int128 Count
    {
        get
        {
            Int128 count = 0;
            for (var size = 1; size <= Size; size++)
            {
                count += CountOfSize(size);
            }

            return count;
        }
    }

    /// <summary>The pattern at an index.</summary>
    /// <param name="index">0 to <see cref="Count"/> - 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The index lies outside its range.</exception>
    public Pattern this[Int128 index]
    {
        get
        {
            var rest = index;
            for (var size = 1; size <= Size && rest >= 0; size++)
            {
                for (var symbol = 0; symbol < _symbols; symbol++)
                {
                    if (rest < _counts[size, symbol])
                    {
                        return Make(size, symbol, rest);
                    }

                    rest -= _counts[size, symbol];
                }
            }

            throw new ArgumentOutOfRangeException(nameof(index), index, $"the index must be between 0 and {Count - 1}, not {index}");
        }
    }

    /// <summary>The number of patterns of one size.</summary>
    /// <param name="size">1 to <see cref="Size"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside its range.</exception>
    public Int128 CountOfSize(int size)
    {
        Require.InRange(size, 1, Size);
        Int128 count = 0;
        for (var symbol = 0; symbol < _symbols; symbol++)
        {
            count += _counts[size, symbol];
        }

        return count;
    }

    /// <summary>The patterns of a range of indexes, one at a time.</summary>
    /// <param name="first">The first index.</param>
    /// <param name="count">How many; fewer where the indexes end.</param>
    public IEnumerable<Pattern> Range(Int128 first, Int128 count)
    {
        var end = Int128.Min(Count, first + count);
        for (var index = first; index < end; index++)
        {
            yield return this[index];
        }
    }

    /// <summary>The index of a pattern; <see langword="null"/> where it is too large, no normal form, or holds a word outside the choice.</summary>
    /// <param name="pattern">The pattern.</param>
    public Int128? IndexOf(Pattern pattern)
    {
        if (pattern.Nodes > Size || SymbolOf(pattern) is not { } symbol || Rank(pattern) is not { } rank)
        {
            return null;
        }

        for (var size = 1; size < pattern.Nodes; size++)
        {
            rank += CountOfSize(size);
        }

        for (var before = 0; before < symbol; before++)
        {
            rank += _counts[pattern.Nodes, before];
        }

        return rank;
    }

    private int SumSymbol => _symbols - 1;

    private UnaryPattern? CombinatorAt(int symbol) =>
        symbol >= _primitives && symbol < _primitives + _combinators ? _unary[symbol - _primitives] : null;

    private void Allow()
    {
        for (var a = 0; a < _symbols; a++)
        {
            for (var b = 0; b < _symbols; b++)
            {
                var left = CombinatorAt(a);
                var right = CombinatorAt(b);
                _inside[a, b] = left is null
                    || (right is null ? !left.IsStuck : NormalForm.Step(left, right, out _, out _) == Rewrite.Stay && StandsOn(left, right));
                var same = left is not null && right is not null && left.Operation == right.Operation;
                _beside[a, b] = b != SumSymbol && !(same && left!.DistributesOverSums);
                for (var c = 0; c < _connectives; c++)
                {
                    _between[c, a, b] = !(same && left!.DistributesOver(_words.Connectives[c]));
                }
            }
        }
    }

    private static bool StandsOn(UnaryPattern outer, UnaryPattern inner) => outer is not SpanPattern || outer.IsStuck == inner is UpDownPattern;

    private void Fill(int size)
    {
        for (var symbol = 0; symbol < _symbols; symbol++)
        {
            _counts[size, symbol] = symbol < _primitives
                ? size == 1 ? 1 : 0
                : symbol < _primitives + _combinators
                    ? Total(size - 1, symbol, _inside, _counts)
                    : symbol < SumSymbol ? CountPairs(size, symbol - _primitives - _combinators) : _words.HasSum ? CountSums(size) : 0;
        }

        for (var symbol = 0; symbol < SumSymbol; symbol++)
        {
            _rows[size, symbol] = _counts[size, symbol];
            for (var first = 1; first < size; first++)
            {
                _rows[size, symbol] += _counts[first, symbol] * Total(size - first, symbol, _beside, _rows);
            }
        }
    }

    private Int128 Total(int size, int symbol, bool[,] allowed, Int128[,] counts)
    {
        Int128 total = 0;
        for (var inner = 0; size > 0 && inner < _symbols; inner++)
        {
            total += allowed[symbol, inner] ? counts[size, inner] : 0;
        }

        return total;
    }

    private Int128 CountPairs(int size, int connective)
    {
        Int128 total = 0;
        for (var first = 1; first < size - 1; first++)
        {
            for (var a = 0; a < _symbols; a++)
            {
                total += _counts[first, a] * Partners(size - 1 - first, connective, a);
            }
        }

        return total;
    }

    private Int128 Partners(int size, int connective, int symbol)
    {
        Int128 total = 0;
        for (var b = 0; b < _symbols; b++)
        {
            total += _between[connective, symbol, b] ? _counts[size, b] : 0;
        }

        return total;
    }

    private Int128 CountSums(int size)
    {
        Int128 total = 0;
        for (var first = 1; first < size - 1; first++)
        {
            for (var a = 0; a < SumSymbol; a++)
            {
                total += _counts[first, a] * Total(size - 1 - first, a, _beside, _rows);
            }
        }

        return total;
    }

    private Pattern Make(int size, int symbol, Int128 rank)
    {
        if (symbol < _primitives)
        {
            return _words.Primitives[symbol];
        }

        if (CombinatorAt(symbol) is { } combinator)
        {
            var inner = 0;
            for (; !_inside[symbol, inner] || rank >= _counts[size - 1, inner]; inner++)
            {
                rank -= _inside[symbol, inner] ? _counts[size - 1, inner] : 0;
            }

            return combinator.Around(Make(size - 1, inner, rank));
        }

        return symbol == SumSymbol
            ? Pattern.Sum([.. MakeRow(size - 1, null, rank, false)])
            : MakePair(size, symbol - _primitives - _combinators, rank);
    }

    private Pattern MakePair(int size, int connective, Int128 rank)
    {
        for (var first = 1; ; first++)
        {
            for (var a = 0; a < _symbols; a++)
            {
                var partners = Partners(size - 1 - first, connective, a);
                var block = _counts[first, a] * partners;
                if (rank >= block)
                {
                    rank -= block;
                    continue;
                }

                var one = Make(first, a, rank / partners);
                rank %= partners;
                var b = 0;
                for (; !_between[connective, a, b] || rank >= _counts[size - 1 - first, b]; b++)
                {
                    rank -= _between[connective, a, b] ? _counts[size - 1 - first, b] : 0;
                }

                return _words.Connectives[connective].Build(new WordParts(one, default, Make(size - 1 - first, b, rank)));
            }
        }
    }

    /// <summary>The parts of a sum: by the size of the first part and its word, one part alone before more.</summary>
    private List<Pattern> MakeRow(int size, int? before, Int128 rank, bool oneIsEnough)
    {
        for (var first = oneIsEnough ? size : size - 1; first >= 1; first--)
        {
            for (var a = 0; a < SumSymbol; a++)
            {
                if (before is { } left && !_beside[left, a])
                {
                    continue;
                }

                var more = first == size ? Int128.One : Total(size - first, a, _beside, _rows);
                var block = _counts[first, a] * more;
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

    private int? SymbolOf(Pattern pattern)
    {
        var at = pattern switch
        {
            UnaryPattern unary => _unary.IndexOf(c => c.Operation == unary.Operation && c.IsStuck == unary.IsStuck) is var i and >= 0 ? _primitives + i : -1,
            BinaryPattern binary => _words.Connectives.IndexOf(c => c == binary.Connective) is var i and >= 0 ? _primitives + _combinators + i : -1,
            SumPattern => _words.HasSum ? SumSymbol : -1,
            _ => _words.Primitives.IndexOf(p => p == pattern),
        };
        return at < 0 ? null : at;
    }

    /// <summary>The number of patterns of the same size and outermost word before one.</summary>
    private Int128? Rank(Pattern pattern) => pattern switch
    {
        UnaryPattern unary => RankInside(unary),
        BinaryPattern binary => RankPair(binary),
        SumPattern sum => RankRow(sum.Parts.AsSpan(), sum.Nodes - 1, null, false),
        _ => 0,
    };

    private Int128? RankInside(UnaryPattern unary)
    {
        if (SymbolOf(unary) is not { } symbol || SymbolOf(unary.Inner) is not { } inside || !_inside[symbol, inside] || Rank(unary.Inner) is not { } rank)
        {
            return null;
        }

        for (var inner = 0; inner < inside; inner++)
        {
            rank += _inside[symbol, inner] ? _counts[unary.Nodes - 1, inner] : 0;
        }

        return rank;
    }

    private Int128? RankPair(BinaryPattern pair)
    {
        if (SymbolOf(pair) is not { } symbol || SymbolOf(pair.First) is not { } one || SymbolOf(pair.Second) is not { } other
            || Rank(pair.First) is not { } first || Rank(pair.Second) is not { } second)
        {
            return null;
        }

        var connective = symbol - _primitives - _combinators;
        if (!_between[connective, one, other])
        {
            return null;
        }

        for (var b = 0; b < other; b++)
        {
            second += _between[connective, one, b] ? _counts[pair.Second.Nodes, b] : 0;
        }

        var rank = (first * Partners(pair.Second.Nodes, connective, one)) + second;
        for (var size = 1; size <= pair.First.Nodes; size++)
        {
            for (var a = 0; a < (size == pair.First.Nodes ? one : _symbols); a++)
            {
                rank += _counts[size, a] * Partners(pair.Nodes - 1 - size, connective, a);
            }
        }

        return rank;
    }

    private Int128? RankRow(ReadOnlySpan<Pattern> parts, int size, int? before, bool oneIsEnough)
    {
        var part = parts[0];
        if (SymbolOf(part) is not { } symbol || (before is { } left && !_beside[left, symbol]) || Rank(part) is not { } rank)
        {
            return null;
        }

        if (parts.Length > 1)
        {
            if (RankRow(parts[1..], size - part.Nodes, symbol, true) is not { } rest)
            {
                return null;
            }

            rank = (rank * Total(size - part.Nodes, symbol, _beside, _rows)) + rest;
        }

        for (var first = oneIsEnough ? size : size - 1; first >= part.Nodes; first--)
        {
            for (var a = 0; a < (first == part.Nodes ? symbol : SumSymbol); a++)
            {
                if (before is null || _beside[before.Value, a])
                {
                    rank += _counts[first, a] * (first == size ? Int128.One : Total(size - first, a, _beside, _rows));
                }
            }
        }

        return rank;
    }
}

namespace Warmup.Research;

/// <summary>
/// The grammar of the normal forms over a choice of words, and how many forms it has of each size and outermost word.
/// </summary>
/// <remarks>
/// Each word is a symbol: the primitives first, then the combinators, the words of two patterns, and the sum. A span that stands on an
/// up-down is a symbol of its own, since the laws let less stand on it.
/// </remarks>
internal sealed class FormTable
{
    private readonly int _firstConnective;

    // What a form is found by, again and again: the partners of a symbol by size and word, and the rows that may follow it by size.
    private readonly Int128[,,] _partners;
    private readonly Int128[,] _following;

    public FormTable(PatternVocabulary words, int size)
    {
        Words = words;
        var hasUpDown = words.Combinators.IndexOf(c => c is UpDownPattern) >= 0;
        Combinators = [.. words.Combinators, .. words.Combinators.Where(c => hasUpDown && c is SpanPattern).Select(c => (UnaryPattern)c.Around(Pattern.Run.UpDown()))];
        _firstConnective = words.Primitives.Count + Combinators.Count;
        SumSymbol = _firstConnective + words.Connectives.Count;
        Symbols = SumSymbol + 1;
        Inside = new bool[Symbols, Symbols];
        Beside = new bool[Symbols, Symbols];
        Between = new bool[words.Connectives.Count, Symbols, Symbols];
        Counts = new Int128[size + 1, Symbols];
        Rows = new Int128[size + 1, Symbols];
        _partners = new Int128[size + 1, words.Connectives.Count, Symbols];
        _following = new Int128[size + 1, Symbols];
        Allow();
        for (var s = 1; s <= size; s++)
        {
            Fill(s);
        }
    }

    public PatternVocabulary Words { get; }

    /// <summary>The combinators, each around something that stands for any pattern.</summary>
    public ValueList<UnaryPattern> Combinators { get; }

    public int SumSymbol { get; }

    public int Symbols { get; }

    /// <summary>Whether the second symbol may stand directly inside the first, a combinator.</summary>
    public bool[,] Inside { get; }

    /// <summary>Whether the second symbol may follow the first in a sum.</summary>
    public bool[,] Beside { get; }

    /// <summary>By word of two patterns: whether the two symbols may stand on its two sides.</summary>
    public bool[,,] Between { get; }

    /// <summary>The forms by size and outermost symbol.</summary>
    public Int128[,] Counts { get; }

    /// <summary>The rows of a sum's parts by their size and the symbol of the first part.</summary>
    public Int128[,] Rows { get; }

    public bool IsPrimitive(int symbol) => symbol < Words.Primitives.Count;

    public UnaryPattern? CombinatorAt(int symbol) =>
        symbol >= Words.Primitives.Count && symbol < _firstConnective ? Combinators[symbol - Words.Primitives.Count] : null;

    /// <summary>The number of a word of two patterns among its kind.</summary>
    public int ConnectiveOf(int symbol) => symbol - _firstConnective;

    /// <summary>The symbol of a pattern's outermost word; <see langword="null"/> where the choice does not have it.</summary>
    public int? SymbolOf(Pattern pattern)
    {
        var at = pattern switch
        {
            UnaryPattern unary => After(Words.Primitives.Count, Combinators.IndexOf(c => c.Operation == unary.Operation && c.IsStuck == unary.IsStuck)),
            BinaryPattern binary => After(_firstConnective, Words.Connectives.IndexOf(c => c == binary.Connective)),
            SumPattern => Words.HasSum ? SumSymbol : -1,
            _ => Words.Primitives.IndexOf(p => p == pattern),
        };
        return at < 0 ? null : at;

        static int After(int first, int index) => index < 0 ? -1 : first + index;
    }

    /// <summary>The rows of a size, none or more, that may follow a symbol in a sum.</summary>
    public Int128 Following(int size, int symbol) => _following[size, symbol];

    /// <summary>The forms of a size that may stand on the other side of a symbol.</summary>
    public Int128 Partners(int size, int connective, int symbol) => _partners[size, connective, symbol];

    private void Allow()
    {
        for (var a = 0; a < Symbols; a++)
        {
            for (var b = 0; b < Symbols; b++)
            {
                var left = CombinatorAt(a);
                var right = CombinatorAt(b);
                Inside[a, b] = left is null
                    || (right is null ? !left.IsStuck : NormalForm.Step(left, right, out _, out _) == Rewrite.Stay && StandsOn(left, right));
                var same = left is not null && right is not null && left.Operation == right.Operation;
                Beside[a, b] = b != SumSymbol && !(same && left!.DistributesOverSums);
                for (var c = 0; c < Words.Connectives.Count; c++)
                {
                    Between[c, a, b] = !(same && left!.DistributesOver(Words.Connectives[c]));
                }
            }
        }
    }

    // A span stands on an up-down only as the symbol of its own, and that one on nothing else.
    private static bool StandsOn(UnaryPattern outer, UnaryPattern inner) => outer is not SpanPattern || outer.IsStuck == inner is UpDownPattern;

    private void Fill(int size)
    {
        for (var symbol = 0; symbol < Symbols; symbol++)
        {
            Counts[size, symbol] = IsPrimitive(symbol)
                ? size == 1 ? 1 : 0
                : symbol < _firstConnective
                    ? Total(size - 1, other => Inside[symbol, other], Counts)
                    : symbol < SumSymbol ? CountPairs(size, ConnectiveOf(symbol)) : Words.HasSum ? CountSums(size) : 0;
        }

        for (var symbol = 0; symbol < SumSymbol; symbol++)
        {
            Rows[size, symbol] = Counts[size, symbol];
            for (var first = 1; first < size; first++)
            {
                Rows[size, symbol] += Counts[first, symbol] * Following(size - first, symbol);
            }
        }

        for (var symbol = 0; symbol < Symbols; symbol++)
        {
            _following[size, symbol] = Total(size, other => Beside[symbol, other], Rows);
            for (var connective = 0; connective < Words.Connectives.Count; connective++)
            {
                _partners[size, connective, symbol] = Total(size, other => Between[connective, symbol, other], Counts);
            }
        }
    }

    /// <summary>The forms, or rows, of a size whose outermost symbol is allowed.</summary>
    private Int128 Total(int size, Func<int, bool> isAllowed, Int128[,] counts)
    {
        Int128 total = 0;
        for (var symbol = 0; size > 0 && symbol < Symbols; symbol++)
        {
            total += isAllowed(symbol) ? counts[size, symbol] : 0;
        }

        return total;
    }

    private Int128 CountPairs(int size, int connective)
    {
        Int128 total = 0;
        for (var first = 1; first < size - 1; first++)
        {
            for (var a = 0; a < Symbols; a++)
            {
                total += Counts[first, a] * Partners(size - 1 - first, connective, a);
            }
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
                total += Counts[first, a] * Following(size - 1 - first, a);
            }
        }

        return total;
    }
}

namespace Warmup.Research;

/// <summary>
/// All patterns up to a size over a choice of words, each once under the laws that hold in all scales, addressed by index.
/// </summary>
/// <remarks>
/// <para>What is counted are normal forms (<see cref="Pattern.Normalize"/>) whose words all belong to the choice; size is the number of
/// parts (<see cref="Pattern.Nodes"/>). Indexes go by size, then by the order of the words, so any number of machines can share them out
/// in ranges. An index becomes its pattern from a table of counts, without the patterns before it.</para>
/// <para>Immutable, safe to share between threads.</para>
/// </remarks>
public sealed class PatternEnumeration
{
    internal const int Largest = 12;

    private readonly FormTable _table;

    /// <summary>Makes the table of counts.</summary>
    /// <param name="words">The words.</param>
    /// <param name="largestSize">The largest size, 1 to 12.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside its range.</exception>
    public PatternEnumeration(PatternVocabulary words, int largestSize)
    {
        ArgumentNullException.ThrowIfNull(words);
        Size = Require.InRange(largestSize, 1, Largest);
        _table = new FormTable(words, Size);
    }

    /// <summary>The largest size that can be asked for: 12 (the project's own setting).</summary>
    public static int LargestSize => Largest;

    /// <summary>The largest size of this enumeration.</summary>
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
                for (var symbol = 0; symbol < _table.Symbols; symbol++)
                {
                    if (rest < _table.Counts[size, symbol])
                    {
                        return new FormMaker(_table).Make(size, symbol, rest);
                    }

                    rest -= _table.Counts[size, symbol];
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
        for (var symbol = 0; symbol < _table.Symbols; symbol++)
        {
            count += _table.Counts[size, symbol];
        }

        return count;
    }

    /// <summary>The patterns of a range of indexes, made one at a time as they are read.</summary>
    /// <param name="first">The first index, at least 0.</param>
    /// <param name="count">The number of patterns, at least 0; fewer come where the indexes end.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative.</exception>
    public IEnumerable<Pattern> Range(Int128 first, Int128 count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var all = Count;
        return Walk(first, first >= all ? first : first + Int128.Min(count, all - first));
    }

    /// <summary>
    /// A random sample of indexes in rising order, each once: the indexes are cut into as many equal parts as are to be drawn (to within one
    /// index), and one index is drawn from each part. The same seed draws the same indexes everywhere; nothing is kept while they are read.
    /// </summary>
    /// <param name="count">How many indexes, at least 1; all of them where there are no more.</param>
    /// <param name="seed">Any number.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1, or a part would have more than 2^63 - 1 indexes.</exception>
    public IEnumerable<Int128> Sample(int count, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var all = Count;
        return all / count < long.MaxValue
            ? Drawn(all, Int128.Min(count, all), new SeededSource(seed))
            : throw new ArgumentOutOfRangeException(nameof(count), count, $"a sample of {all} patterns must draw at least {(all / long.MaxValue) + 1}, not {count}");
    }

    /// <summary>How <see cref="Sample"/> draws, for whoever notes where a sample came from.</summary>
    public static string SampleMethod => $"one index of each of as many equal parts, {SeededSource.Name}";

    private static IEnumerable<Int128> Drawn(Int128 all, Int128 parts, SeededSource source)
    {
        for (Int128 part = 0; part < parts; part++)
        {
            var first = all * part / parts;
            yield return first + source.Below((long)((all * (part + 1) / parts) - first));
        }
    }

    /// <summary>The index of a pattern; <see langword="null"/> where it is too large, not a normal form, or has a word outside the choice.</summary>
    /// <param name="pattern">The pattern.</param>
    public Int128? IndexOf(Pattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        if (pattern.Nodes > Size || _table.SymbolOf(pattern) is not { } symbol || new FormRank(_table).Rank(pattern) is not { } rank)
        {
            return null;
        }

        for (var size = 1; size < pattern.Nodes; size++)
        {
            rank += CountOfSize(size);
        }

        for (var before = 0; before < symbol; before++)
        {
            rank += _table.Counts[pattern.Nodes, before];
        }

        return rank;
    }

    private IEnumerable<Pattern> Walk(Int128 first, Int128 end)
    {
        for (var index = first; index < end; index++)
        {
            yield return this[index];
        }
    }
}

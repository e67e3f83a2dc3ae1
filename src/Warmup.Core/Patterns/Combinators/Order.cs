using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most lines that <see cref="Order"/> names.</summary>
    public const int MostOrdered = 64;

    /// <summary>The first lines in another order, the rest behind them as they were.</summary>
    /// <param name="numbers">A permutation of 1 to n, n at most 64. Numbers of lines that the pattern does not have are passed over.</param>
    /// <exception cref="ArgumentException">The numbers are no permutation, or too many.</exception>
    public Pattern Order(params ReadOnlySpan<int> numbers) => new OrderPattern(this, ValueList.Create(numbers));
}

internal sealed record OrderPattern : UnaryPattern
{
    public OrderPattern(Pattern inner, ValueList<int> numbers)
        : base(inner)
    {
        if (numbers.Count is 0 or > MostOrdered || !((IEnumerable<int>)numbers).Order().SequenceEqual(Enumerable.Range(1, numbers.Count)))
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"an order must hold each number from 1 to its own length, at most {MostOrdered}, once; not {TextError.Quote(string.Join(' ', numbers))}"),
                nameof(numbers));
        }

        Sequence = numbers;
    }

    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "order", "the first lines in another order, such as order(2 1 3)", 1, MostOrdered, 1, MostOrdered, (p, n) => new OrderPattern(p, n))
        with { Said = "the first lines follow in the order {*}" };

    public ValueList<int> Sequence { get; }

    internal override Operation Operation => new(WordEntry, Sequence, default);

    internal override LawClass Class => LawClass.LineOrder;

    internal override bool IsIdentity
    {
        get
        {
            for (var i = 0; i < Sequence.Count; i++)
            {
                if (Sequence[i] != i + 1)
                {
                    return false;
                }
            }

            return true;
        }
    }

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        var ordered = new List<Line>(lines.Length);
        foreach (var number in Sequence)
        {
            if (number <= lines.Length)
            {
                ordered.Add(lines[number - 1]);
            }
        }

        ordered.AddRange(lines.Skip(Sequence.Count));
        return [.. ordered];
    }
}

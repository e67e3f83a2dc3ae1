using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    internal const int MostOrdered = 64;

    /// <summary>The first lines in another order, followed by the other lines as they were.</summary>
    /// <param name="numbers">
    /// The numbers from 1 to n in the wanted order, n at most 64. Numbers of lines that the pattern does not have are skipped.
    /// </param>
    /// <exception cref="ArgumentException">The numbers are not those from 1 to n, or there are too many.</exception>
    public Pattern Order(params ReadOnlySpan<int> numbers) => new OrderPattern(this, ValueList.Create(numbers));
}

internal sealed record OrderPattern : UnaryPattern
{
    public OrderPattern(Pattern inner, ValueList<int> numbers)
        : base(inner) => Sequence = numbers.Count is > 0 and <= MostOrdered && Fault(numbers) is not { } fault
            ? numbers
            : throw new ArgumentException(Fault(numbers) ?? WordEntry.Fault(numbers), nameof(numbers));

    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "order",
        "the first lines in another order, such as order(2 1 3)",
        new NumberBounds(1, MostOrdered, 1, MostOrdered),
        n => n.Count == 1 ? "the lines stay in their order" : $"the first {English.Count(n.Count, "line")} are sung in the order {English.List(n)}",
        (p, n) => new OrderPattern(p, n),
        Fault);

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

    /// <summary>Whether some number from 1 to the count is missing.</summary>
    private static string? Fault(ValueList<int> numbers)
    {
        var found = new bool[numbers.Count];
        foreach (var number in numbers)
        {
            if (number >= 1 && number <= found.Length)
            {
                found[number - 1] = true;
            }
        }

        return Array.TrueForAll(found, f => f) ? null : string.Create(
            CultureInfo.InvariantCulture,
            $"an order of {English.Count(numbers.Count, "number")} must hold each number from 1 to {numbers.Count} once, not {TextError.Quote(string.Join(' ', numbers.ConvertAll(n => n.ToString(CultureInfo.InvariantCulture))))}");
    }
}

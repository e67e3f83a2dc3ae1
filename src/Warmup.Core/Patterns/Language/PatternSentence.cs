using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// What is sung, in plain English: <c>seven lines; each line starts on the tonic and adds one note until the upper tonic is reached;
    /// every line is then sung backwards</c>.
    /// </summary>
    /// <param name="scale">The scale whose lines are counted; without one, or where it refuses the pattern, they are not.</param>
    /// <returns>Clauses in the order in which the words are applied, separated by semicolons; no full stop.</returns>
    public string Describe(Scale? scale = null)
    {
        var rule = PatternSentence.Of(this);
        return scale is not null && TryExpand(scale, out var expansion, out _)
            ? $"{PatternSentence.Count(expansion!.Lines.Count, "line")}; {rule}"
            : rule;
    }
}

/// <summary>Says a pattern in plain English.</summary>
internal static class PatternSentence
{
    private static readonly string[] Numbers =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    public static string Of(Pattern pattern) => pattern switch
    {
        PrimitivePattern primitive => Clause(primitive.Operation),
        WrittenPattern written => $"the written {(written.Written.Count == 1 ? "line is" : "lines are")} {string.Join(" / ", written.WrittenLines)}",
        UnaryPattern unary => $"{Operand(unary.Inner)}; {Clause(unary.Operation)}",
        BinaryPattern binary => $"{Clause(new Operation(binary.Connective, default, default))} of two patterns: ({Of(binary.First)}) and ({Of(binary.Second)})",
        SumPattern sum => string.Join("; then ", sum.Parts.ConvertAll(Part)),
        _ => pattern.ToString(),
    };

    public static string Count(int count, string what) => string.Create(
        CultureInfo.InvariantCulture, $"{(count < Numbers.Length ? Numbers[count] : count.ToString(CultureInfo.InvariantCulture))} {what}{(count == 1 ? string.Empty : "s")}");

    // A clause about the whole must not read as one about the last part.
    private static string Operand(Pattern pattern) => pattern is SumPattern or BinaryPattern ? $"of all that follows in parentheses ({Of(pattern)})" : Of(pattern);

    private static string Part(Pattern part) => part is PrimitivePattern or WrittenPattern ? Of(part) : $"({Of(part)})";

    private static string Clause(Operation operation)
    {
        var numbers = operation.Numbers.ConvertAll(n => n.ToString(CultureInfo.InvariantCulture));
        var all = operation.Texts.IsEmpty ? string.Join(' ', numbers) : string.Join(", ", operation.Texts);
        var said = operation.Word.Said.Replace("{*}", all, StringComparison.Ordinal).Replace("{/}", string.Join('/', numbers), StringComparison.Ordinal);
        for (var i = 0; i < numbers.Count; i++)
        {
            said = said.Replace($"{{{i}}}", numbers[i], StringComparison.Ordinal);
        }

        // "1 notes" and its like.
        return numbers.Count == 1 && operation.Numbers[0] == 1
            ? said.Replace(" 1 lines are", " line is", StringComparison.Ordinal).Replace(" 1 notes", " 1 note", StringComparison.Ordinal)
                .Replace(" 1 steps", " 1 step", StringComparison.Ordinal).Replace(" 1 units", " 1 unit", StringComparison.Ordinal)
                .Replace(" 1 times", " once", StringComparison.Ordinal).Replace(" 1 places", " 1 place", StringComparison.Ordinal)
            : said;
    }
}

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// What is sung, in plain English: <c>seven lines; each line starts on the tonic and adds one note until the upper tonic is reached;
    /// every line is then sung backwards</c>.
    /// </summary>
    /// <param name="scale">The scale whose lines are counted. Without one, or where it refuses the pattern, no number of lines is given.</param>
    /// <returns>Clauses in the order in which the words are applied, separated by semicolons; no full stop.</returns>
    public string Describe(Scale? scale = null)
    {
        var rule = PatternSentence.Of(this);
        return scale is not null && TryExpand(scale, out var expansion, out _)
            ? $"{English.Count(expansion.Lines.Count, "line")}; {rule}"
            : rule;
    }
}

/// <summary>Says a pattern in plain English.</summary>
internal static class PatternSentence
{
    public static string Of(Pattern pattern) => pattern switch
    {
        PrimitivePattern primitive => Clause(primitive.Operation),
        WrittenPattern written => $"the written {(written.Written.Count == 1 ? "line is" : "lines are")} {string.Join(" / ", written.WrittenLines)}",
        UnaryPattern unary => $"{Operand(unary.Inner)}; {Clause(unary.Operation)}",
        BinaryPattern binary => $"{Clause(new Operation(binary.Connective))}: ({Of(binary.First)}) and ({Of(binary.Second)})",
        SumPattern sum => string.Join("; then ", sum.Parts.ConvertAll(Part)),
        _ => pattern.ToString(),
    };

    // A clause about the whole must not read as one about the last part.
    private static string Operand(Pattern pattern) => pattern is SumPattern or BinaryPattern ? $"all of this together: ({Of(pattern)})" : Of(pattern);

    private static string Part(Pattern part) => part is PrimitivePattern or WrittenPattern ? Of(part) : $"({Of(part)})";

    private static string Clause(Operation operation) => operation.Word.Said(operation);
}

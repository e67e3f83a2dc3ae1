using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The patterns this one is built from, in the order in which they are written; none for a primitive and for written lines.</summary>
    public ValueList<Pattern> Operands => this switch
    {
        UnaryPattern unary => [unary.Inner],
        BinaryPattern binary => [binary.First, binary.Second],
        SumPattern sum => sum.Parts,
        _ => default,
    };

    /// <summary>The numbers of the outermost word; none for a sum and for written lines.</summary>
    public ValueList<int> Numbers => this switch
    {
        PrimitivePattern primitive => primitive.Operation.Numbers,
        UnaryPattern unary => unary.Operation.Numbers,
        _ => default,
    };

    /// <summary>The outermost word; <c>+</c> for a sum, <c>[]</c> for written lines.</summary>
    public string Word => this switch
    {
        PrimitivePattern primitive => primitive.Operation.Word.Name,
        UnaryPattern unary => unary.Operation.Word.Name,
        BinaryPattern binary => binary.Connective.Name,
        SumPattern => "+",
        _ => "[]",
    };

    /// <summary>The same outermost word with other operands and numbers.</summary>
    /// <param name="operands">As many patterns as <see cref="Operands"/>; a sum takes any number.</param>
    /// <param name="numbers">Numbers that the word takes.</param>
    /// <exception cref="ArgumentException">The counts or the numbers do not fit the word, or the result would be too large.</exception>
    public Pattern With(ValueList<Pattern> operands, ValueList<int> numbers)
    {
        foreach (var operand in operands)
        {
            ArgumentNullException.ThrowIfNull(operand, nameof(operands));
        }

        if (this is SumPattern)
        {
            return Sum(operands.AsSpan());
        }

        if (operands.Count != Operands.Count)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"'{Word}' takes {English.Count(Operands.Count, "operand")}, not {operands.Count}"), nameof(operands));
        }

        return this switch
        {
            PrimitivePattern primitive => Fitting(primitive.Operation.Word, numbers).Build(new WordParts(null, numbers)),
            UnaryPattern unary => Fitting(unary.Operation.Word, numbers).Build(new WordParts(operands[0], numbers, null, unary.Operation.Texts)),
            BinaryPattern binary => Fitting(binary.Connective, numbers).Build(new WordParts(operands[0], default, operands[1])),
            _ => this,
        };
    }

    private static PatternWord Fitting(PatternWord word, ValueList<int> numbers) =>
        word.Fault(numbers) is { } fault ? throw new ArgumentException(fault, nameof(numbers)) : word;
}

namespace Warmup;

/// <summary>The parts that a word builds its pattern from.</summary>
/// <param name="Inner">The pattern before the dot; <see langword="null"/> for a primitive.</param>
/// <param name="Numbers">The numbers in its parentheses.</param>
/// <param name="Operand">The pattern in its parentheses.</param>
/// <param name="Texts">The sung words in its parentheses.</param>
internal sealed record WordParts(Pattern? Inner, ValueList<int> Numbers = default, Pattern? Operand = null, ValueList<string> Texts = default);

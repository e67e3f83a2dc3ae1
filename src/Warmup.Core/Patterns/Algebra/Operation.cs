using System.Globalization;

namespace Warmup;

/// <summary>A combinator without its pattern: a word, its numbers and its sung words. Two are equal when they print alike.</summary>
internal readonly record struct Operation(PatternWord Word, ValueList<int> Numbers, ValueList<string> Texts)
{
    public override string ToString() => Takes(Word, Numbers, Texts);

    private static string Takes(PatternWord word, ValueList<int> numbers, ValueList<string> texts) => word.Takes switch
    {
        WordTakes.Numbers => $"{word.Name}({string.Join(' ', numbers.ConvertAll(n => n.ToString(CultureInfo.InvariantCulture)))})",
        WordTakes.Texts => $"{word.Name}({string.Join(' ', texts)})",
        _ => word.Name,
    };
}

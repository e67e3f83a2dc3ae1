using System.Globalization;

namespace Warmup;

/// <summary>A combinator without its pattern: a word, its numbers and its sung words.</summary>
internal readonly record struct Operation(PatternWord Word, ValueList<int> Numbers, ValueList<string> Texts)
{
    public Operation(PatternWord word, params int[] numbers)
        : this(word, ValueList.Adopt(numbers), default)
    {
    }

    public override string ToString() => Word.Takes switch
    {
        WordTakes.Numbers => $"{Word.Name}({string.Join(' ', Word.Shown(Numbers).ConvertAll(n => n.ToString(CultureInfo.InvariantCulture)))})",
        WordTakes.Texts => $"{Word.Name}({string.Join(' ', Texts)})",
        _ => Word.Name,
    };
}

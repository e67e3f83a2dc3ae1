using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Warmup;

/// <summary>A pattern as JSON: <c>{"schema": "urn:warmup:pattern:2", "pattern": {"word": "ends", "of": {"word": "ladder"}}}</c>.</summary>
/// <remarks>
/// A node is a word with its <c>numbers</c> or <c>texts</c>, the pattern it is applied to (<c>of</c>) and the other pattern (<c>with</c>);
/// or a <c>sum</c> of nodes; or written <c>lines</c>. The published schema, docs/schemas/pattern-2.json (JSON Schema, draft 2020-12),
/// has the words of the library.
/// </remarks>
public static class PatternFile
{
    /// <summary>The name of the format and its version.</summary>
    public const string Schema = "urn:warmup:pattern:2";

    /// <summary>The largest file that is read, in bytes (the project's own setting).</summary>
    internal const int LargestBytes = 1_000_000;

    /// <summary>Reads a pattern in the library's own words.</summary>
    /// <param name="json">The file's text in UTF-8, at most 1,000,000 bytes.</param>
    /// <exception cref="WarmupFormatException">The text is not a pattern: the error names the place, the value and the fix.</exception>
    public static Pattern Read(ReadOnlySpan<byte> json) => Read(json, PatternLanguage.Standard);

    /// <summary>Reads a pattern in the words of a language.</summary>
    /// <param name="json">The file's text in UTF-8, at most 1,000,000 bytes.</param>
    /// <param name="language">The library's words, and those that a program has added.</param>
    /// <exception cref="WarmupFormatException">The text is not a pattern: the error names the place, the value and the fix.</exception>
    public static Pattern Read(ReadOnlySpan<byte> json, PatternLanguage language)
    {
        ArgumentNullException.ThrowIfNull(language);
        if (json.Length > LargestBytes)
        {
            throw TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a pattern must be at most {LargestBytes} bytes long, not {json.Length}")).ToException();
        }

        json = JsonText.WithoutMark(json);
        return new PatternJsonBuilder(json, language).Build(PatternJsonReader.Read(json));
    }

    /// <summary>Writes a pattern; <see cref="Read(ReadOnlySpan{byte}, PatternLanguage)"/> gives an equal one back.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="destination">Where the bytes go (UTF-8, line feeds); it is not closed.</param>
    public static void Write(Pattern pattern, Stream destination)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(destination);
        destination.Write(Encoding.UTF8.GetBytes(JsonText.Of(new PatternDocument { Schema = Schema, Pattern = ToNode(pattern) }, PatternJson.Default.PatternDocument)));
    }

    private static PatternNode ToNode(Pattern pattern) => pattern switch
    {
        PrimitivePattern primitive => ToNode(primitive.Operation),
        UnaryPattern unary => With(ToNode(unary.Operation), unary.Inner, null),
        BinaryPattern binary => With(new PatternNode { Word = binary.Connective.Name }, binary.First, binary.Second),
        SumPattern sum => new PatternNode { Sum = [.. sum.Parts.ConvertAll(ToNode)] },
        WrittenPattern written => new PatternNode { Lines = [.. written.WrittenLines] },
        _ => throw new InvalidOperationException($"the pattern {pattern} has no JSON form"),
    };

    private static PatternNode ToNode(Operation operation) => new()
    {
        Word = operation.Word.Name,
        Numbers = operation.Numbers.IsEmpty ? null : [.. operation.Word.Shown(operation.Numbers)],
        Texts = operation.Texts.IsEmpty ? null : [.. operation.Texts],
    };

    private static PatternNode With(PatternNode node, Pattern of, Pattern? with)
    {
        node.Of = ToNode(of);
        node.With = with is null ? null : ToNode(with);
        return node;
    }
}

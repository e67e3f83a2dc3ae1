using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Warmup;

/// <summary>What all JSON files have in common: how their text is written, and what must hold before it is read.</summary>
internal static class JsonText
{
    /// <summary>The text of a file: every line ends in a line feed, the last one too, on every system.</summary>
    public static string Of<T>(T content, JsonTypeInfo<T> form) => JsonSerializer.Serialize(content, form).ReplaceLineEndings("\n") + "\n";

    /// <summary>The text without the byte-order mark that some programs write before it.</summary>
    public static ReadOnlySpan<byte> WithoutMark(ReadOnlySpan<byte> json) => json.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? json[3..] : json;

    /// <summary>Refuses an object that has a member twice: readers differ in which of the two they take.</summary>
    /// <exception cref="WarmupFormatException">A member stands there twice; the error names it and its place.</exception>
    /// <exception cref="JsonException">The text is not JSON.</exception>
    public static void RefuseRepeatedMembers(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json);
        var open = new Stack<HashSet<string>>();
        while (reader.Read())
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.StartObject:
                    open.Push(new HashSet<string>(StringComparer.Ordinal));
                    break;
                case JsonTokenType.EndObject:
                    open.Pop();
                    break;
                case JsonTokenType.PropertyName when Name(ref reader) is var name && !open.Peek().Add(name):
                    var before = json[..(int)reader.TokenStartIndex];
                    var line = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]);
                    throw new WarmupFormatException(new TextError(
                        before.Count((byte)'\n') + 1, line + 1, $"the member {TextError.Quote(name)} stands twice in one object; keep one of them"));
            }
        }
    }

    private static string Name(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString()!;
        }
        catch (InvalidOperationException broken)
        {
            throw new JsonException("the name of a member is not text", null, null, null, broken);
        }
    }
}

using System.Text;
using System.Text.Json;

namespace Warmup.Voices;

/// <summary>The members of a class's file, and the first in a text that is none of them.</summary>
internal static class SingersMembers
{
    // Of the root, a singer in its list and a measurement in the singer's list, as the reader counts how deep a member lies.
    private const int DepthInFile = 1;
    private const int DepthInSinger = 3;
    private const int DepthInMeasurement = 5;

    private static readonly ValueList<string> OfFile = ["schema", "singers"];

    private static readonly ValueList<string> OfSinger =
        ["alias", "low", "high", "sustainedSeconds", "trials", "trialRule", "experience", "voice", "fullLow", "fullHigh", "measurements"];

    private static readonly ValueList<string> OfMeasurement = ["date", "low", "high", "sustainedSeconds", "trials", "trialRule", "fullLow", "fullHigh"];

    /// <summary>The first member that the format does not have, with its place counted from 1, and those that there are, in words.</summary>
    /// <exception cref="JsonException">The text before it is not JSON.</exception>
    public static (int Line, int Column, string Name, string Known)? FirstUnknown(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = SingersJson.Default.Options.MaxDepth });
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.PropertyName && !IsKnown(ref reader))
            {
                var before = json[..(int)reader.TokenStartIndex];
                return (before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'), Encoding.UTF8.GetString(reader.ValueSpan), KnownAt(reader.CurrentDepth));
            }
        }

        return null;
    }

    private static string KnownAt(int depth) =>
        depth == DepthInMeasurement ? $"the members of a measurement are {InWords(OfMeasurement)}" : $"the members of a singer are {InWords(OfSinger)}";

    private static string InWords(ValueList<string> names) => $"{string.Join(", ", names.AsSpan()[..^1].ToArray())} and {names[^1]}";

    private static bool IsKnown(ref Utf8JsonReader reader)
    {
        var known = reader.CurrentDepth switch { DepthInFile => OfFile, DepthInSinger => OfSinger, DepthInMeasurement => OfMeasurement, _ => default };
        foreach (var name in known)
        {
            if (reader.ValueTextEquals(name))
            {
                return true;
            }
        }

        // Deeper members have no place in the format: the serializer says where a value has another kind.
        return reader.CurrentDepth is not (DepthInFile or DepthInSinger or DepthInMeasurement);
    }
}

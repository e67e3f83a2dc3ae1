using System.Text;
using System.Text.Json;

namespace Warmup.Voices;

/// <summary>The members of a class's file, and the first in a text that is none of them.</summary>
internal static class SingersMembers
{
    // Of the root, the list and a singer in it, as the reader counts how deep a member lies.
    private const int DepthInFile = 1;
    private const int DepthInSinger = 3;

    private static readonly ValueList<string> OfFile = ["schema", "singers"];

    private static readonly ValueList<string> OfSinger =
        ["alias", "low", "high", "sustainedSeconds", "trials", "trialRule", "experience", "voice", "fullLow", "fullHigh"];

    /// <summary>What members there are, in words.</summary>
    public static string Known => $"the members of a singer are {string.Join(", ", OfSinger.AsSpan()[..^1].ToArray())} and {OfSinger[^1]}";

    /// <summary>The first member that the format does not have, with its place counted from 1.</summary>
    /// <exception cref="JsonException">The text before it is not JSON.</exception>
    public static (int Line, int Column, string Name)? FirstUnknown(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = SingersJson.Default.Options.MaxDepth });
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.PropertyName && !IsKnown(ref reader))
            {
                var before = json[..(int)reader.TokenStartIndex];
                return (before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'), Encoding.UTF8.GetString(reader.ValueSpan));
            }
        }

        return null;
    }

    private static bool IsKnown(ref Utf8JsonReader reader)
    {
        var known = reader.CurrentDepth == DepthInFile ? OfFile : reader.CurrentDepth == DepthInSinger ? OfSinger : default;
        foreach (var name in known)
        {
            if (reader.ValueTextEquals(name))
            {
                return true;
            }
        }

        // Deeper members have no place in the format: the serializer says where a value has another kind.
        return reader.CurrentDepth is not (DepthInFile or DepthInSinger);
    }
}

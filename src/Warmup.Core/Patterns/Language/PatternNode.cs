using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>The file of a pattern as JSON has it.</summary>
internal sealed class PatternDocument
{
    public string? Schema { get; set; }

    public PatternNode? Pattern { get; set; }
}

/// <summary>A node of a pattern as JSON has it.</summary>
internal sealed class PatternNode
{
    public string? Word { get; set; }

    public List<int>? Numbers { get; set; }

    public List<string>? Texts { get; set; }

    public PatternNode? Of { get; set; }

    public PatternNode? With { get; set; }

    public List<PatternNode>? Sum { get; set; }

    public List<string>? Lines { get; set; }

    /// <summary>Where it stands in a file that is read, such as <c>pattern.sum[1].of</c>.</summary>
    [JsonIgnore]
    public string Place { get; init; } = string.Empty;

    /// <summary>The byte at which it begins.</summary>
    [JsonIgnore]
    public long Start { get; init; }

    /// <summary>Whether it says something that only stands beside a word.</summary>
    [JsonIgnore]
    public bool HasParts => Of is not null || With is not null || Numbers is not null || Texts is not null;
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    MaxDepth = PatternJsonReader.Deepest)]
[JsonSerializable(typeof(PatternDocument))]
internal sealed partial class PatternJson : JsonSerializerContext;

using System.Text.Json.Serialization;

namespace Warmup.Voices;

/// <summary>The file as JSON has it.</summary>
internal sealed class ClassDto
{
    public string? Schema { get; set; }

    public List<SingerDto?>? Singers { get; set; }
}

/// <summary>What a measurement has in JSON, dated or not.</summary>
internal interface IMeasurementDto
{
    string? Low { get; }

    string? High { get; }

    decimal? SustainedSeconds { get; }

    List<decimal>? Trials { get; }

    string? TrialRule { get; }

    string? FullLow { get; }

    string? FullHigh { get; }
}

/// <summary>A singer as JSON has it; its own numbers are the measurement without a date.</summary>
internal sealed class SingerDto : IMeasurementDto
{
    public string? Alias { get; set; }

    public string? Low { get; set; }

    public string? High { get; set; }

    public decimal? SustainedSeconds { get; set; }

    public List<decimal>? Trials { get; set; }

    public string? TrialRule { get; set; }

    public string? Experience { get; set; }

    public string? Voice { get; set; }

    public string? FullLow { get; set; }

    public string? FullHigh { get; set; }

    public List<MeasurementDto?>? Measurements { get; set; }
}

/// <summary>A dated measurement as JSON has it.</summary>
internal sealed class MeasurementDto : IMeasurementDto
{
    public string? Date { get; set; }

    public string? Low { get; set; }

    public string? High { get; set; }

    public decimal? SustainedSeconds { get; set; }

    public List<decimal>? Trials { get; set; }

    public string? TrialRule { get; set; }

    public string? FullLow { get; set; }

    public string? FullHigh { get; set; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    MaxDepth = 8)]
[JsonSerializable(typeof(ClassDto))]
internal sealed partial class SingersJson : JsonSerializerContext;

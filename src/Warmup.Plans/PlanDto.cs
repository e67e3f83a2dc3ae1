using System.Text.Json.Serialization;

namespace Warmup.Plans;

internal sealed class PlanDto
{
    public string? Schema { get; set; }

    public string? Generator { get; set; }

    public string? Origin { get; set; }

    public ulong? Seed { get; set; }

    public string? Level { get; set; }

    public int? Minutes { get; set; }

    public int? NoRepeatDays { get; set; }

    public List<string>? RestDays { get; set; }

    public TonicDto? Tonic { get; set; }

    public string? Tuning { get; set; }

    public string? BreathSeconds { get; set; }

    public string? ShortestBreathSeconds { get; set; }

    public List<ScaleDto>? Scales { get; set; }

    public List<DrillDto>? Drills { get; set; }

    /// <summary>In writing they are drawn one after the other; in reading it is a list.</summary>
    public IEnumerable<DayDto>? Days { get; set; }

    public List<string>? Cautions { get; set; }
}

internal sealed class TonicDto
{
    public string? Note { get; set; }

    public int? Midi { get; set; }

    public double? Hz { get; set; }

    public double? A4 { get; set; }
}

internal sealed class ScaleDto
{
    public string? Name { get; set; }

    public string? Notes { get; set; }
}

internal sealed class DrillDto
{
    public int? Scale { get; set; }

    public string? Role { get; set; }

    public string? Exercise { get; set; }

    public string? Title { get; set; }

    public string? Pattern { get; set; }

    public string? Meter { get; set; }

    public DeliveryDto? Delivery { get; set; }

    public List<SpeedDto>? Speeds { get; set; }

    public int? Repetitions { get; set; }

    /// <summary>Left out where the tonic stays.</summary>
    public int? Climb { get; set; }

    public int? Grade { get; set; }

    public int? Span { get; set; }
}

internal sealed class DeliveryDto
{
    public bool? LineByLine { get; set; }

    public string? Fill { get; set; }

    public string? FillBy { get; set; }

    public string? BreathSeconds { get; set; }

    /// <summary>Left out where it is the default.</summary>
    public int? BreathGrid { get; set; }

    public string? LeastHold { get; set; }
}

internal sealed class SpeedDto
{
    public int? Kalam { get; set; }

    public int? Gati { get; set; }
}

internal sealed class DayDto
{
    public string? Date { get; set; }

    public string? Seconds { get; set; }

    public List<DrillOfDayDto>? Drills { get; set; }

    public List<int>? LeftOut { get; set; }

    public ShortfallDto? Shortfall { get; set; }

    public string? BreathSeconds { get; set; }

    public string? ShortestBreathSeconds { get; set; }
}

internal sealed class ShortfallDto
{
    public int? Unfit { get; set; }

    public int? Closed { get; set; }

    public int? Waiting { get; set; }

    public int? Order { get; set; }
}

internal sealed class DrillOfDayDto
{
    public int? Drill { get; set; }

    public int? Tempo { get; set; }

    public int? Times { get; set; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    MaxDepth = 8)]
[JsonSerializable(typeof(PlanDto))]
internal sealed partial class PlanJson : JsonSerializerContext;

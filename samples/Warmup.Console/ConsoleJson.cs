using System.Text.Json.Serialization;

namespace Warmup.Cli;

internal sealed record FitReport(string Schema, string Title, List<FindingRow> Notes, List<SingerReport> Singers, List<string> Cautions, List<WrittenFile>? Files);

/// <summary>A file that was written, with the name of its format.</summary>
internal sealed record WrittenFile(string Path, string Format);

/// <summary>Files that were written where nothing was checked.</summary>
internal sealed record WrittenReport(string Schema, string Title, List<WrittenFile> Files)
{
    public const string Name = "urn:warmup:written:1";
}

internal sealed record SingerReport(string Alias, bool Fits, List<FindingRow> Findings);

internal sealed record FindingRow(
    string Code,
    string Severity,
    int? Section,
    int? Line,
    string? Beat,
    string Message,
    double? Measured,
    double? Limit,
    string? Unit,
    string? Fix,
    List<RemedyRow>? Remedies,
    WithoutRemedy? WithoutRemedy);

/// <summary>A change that clears a finding, in words and as the options that replace or join those of the command.</summary>
internal sealed record RemedyRow(string Text, List<string> Options);

/// <summary>Where nothing clears a finding for all singers: what would have to give, and what clears it for its singer alone.</summary>
internal sealed record WithoutRemedy(string Text, List<RemedyRow> Alone);

internal sealed record ScaleReport(string Schema, List<ScaleRow> Scales);

internal sealed record ScaleRow(string Name, string Family, int? Parent, string Notes, string Ascent, string Descent, bool Vakra, List<string> Spellings, string Source);

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true)]
[JsonSerializable(typeof(FitReport))]
[JsonSerializable(typeof(WrittenReport))]
[JsonSerializable(typeof(ClassJson))]
[JsonSerializable(typeof(HistoryReport))]
[JsonSerializable(typeof(SingersJson))]
[JsonSerializable(typeof(PlannedJson))]
[JsonSerializable(typeof(ScaleReport))]
[JsonSerializable(typeof(ScaleDetail))]
[JsonSerializable(typeof(PatternReport))]
[JsonSerializable(typeof(PatternDetail))]
[JsonSerializable(typeof(ExerciseReport))]
[JsonSerializable(typeof(ReadReport))]
internal sealed partial class ConsoleJson : JsonSerializerContext;

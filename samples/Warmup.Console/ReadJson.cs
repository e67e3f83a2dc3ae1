using Warmup.Reading;

namespace Warmup.Cli;

internal sealed record ReadReport(
    string Schema, string Format, string Title, string Part, List<string> Parts, List<ReadSectionRow> Sections, List<RemarkRow> Remarks, List<WrittenFile> Files)
{
    public const string Name = "urn:warmup:read:1";
}

internal sealed record ReadSectionRow(
    int Number,
    string Title,
    string Scale,
    string Notes,
    string Tonic,
    string Meter,
    string Tempo,
    string LinesFoundBy,
    List<string> Lines,
    string LetterLength,
    int Repetitions,
    string? Pattern,
    List<ProposalRow> Proposals,
    List<RuleRow>? Rules,
    List<SungFindingRow>? Findings);

internal sealed record ProposalRow(string Tonic, string Scale, int Points, List<string> Reasons);

internal sealed record RuleRow(int FirstLine, int LastLine, string Rule, string? Exercise, bool ByTonesAlone);

internal sealed record RemarkRow(string Kind, string Place, string Message);

internal sealed record SungFindingRow(string Singer, string Code, int? Line, string Message, List<RemedyRow> Remedies, WithoutRemedy? WithoutRemedy);

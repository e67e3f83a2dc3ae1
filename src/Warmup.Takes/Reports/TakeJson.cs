using System.Text.Json.Serialization;

namespace Warmup.Takes;

/// <summary>Writes reports as JSON, in the form <c>urn:warmup:take:1</c>.</summary>
public static class TakeJson
{
    /// <summary>Writes a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="cautions">The cautions of the drill, <see cref="Score.Cautions"/>; the usual ones by default.</param>
    /// <returns>The text, the same for equal reports; lines end in a line feed.</returns>
    public static string Write(TakeReport report, ValueList<Caution> cautions = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        var dto = new TakeDto
        {
            Schema = TakeReport.Schema,
            IsDrill = report.IsDrill,
            Reason = report.Reason,
            OffsetCents = report.OffsetCents,
            Octave = report.Octave,
            DriftCents = report.DriftCents,
            Seconds = report.Seconds,
            Notes = [.. report.Notes.Select(n => new TakeNoteDto
            {
                Index = n.Index,
                Line = n.Line,
                Round = n.Round,
                Tone = n.Tone.ToString(),
                Status = Word(n.Status),
                Onset = n.Onset,
                End = n.End,
                Cents = n.Cents,
                Spread = n.Spread,
                Vibrato = n.Vibrato,
                Late = n.Late,
                Sung = n.SungTone?.ToString(),
                Why = n.Why,
            })],
            Lines = [.. report.Lines.Select(l => new TakeLineDto
            {
                Line = l.Line, Round = l.Round, Times = l.Times, BrokenOff = l.BrokenOff, Heard = l.Heard, InTune = l.InTune, Cents = l.Cents,
            })],
            Breaths = [.. report.Breaths.Select(b => new TakeBreathDto { Onset = b.Onset, Seconds = b.Seconds, AfterNote = b.AfterNote, Planned = b.IsPlanned })],
            Events = [.. report.Events.Select(e => new TakeEventDto { Kind = Word(e.Kind), Line = e.Line, Round = e.Round, Onset = e.Seconds })],
            Tempi = [.. report.Tempi.Select(t => new TakeTempoDto { Onset = t.Onset, Tempo = t.Tempo })],
            Doubts = [.. report.Doubts],
            Cautions = [.. (cautions.IsEmpty ? Cautions.All : cautions).Select(c => c.Text)],
        };
        return JsonText.Of(dto, TakeJsonContext.Default.TakeDto);
    }

    /// <summary>A status as reports name it: <c>sung</c>, <c>other-note</c>, <c>left-out</c> or <c>unsure</c>.</summary>
    /// <param name="status">The status.</param>
    public static string Word(NoteStatus status) => status switch
    {
        NoteStatus.Sung => "sung",
        NoteStatus.OtherNote => "other-note",
        NoteStatus.LeftOut => "left-out",
        _ => "unsure",
    };

    /// <summary>An event as reports name it: <c>repeat</c>, <c>skip</c>, <c>false-start</c> or <c>early-stop</c>.</summary>
    /// <param name="kind">What happened.</param>
    public static string Word(TakeEventKind kind) => kind switch
    {
        TakeEventKind.Repeat => "repeat",
        TakeEventKind.Skip => "skip",
        TakeEventKind.FalseStart => "false-start",
        _ => "early-stop",
    };
}

internal sealed class TakeDto
{
    public string? Schema { get; set; }

    public bool? IsDrill { get; set; }

    public string? Reason { get; set; }

    public int? OffsetCents { get; set; }

    public int? Octave { get; set; }

    public int? DriftCents { get; set; }

    public double? Seconds { get; set; }

    public List<TakeNoteDto>? Notes { get; set; }

    public List<TakeLineDto>? Lines { get; set; }

    public List<TakeBreathDto>? Breaths { get; set; }

    public List<TakeEventDto>? Events { get; set; }

    public List<TakeTempoDto>? Tempi { get; set; }

    public List<string>? Doubts { get; set; }

    public List<string>? Cautions { get; set; }
}

internal sealed class TakeNoteDto
{
    public int Index { get; set; }

    public int Line { get; set; }

    public int Round { get; set; }

    public string? Tone { get; set; }

    public string? Status { get; set; }

    public double? Onset { get; set; }

    public double? End { get; set; }

    public int? Cents { get; set; }

    public int? Spread { get; set; }

    public int? Vibrato { get; set; }

    public int? Late { get; set; }

    public string? Sung { get; set; }

    public string? Why { get; set; }
}

internal sealed class TakeLineDto
{
    public int Line { get; set; }

    public int Round { get; set; }

    public int Times { get; set; }

    public int BrokenOff { get; set; }

    public int Heard { get; set; }

    public int InTune { get; set; }

    public int? Cents { get; set; }
}

internal sealed class TakeBreathDto
{
    public double Onset { get; set; }

    public double Seconds { get; set; }

    public int? AfterNote { get; set; }

    public bool Planned { get; set; }
}

internal sealed class TakeEventDto
{
    public string? Kind { get; set; }

    public int Line { get; set; }

    public int Round { get; set; }

    public double Onset { get; set; }
}

internal sealed class TakeTempoDto
{
    public double Onset { get; set; }

    public double Tempo { get; set; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    MaxDepth = 8)]
[JsonSerializable(typeof(TakeDto))]
internal sealed partial class TakeJsonContext : JsonSerializerContext;

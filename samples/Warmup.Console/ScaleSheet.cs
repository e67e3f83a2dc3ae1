using System.Globalization;
using Spectre.Console;
using Warmup.Sheets;

namespace Warmup.Cli;

/// <summary>Prints one scale with its notes, tuned on a tonic.</summary>
internal static class ScaleSheet
{
    public static void Print(Terminal terminal, TunedScale tuned, CatalogueEntry? entry)
    {
        var scale = tuned.Scale;
        var output = terminal.Out;
        output.WriteLine(scale.Name + (entry is null ? string.Empty : $" ({About(entry)})"));
        output.WriteLine($"  up:     {string.Join(' ', scale.Ascent)}");
        output.WriteLine($"  down:   {string.Join(' ', scale.Descent)}");
        var isWestern = entry?.Family == ScaleFamily.Western;
        output.WriteLine($"  tonic:  {tuned.Tonic.ToReport(hasKattai: !isWestern)}");
        output.WriteLine($"  tuning: {tuned.Tuning}");
        output.WriteLine($"  drone:  {string.Join(' ', tuned.Drone.Strings.Select(s => s.Tone))}");

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("svara", "note", "cents", "ratio", "Hz", "above the drone", "beats");
        foreach (var note in tuned.Notes)
        {
            var drone = tuned.Drone.Strings[note.Beating.StringIndex].Tone;
            table.AddRow(
                Terminal.Plain(note.Tone.ToString()),
                Terminal.Plain(note.Name.ToString()),
                Number(note.Interval.Cents, "0.0##"),
                note.Interval.Ratio is null ? string.Empty : note.Interval.ToString(),
                Number(note.Hz, "0.00"),
                Terminal.Plain(string.Create(CultureInfo.InvariantCulture, $"{drone}: {note.AboveString}")),
                Terminal.Plain(string.Create(CultureInfo.InvariantCulture, $"{note.Beating.BeatHz:0.0} a second (partials {note.Beating.VoicePartial} and {note.Beating.StringPartial})")));
        }

        terminal.Rich.Write(table);
        foreach (var shift in Catalogue.Default.ShiftsOf(scale))
        {
            var others = shift.Matches.Select(m => m.Scale.Name).Where(n => n != scale.Name).ToList();
            if (others.Count > 0)
            {
                output.WriteLine($"from {shift.Home}: {string.Join(", ", others)}");
            }
        }

        if (!isWestern)
        {
            output.WriteLine(TextSheetFormat.NotTheRaga);
        }
    }

    public static ScaleDetail ToDetail(TunedScale tuned, CatalogueEntry? entry) => new(
        "urn:warmup:scale:1",
        tuned.Scale.Name,
        entry?.Family.ToString().ToLowerInvariant(),
        entry?.Parent,
        entry?.Chakra,
        tuned.Scale.Kind?.ToString(),
        string.Join(' ', tuned.Scale.Ascent),
        string.Join(' ', tuned.Scale.Descent),
        tuned.Scale.IsVakra,
        entry is null ? [] : entry.ForeignNotes.Select(d => d.ToString()).ToList(),
        entry?.Source,
        tuned.Tonic.ToReport(),
        tuned.Tuning.ToString(),
        tuned.Notes.Select(n => new NoteDetail(
            n.Tone.ToString(),
            n.Name.ToString(),
            n.Interval.Cents,
            n.Interval.Ratio is null ? null : n.Interval.ToString(),
            n.Hz,
            tuned.Drone.Strings[n.Beating.StringIndex].Tone.ToString(),
            n.AboveString.ToString(),
            n.Beating.BeatHz)).ToList());

    private static string About(CatalogueEntry entry)
    {
        var parts = new List<string> { entry.Family.ToString().ToLowerInvariant() };
        if (entry.Parent is { } parent)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"parent {parent}"));
        }

        if (entry.Chakra is { } chakra)
        {
            parts.Add($"chakra {chakra}");
        }

        if (entry.Kind is { } kind)
        {
            parts.Add(kind.ToString());
        }

        if (entry.Scale.IsVakra)
        {
            parts.Add("vakra");
        }

        if (!entry.ForeignNotes.IsEmpty)
        {
            parts.Add($"foreign to the parent: {string.Join(' ', entry.ForeignNotes)}");
        }

        parts.Add($"source: {entry.Source}");
        return string.Join(", ", parts);
    }

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}

internal sealed record ScaleDetail(
    string Schema,
    string Name,
    string? Family,
    int? Parent,
    string? Chakra,
    string? Kind,
    string Ascent,
    string Descent,
    bool Vakra,
    List<string> ForeignNotes,
    string? Source,
    string Tonic,
    string Tuning,
    List<NoteDetail> Notes);

internal sealed record NoteDetail(string Svara, string Note, double Cents, string? Ratio, double Hz, string DroneString, string AboveString, double BeatHz);

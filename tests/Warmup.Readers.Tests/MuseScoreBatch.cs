using System.Text.Json;

namespace Warmup.Readers.Tests;

/// <summary>All pieces converted in one run: the program takes longer to start than to read a piece.</summary>
public sealed class MuseScoreBatch : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("warmup-readers-");

    public MuseScoreBatch()
    {
        Missing = Tool.Missing(Tool.MuseScore, Tool.PdfToPpm);
        if (Missing is not null)
        {
            return;
        }

        foreach (var piece in Groups.Values.SelectMany(g => g))
        {
            piece.Save(Folder);
        }

        using var job = new MemoryStream();
        using (var json = new Utf8JsonWriter(job))
        {
            json.WriteStartArray();
            foreach (var piece in Groups.Values.SelectMany(g => g))
            {
                Job(json, $"{piece.Name}.musicxml", [$"{piece.Name}.mid", $"{piece.Name}.pdf", .. Groups["demo"].Contains(piece) ? (string[])[$"{piece.Name}.again.musicxml"] : []]);
            }

            foreach (var piece in Groups["demo"])
            {
                piece.SaveMidi(Folder, ".ours.mid");
                Job(json, $"{piece.Name}.ours.mid", $"{piece.Name}.from-midi.musicxml", $"{piece.Name}.from-midi.mid");
            }

            json.WriteEndArray();
        }

        File.WriteAllBytes(Path.Combine(Folder, "job.json"), job.ToArray());
        Printed = Tool.MuseScore.Run(Folder, "-j", "job.json").Error;
    }

    private static void Job(Utf8JsonWriter json, string from, params string[] to)
    {
        json.WriteStartObject();
        json.WriteString("in", from);
        json.WriteStartArray("out");
        Array.ForEach(to, json.WriteStringValue);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    public string? Missing { get; }

    public string Folder => _folder.FullName;

    public string Printed { get; } = string.Empty;

    internal Dictionary<string, List<NamedScore>> Groups { get; } = new(StringComparer.Ordinal)
    {
        ["demo"] = [.. WholeCheck.OneIn(2, Repertoire.Demo)],
        ["parents"] = [.. WholeCheck.OneIn(14, Repertoire.Parents)],
        ["tonics"] = [.. WholeCheck.OneIn(6, Repertoire.Tonics)],
        ["meters"] = [.. WholeCheck.OneIn(9, Repertoire.Meters)],
        ["speeds"] = [.. WholeCheck.OneIn(4, Repertoire.Speeds)],
        ["choices"] = [.. WholeCheck.OneIn(2, Repertoire.Choices)],
    };

    public void Dispose() => _folder.Delete(recursive: true);
}

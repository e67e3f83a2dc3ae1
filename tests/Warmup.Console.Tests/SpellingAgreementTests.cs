using System.Text.Json;
using System.Xml;
using System.Xml.Linq;

namespace Warmup.Cli.Tests;

/// <summary>The sharps and flats of the notation are those of the printed text: one spelling, whatever it is written to.</summary>
public sealed class SpellingAgreementTests : IDisposable
{
    private static readonly string[] Kattais = ["1", "1.5", "2", "2.5", "3", "4", "4.5", "5", "5.5", "6", "6.5", "7"];

    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Fact]
    public void MusicXML_and_the_printed_scale_write_the_same_notes_for_all_parents_on_all_keys()
    {
        for (var number = 1; number <= 72; number++)
        {
            // Each parent on one of the twelve keys in turn, so that every key meets six parents.
            string[] scale = ["--tonic", Kattais[number * 7 % 12]];
            var file = _shell.At($"{number}.musicxml");
            Assert.Equal(0, Shell.Run(["drill", "--scale", $"{number}", "--pattern", "run", .. scale, "--tempo", "60", "--out", file]).Code);
            var shown = Shell.Run(["scales", "--show", $"{number}", .. scale, "--json"]);
            using var json = JsonDocument.Parse(shown.Out);
            var text = json.RootElement.GetProperty("notes").EnumerateArray().Select(n => n.GetProperty("note").GetString()).ToList();
            Assert.Equal(text, Notes(file));
        }
    }

    private static List<string?> Notes(string file)
    {
        using var reader = XmlReader.Create(file, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null });
        return [.. XDocument.Load(reader).Descendants("pitch").Select(p =>
        {
            var alter = (int?)p.Element("alter") ?? 0;
            return p.Element("step")!.Value + new string(alter < 0 ? 'b' : '#', Math.Abs(alter)) + p.Element("octave")!.Value;
        })];
    }
}

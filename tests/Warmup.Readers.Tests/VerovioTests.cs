using System.Text.Json;
using Warmup.MusicXml;

namespace Warmup.Readers.Tests;

/// <summary>
/// What an engraver for web pages makes of the files. Source: Verovio, run by Node through render.mjs, from the folder that the environment
/// names: its own map of times, its own MEI and its pictures.
/// </summary>
public class VerovioTests
{
    private const string Variable = "WARMUP_VEROVIO_DIR";

    [Fact]
    public void The_engraver_finds_the_notes_syllables_breaths_and_slurs_of_the_score()
    {
        var verovio = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(Tool.Missing(Tool.Node) is not null, Tool.Missing(Tool.Node) ?? string.Empty);
        Assert.SkipWhen(string.IsNullOrEmpty(verovio), $"the environment variable {Variable} does not name a folder in which npm installed verovio");
        var folder = Directory.CreateTempSubdirectory("warmup-readers-");
        try
        {
            List<NamedScore> pieces =
            [
                .. WholeCheck.OneIn(2, Repertoire.Demo), .. WholeCheck.OneIn(3, Repertoire.Parents.Where((_, i) => i % 9 == 0)), .. WholeCheck.OneIn(6, Repertoire.Tonics),
                .. WholeCheck.OneIn(6, Repertoire.Meters), .. WholeCheck.OneIn(3, Repertoire.Speeds), .. Repertoire.Choices,
            ];
            var (code, output, error) = Tool.Node.Run(
                folder.FullName, [Path.Combine(AppContext.BaseDirectory, "render.mjs"), verovio!, .. pieces.Select(p => p.Save(folder.FullName))]);
            Assert.True(code == 0, error);
            var found = output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            Assert.Equal(pieces.Count, found.Length);
            foreach (var (piece, line) in pieces.Zip(found))
            {
                using var json = JsonDocument.Parse(line);
                Holds(piece, json.RootElement);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Holds(NamedScore piece, JsonElement found)
    {
        var voices = Repertoire.Voices(piece);
        Assert.True(found.GetProperty("loaded").GetInt32() == 1, piece.Name);
        Assert.True(found.GetProperty("pages").GetInt32() > 0, piece.Name);

        // The drone's notes are tied through a section, so they sound once in each; the beat has one stroke an akshara.
        var expected = voices.SelectMany(v => Played.Expected(piece.Score, v)).Select(n => (n.Onset, n.Midi)).ToList();
        var others = piece.Options.HasDrone || piece.Options.Beat != MusicXmlBeat.None;
        var onsets = found.GetProperty("onsets").EnumerateArray().Select(o => (Onset: o[0].GetDouble(), Midi: o[1].GetInt32())).ToList();
        if (others)
        {
            foreach (var note in expected)
            {
                Assert.True(onsets.Exists(o => Same(o, note)), $"{piece.Name}: {note} is missing");
            }
        }
        else
        {
            Assert.True(expected.Count == onsets.Count, $"{piece.Name}: {onsets.Count} notes instead of {expected.Count}");
            Assert.All(expected.Zip(onsets), pair => Assert.True(Same(pair.First, pair.Second), $"{piece.Name}: {pair.First} is {pair.Second}"));
        }

        var notes = piece.Score.Sections.SelectMany(s => s.Notes).ToList();
        if (!piece.Options.HasOneSyllableALine && piece.Options.Beat == MusicXmlBeat.None)
        {
            var verses = found.GetProperty("syllables").EnumerateArray().ToLookup(s => s[0].GetInt32(), s => s[1].GetString());
            var sung = voices.SelectMany(_ => piece.Score.Sections.SelectMany(s => s.Notes.Select(n => OctaveDotted.Of(s.SyllableOf(n), s.PitchOf(n).Tone.Octave)))).Order(StringComparer.Ordinal);
            Assert.True(sung.SequenceEqual(verses[1].Order(StringComparer.Ordinal)), $"{piece.Name}: {string.Join(' ', verses[1])}");
            for (var v = 2; v <= 1 + piece.Options.FurtherVerses.Count; v++)
            {
                Assert.True(verses[v].Count() == notes.Count * voices.Length, $"{piece.Name}: {verses[v].Count()} syllables in verse {v}");
            }
        }

        var breaths = piece.Score.Sections.Sum(s => s.Breaths.Count) * voices.Length;
        Assert.True(breaths == found.GetProperty("breaths").GetInt32(), $"{piece.Name}: {found.GetProperty("breaths")} breath marks instead of {breaths}");
        var slurs = piece.Options.HasOneSyllableALine ? piece.Score.Sections.Sum(s => s.Lines.Count(l => l.NoteCount > 1)) : 0;
        Assert.True(slurs == found.GetProperty("slurs").GetInt32(), $"{piece.Name}: {found.GetProperty("slurs")} slurs instead of {slurs}");
    }

    private static bool Same((double Onset, int Midi) a, (double Onset, int Midi) b) => a.Midi == b.Midi && Math.Abs(a.Onset - b.Onset) < 0.001;
}

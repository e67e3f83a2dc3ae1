using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;

namespace Warmup.Readers.Tests;

/// <summary>
/// What webmscore (npm) makes of slides, hairpins and short notes. Source: the MusicXML that it writes of the files it has opened, run by Node
/// through reopen.mjs, from the folder that the environment names.
/// </summary>
[Trait("Run", "whole")]
public class WebMscoreTests(ITestOutputHelper output)
{
    private const string Variable = "WARMUP_WEBMSCORE_DIR";
    private const string Major = "S R2 G3 M1 P D2 N3 S'";

    private static List<NamedScore> Pieces =>
    [
        .. ((string[])[
            "[S , P , S' , P , S , , ,].glide", "[S , , , , P , , , , , S , , ,].glide", "[S P / G P S].glide", "[S , , , , , , ,].swell", "[S , ,].swell + [P , , , , , ,].swell",
            "[S , P ,].glide.swell", "[S G P G S].staccato", "ladder"]).Select((p, i) => new NamedScore($"piece-{i}", Repertoire.Of(Major, p, "D4").ToScore())),
        .. WholeCheck.OneIn(2, Warmup.Repertoire.Voice).Select(e => new NamedScore(e.Name, (Repertoire.Of(Major, "ladder", "C4") with { Pattern = e.Pattern, Delivery = Delivery.LineByLine }).ToScore())),
    ];

    [Fact]
    public void The_reader_finds_the_slides_hairpins_and_short_notes_of_the_score()
    {
        var webmscore = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(Tool.Missing(Tool.Node) is not null, Tool.Missing(Tool.Node) ?? string.Empty);
        Assert.SkipWhen(string.IsNullOrEmpty(webmscore), $"the environment variable {Variable} does not name a folder in which npm installed webmscore");
        var folder = Directory.CreateTempSubdirectory("warmup-readers-");
        try
        {
            var pieces = Pieces;
            foreach (var (piece, read) in Reopened(webmscore!, pieces, folder.FullName))
            {
                Holds(piece, XDocument.Parse(read.Xml));
            }

            var notes = pieces.SelectMany(p => p.Score.Sections[0].Notes).ToList();
            Assert.True(notes.Count(n => n.Joining == Joining.Glide) > 10 && notes.Count(n => n.Loudness == Loudness.SwellAndFade) > 5);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>What it saves comes back: its MusicXML with the scale, its MIDI without.</summary>
    [Fact]
    public void What_the_library_saves_of_the_demo_reads_back()
    {
        var webmscore = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(Tool.Missing(Tool.Node) is not null, Tool.Missing(Tool.Node) ?? string.Empty);
        Assert.SkipWhen(string.IsNullOrEmpty(webmscore), $"the environment variable {Variable} does not name a folder in which npm installed webmscore");
        var folder = Directory.CreateTempSubdirectory("warmup-readers-");
        try
        {
            var pieces = WholeCheck.OneIn(2, Repertoire.Demo).ToList();
            foreach (var (piece, read) in Reopened(webmscore!, pieces, folder.FullName))
            {
                var path = Path.Combine(folder.FullName, piece.Name);
                File.WriteAllText($"{path}.again.musicxml", read.Xml);
                File.WriteAllBytes($"{path}.again.mid", read.Midi);
            }

            output.WriteLine(ReadBack.Table(pieces, folder.FullName, ".again.musicxml", ".again.mid"));
            foreach (var piece in pieces)
            {
                var path = Path.Combine(folder.FullName, piece.Name);
                ReadBack.Has(piece, $"{path}.again.musicxml", Kept.All);
                ReadBack.Has(piece, $"{path}.again.mid", Kept.Pitches | Kept.Onsets | Kept.Lengths | Kept.Tempo | ReadBack.LinesBySilence(piece));
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>What the library writes of each piece. A few files a run: it keeps its memory from file to file, and takes longer to start than to read one.</summary>
    private static IEnumerable<(NamedScore Piece, (string Xml, byte[] Midi) Read)> Reopened(string webmscore, IEnumerable<NamedScore> pieces, string folder)
    {
        foreach (var few in pieces.Chunk(4))
        {
            var (code, output, error) = Tool.Node.Run(folder, [Path.Combine(AppContext.BaseDirectory, "reopen.mjs"), webmscore, .. few.Select(p => p.Save(folder))]);
            Assert.True(code == 0, $"{string.Join(' ', few.Select(p => p.Name))}: {error}");
            var lines = output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            Assert.Equal(few.Length, lines.Length);
            foreach (var (piece, line) in few.Zip(lines))
            {
                using var json = JsonDocument.Parse(line);
                yield return (piece, (json.RootElement.GetProperty("xml").GetString()!, json.RootElement.GetProperty("midi").GetBytesFromBase64()));
            }
        }
    }

    private static void Holds(NamedScore piece, XDocument read)
    {
        var section = piece.Score.Sections[0];
        var divisions = Divisions(read);
        var (slides, stops, dots, hairpins) = (new List<Rational>(), new List<Rational>(), new List<Rational>(), new List<(Rational At, string Type)>());
        var at = 0L;
        foreach (var element in read.Descendants("measure").Elements())
        {
            var place = new Rational(at + long.Parse(element.Element("offset")?.Value ?? "0", CultureInfo.InvariantCulture), divisions);
            hairpins.AddRange(element.Descendants("wedge").Select(w => (place, (string)w.Attribute("type")!)));
            var length = element.Element("duration") is { } duration ? long.Parse(duration.Value, CultureInfo.InvariantCulture) : 0;
            slides.AddRange(element.Descendants("slide").Where(s => (string?)s.Attribute("type") == "start").Select(_ => new Rational(at + length, divisions)));
            stops.AddRange(element.Descendants("slide").Where(s => (string?)s.Attribute("type") == "stop").Select(_ => place));
            dots.AddRange(element.Descendants("staccato").Select(_ => place));
            at += element.Name == "backup" ? -length : length;
        }

        // A slide leaves where its note ends and arrives where the next begins; two hairpins meet in the middle of a note that swells.
        var gliding = section.Notes.Where(n => n.Joining == Joining.Glide).Select(n => n.End).ToList();
        Same(piece, gliding, slides);
        Same(piece, gliding, stops);
        Same(piece, section.Notes.Where(n => n.Joining == Joining.Staccato).Select(n => n.Onset), dots);
        var swells = section.Notes.Where(n => n.Loudness == Loudness.SwellAndFade).ToList();
        Same(piece, swells.Select(n => n.Onset), hairpins.Where(h => h.Type == "crescendo").Select(h => h.At));
        Same(piece, swells.Select(n => n.Middle), hairpins.Where(h => h.Type == "diminuendo").Select(h => h.At));
        Same(piece, swells.SelectMany(n => (Rational[])[n.Middle, n.End]), hairpins.Where(h => h.Type == "stop").Select(h => h.At));
    }

    /// <summary>How many of its durations a quarter has. Where measures are not numbered the reader writes no divisions; a plain note tells.</summary>
    private static long Divisions(XDocument read)
    {
        if (read.Descendants("divisions").FirstOrDefault() is { } written)
        {
            return long.Parse(written.Value, CultureInfo.InvariantCulture);
        }

        var plain = read.Descendants("note").First(n => n.Element("dot") is null && n.Element("time-modification") is null && n.Element("duration") is not null);
        var quarters = (string?)plain.Element("type") switch
        {
            "whole" => new Rational(4),
            "half" => new Rational(2),
            "quarter" => new Rational(1),
            "eighth" => new Rational(1, 2),
            var type => throw new InvalidDataException($"a note of the type '{type}'"),
        };
        var divisions = long.Parse(plain.Element("duration")!.Value, CultureInfo.InvariantCulture) / quarters;
        Assert.Equal(1, divisions.Denominator);
        return divisions.Numerator;
    }

    private static void Same(NamedScore piece, IEnumerable<Rational> expected, IEnumerable<Rational> found) =>
        Assert.True(expected.Order().SequenceEqual(found.Order()), $"{piece.Name}: {string.Join(' ', expected.Order())} is {string.Join(' ', found.Order())}");
}

using Warmup.MusicXml;

namespace Warmup.Readers.Tests;

/// <summary>
/// What an engraver that compiles makes of the files. Source: LilyPond's musicxml2ly converts them, LilyPond engraves them; both name what
/// they do not understand in a warning.
/// </summary>
[Trait("Run", "whole")]
public class LilyPondTests(ITestOutputHelper output)
{
    // A handful besides the demo, since the engraver is slow.
    private static readonly string[] Names = ["gati-5-3", "gati-3-2", "meter-00", "warm-up", "class", "vowel", "ramp", "letter"];

    [Fact]
    public void Files_are_converted_and_engraved_without_a_warning()
    {
        var missing = Tool.Missing(Tool.MusicXmlToLy, Tool.LilyPond, Tool.PdfToPpm);
        Assert.SkipWhen(missing is not null, missing ?? string.Empty);
        var folder = Directory.CreateTempSubdirectory("warmup-readers-");
        try
        {
            var others = Repertoire.Speeds.Concat(Repertoire.Meters).Concat(Repertoire.Choices).Where(p => Names.Contains(p.Name)).ToList();
            Assert.Equal(Names.Length, others.Count);
            var pieces = WholeCheck.OneIn(6, Repertoire.Demo).Concat(WholeCheck.OneIn(4, others)).ToList();
            foreach (var piece in pieces)
            {
                var (code, output, error) = Tool.MusicXmlToLy.Run(folder.FullName, "--midi", "-o", piece.Name + ".ly", piece.Save(folder.FullName));
                Quiet(piece.Name, code, output + error);
            }

            var engraved = Tool.LilyPond.Run(folder.FullName, [.. pieces.Select(p => p.Name + ".ly")]);

            // How closely systems stand on a page is the engraver's choice, of which it tells in two lines; that is no fault of the file. Its MIDI has no wood block.
            var told = (engraved.Out + engraved.Error).Split('\n').Where(l => !l.Contains("compressing over-full page", StringComparison.Ordinal) && !l.Contains("has been compressed", StringComparison.Ordinal)
                && !l.Contains("no such MIDI instrument: `wood block'", StringComparison.Ordinal));
            Quiet("the engraver", engraved.Code, string.Join('\n', told));
            output.WriteLine(ReadBack.Table(pieces.Where(p => p.Score.Sections.Count == 1), folder.FullName, ".midi"));
            foreach (var piece in pieces)
            {
                Quiet(piece.Name, Tool.PdfToPpm.Run(folder.FullName, "-r", "40", "-gray", "-f", "1", "-l", "1", "-singlefile", piece.Name + ".pdf", piece.Name).Code, string.Empty);
                var page = Page.Read(Path.Combine(folder.FullName, piece.Name + ".pgm"));

                // The engraver exports what it plays as MIDI, each note an eighth short; in the fast tuplets that leaves some lengths open.
                if (piece.Score.Sections.Count == 1 && !piece.Options.HasDrone && piece.Options.Beat == MusicXmlBeat.None)
                {
                    ReadBack.Has(piece, Path.Combine(folder.FullName, piece.Name + ".midi"), Kept.Pitches | Kept.Onsets | Kept.Tempo | (Names.Contains(piece.Name) ? Kept.Nothing : Kept.Lengths | ReadBack.LinesBySilence(piece)));
                }

                // At 40 dots an inch A4 is 331 by 468 (210 x 297 mm over 25.4) and Letter 340 by 440 (8.5 x 11 inches).
                var (width, height) = piece.Options.Paper == MusicXmlPaper.Letter ? (340, 440) : (331, 468);
                Assert.InRange(page.Width, width - 1, width + 1);
                Assert.InRange(page.Height, height - 1, height + 1);
                // A few notes fill less than half a line.
                Assert.True(page.StaffLines >= 5 || piece.Score.NoteCount < 20, $"{piece.Name}: {page.StaffLines} staff lines on the first page");
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Quiet(string name, int code, string printed) => Assert.True(
        code == 0 && !printed.Contains("warning", StringComparison.OrdinalIgnoreCase) && !printed.Contains("error", StringComparison.OrdinalIgnoreCase), $"{name}: {printed}");
}

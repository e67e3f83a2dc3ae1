using Warmup.MusicXml;

namespace Warmup.Readers.Tests;

/// <summary>
/// What a notation editor makes of the files. Source: MuseScore 3 converts them to MIDI and PDF; the MIDI is read by NAudio and compared
/// with the score, the pages are turned into pictures by poppler.
/// </summary>
[Trait("Run", "whole")]
public class MuseScoreTests(MuseScoreBatch batch, ITestOutputHelper output) : IClassFixture<MuseScoreBatch>
{
    [Theory]
    [InlineData("demo", 6, 3)]
    [InlineData("parents", 72, 6)]
    [InlineData("tonics", 12, 2)]
    [InlineData("meters", 40, 5)] // the 35 talas and more
    [InlineData("speeds", 15, 4)]
    [InlineData("choices", 9, 5)]
    public void The_editor_plays_the_pitches_onsets_and_lengths_of_the_score(string group, int whole, int sample)
    {
        Assert.SkipWhen(batch.Missing is not null, batch.Missing ?? string.Empty);
        var pieces = batch.Groups[group];
        Assert.True(pieces.Count >= (WholeCheck.IsAskedFor ? whole : sample), $"{pieces.Count} pieces");
        foreach (var piece in pieces)
        {
            var path = Path.Combine(batch.Folder, piece.Name + ".mid");
            Assert.True(File.Exists(path), $"{piece.Name} was not converted: {batch.Printed}");
            var tracks = Played.Tracks(path);
            var voices = Repertoire.Voices(piece);
            Assert.Equal(voices.Length + (piece.Options.HasDrone ? 1 : 0) + (piece.Options.Beat != MusicXmlBeat.None ? 1 : 0), tracks.Count);
            for (var v = 0; v < voices.Length; v++)
            {
                var difference = Played.Difference(Played.Expected(piece.Score, voices[v]), tracks[v]);
                Assert.True(difference is null, $"{piece.Name}: {difference}");
            }
        }
    }

    /// <summary>What the editor saves of our notation, and of our MIDI files, comes back.</summary>
    [Fact]
    public void What_the_editor_saves_of_the_demo_reads_back()
    {
        Assert.SkipWhen(batch.Missing is not null, batch.Missing ?? string.Empty);
        output.WriteLine(ReadBack.Table(batch.Groups["demo"], batch.Folder, ".again.musicxml", ".mid", ".from-midi.musicxml", ".from-midi.mid"));
        foreach (var piece in batch.Groups["demo"])
        {
            var path = Path.Combine(batch.Folder, piece.Name);
            ReadBack.Has(piece, $"{path}.again.musicxml", Kept.All);
            ReadBack.Has(piece, $"{path}.mid", Kept.Pitches | Kept.Onsets | Kept.Lengths | Kept.Tempo | ReadBack.LinesBySilence(piece));
            ReadBack.Has(piece, $"{path}.from-midi.musicxml", Kept.Pitches | Kept.Onsets | Kept.Syllables | Kept.Tempo);
            ReadBack.Has(piece, $"{path}.from-midi.mid", Kept.Pitches | Kept.Onsets | Kept.Tempo);
        }
    }

    [Theory]
    [InlineData("parents")]
    [InlineData("tonics")]
    [InlineData("meters")]
    [InlineData("speeds")]
    public void The_MIDI_that_the_editor_saves_reads_back(string group)
    {
        Assert.SkipWhen(batch.Missing is not null, batch.Missing ?? string.Empty);
        Assert.All(batch.Groups[group], piece => ReadBack.Has(piece, Path.Combine(batch.Folder, piece.Name + ".mid"), Kept.Pitches | Kept.Onsets | Kept.Lengths));
    }

    [Theory]
    [InlineData("demo")]
    [InlineData("parents")]
    [InlineData("tonics")]
    [InlineData("meters")]
    [InlineData("speeds")]
    [InlineData("choices")]
    public void No_printed_page_is_empty(string group)
    {
        Assert.SkipWhen(batch.Missing is not null, batch.Missing ?? string.Empty);
        foreach (var piece in batch.Groups[group])
        {
            var (code, _, error) = Tool.PdfToPpm.Run(batch.Folder, "-r", "40", "-gray", piece.Name + ".pdf", piece.Name);
            Assert.True(code == 0, $"{piece.Name}: {error}");
            var pages = Directory.GetFiles(batch.Folder, piece.Name + "-*.pgm").Select(Page.Read).ToList();
            Assert.NotEmpty(pages);
            Assert.All(pages, p =>
            {
                // At 40 dots an inch A4 is 331 by 468 (210 x 297 mm over 25.4); this version prints on A4 whatever the file says.
                Assert.InRange(p.Width, 330, 332);
                Assert.InRange(p.Height, 467, 469);
                Assert.True(p.StaffLines >= 5, $"{piece.Name}: {p.StaffLines} staff lines on a page");
            });
        }
    }
}

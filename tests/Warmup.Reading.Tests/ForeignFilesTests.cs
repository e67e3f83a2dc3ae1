using System.Diagnostics;
using System.Globalization;

namespace Warmup.Reading.Tests;

/// <summary>
/// Files that nobody here wrote, from a folder in WARMUP_FOREIGN_DIR. Run by hand: <c>Warmup.Reading.Tests -explicit only</c>. docs/reading.md says
/// which were read.
/// </summary>
public class ForeignFilesTests(ITestOutputHelper output)
{
    private static readonly string[] Endings = [".musicxml", ".xml", ".mxl", ".mid", ".midi"];

    [Fact(Explicit = true)]
    public void Each_is_read_or_refused_with_words()
    {
        var folder = Environment.GetEnvironmentVariable("WARMUP_FOREIGN_DIR") ?? throw new InvalidOperationException("name a folder of files in WARMUP_FOREIGN_DIR");
        var (read, refused, notes) = (0, 0, 0);
        foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(f => Endings.Contains(Path.GetExtension(f).ToLowerInvariant(), StringComparer.Ordinal)).Order(StringComparer.Ordinal))
        {
            var name = Path.GetRelativePath(folder, file);
            try
            {
                var music = MusicReader.Read(File.ReadAllBytes(file), cancellationToken: TestContext.Current.CancellationToken);
                read++;
                notes += music.Sections.Sum(s => s.NoteCount);
                var remarks = string.Join(' ', music.Remarks.GroupBy(r => r.Kind).Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Key}:{g.Count()}")));
                output.WriteLine($"{name}: {music.Sections[0]}; {music.Sections[0].Meter}; {music.Sections[0].LinesFoundBy}; {remarks}");
            }
            catch (ReadingException fault)
            {
                refused++;
                output.WriteLine($"{name}: refused, {fault.Message}");
            }
        }

        output.WriteLine($"{read} read, {refused} refused, {notes} notes");
        Assert.True(read >= 100, $"{read} files were read");
    }

    [Fact(Explicit = true)]
    public void How_fast_notation_is_read()
    {
        var score = Score.Join("long", Enumerable.Range(0, 20).Select(i => new Drill
        {
            Scale = Catalogue.Default.Parent(15).Scale,
            Pattern = Pattern.Parse("ladder.up-down.repeat(10)"),
            Tonic = Tonic.Parse("C4"),
            Title = $"drill {i}",
        }.ToScore()));
        foreach (var format in (IScoreFormat[])[new MusicXml.MusicXmlFormat(), new Midi.MidiFormat()])
        {
            var bytes = new MemoryStream();
            format.Write(score, bytes);
            var content = bytes.ToArray();
            for (var i = 0; i < 20; i++)
            {
                _ = MusicReader.Read(content);
            }

            using var process = Process.GetCurrentProcess();
            var before = process.TotalProcessorTime;
            const int Times = 50;
            for (var i = 0; i < Times; i++)
            {
                _ = MusicReader.Read(content);
            }

            process.Refresh();
            var seconds = (process.TotalProcessorTime - before).TotalSeconds;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{format.Name}: {score.NoteCount} notes, {content.Length} bytes, {seconds / Times * 1_000:0.0} ms of processor time, {score.NoteCount * Times / seconds:0} notes a second"));
        }
    }
}

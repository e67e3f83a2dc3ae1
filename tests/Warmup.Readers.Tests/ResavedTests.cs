namespace Warmup.Readers.Tests;

/// <summary>
/// What two libraries for the web keep of our files when they save them. Source: musicxml-io (MusicXML, and MIDI made of it) and @tonejs/midi (MIDI),
/// both npm, run by Node through resave.mjs from the folder that the environment names.
/// </summary>
public class ResavedTests(ITestOutputHelper output)
{
    private const string Variable = "WARMUP_RESAVE_DIR";

    [Fact]
    public void What_the_libraries_save_of_the_demo_reads_back()
    {
        var libraries = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(Tool.Missing(Tool.Node) is not null, Tool.Missing(Tool.Node) ?? string.Empty);
        Assert.SkipWhen(string.IsNullOrEmpty(libraries), $"the environment variable {Variable} does not name a folder in which npm installed musicxml-io and @tonejs/midi");
        var folder = Directory.CreateTempSubdirectory("warmup-readers-");
        try
        {
            List<NamedScore> pieces = [.. Repertoire.Demo];
            foreach (var piece in pieces)
            {
                piece.Save(folder.FullName);
                piece.SaveMidi(folder.FullName);
            }

            var (code, _, error) = Tool.Node.Run(folder.FullName, [Path.Combine(AppContext.BaseDirectory, "resave.mjs"), libraries!, .. pieces.Select(p => Path.Combine(folder.FullName, p.Name))]);
            Assert.True(code == 0, error);
            output.WriteLine(ReadBack.Table(pieces, folder.FullName, ".io.musicxml", ".io.mid", ".tone.mid"));
            foreach (var piece in pieces)
            {
                var path = Path.Combine(folder.FullName, piece.Name);
                ReadBack.Has(piece, $"{path}.io.musicxml", Kept.All);
                ReadBack.Has(piece, $"{path}.io.mid", Kept.Pitches | Kept.Onsets | Kept.Lengths | ReadBack.LinesBySilence(piece));
                ReadBack.Has(piece, $"{path}.tone.mid", Kept.Music | Kept.Tempo);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}

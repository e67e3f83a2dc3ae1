namespace Warmup.Tests;

/// <summary>Every format saves files, waiting or not. Source: the documented promise that a file is written whole or not at all.</summary>
public sealed class SaveTests : IDisposable
{
    private static readonly Score Score = new Drill { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.FromMidi(60) }.ToScore();
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("warmup-");

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Delete(true);

    [Fact]
    public async Task Saving_with_and_without_waiting_gives_the_same_file()
    {
        var format = new Counting();
        format.Save(Score, At("a.txt"), cancellationToken: Token);
        await format.SaveAsync(Score, At("b.txt"), cancellationToken: Token);
        Assert.Equal("20", await File.ReadAllTextAsync(At("a.txt"), Token));
        Assert.Equal("20", await File.ReadAllTextAsync(At("b.txt"), Token));
        Assert.Equal(2, _folder.GetFiles().Length);
    }

    [Fact]
    public async Task What_stops_or_refuses_a_file_is_told_and_leaves_none()
    {
        var format = new Counting();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => format.SaveAsync(Score, At("a.txt"), cancellationToken: new CancellationToken(true)));
        await Assert.ThrowsAsync<ExportException>(() => format.SaveAsync(Score with { Drone = null }, At("a.txt"), cancellationToken: Token));
        Assert.Empty(_folder.GetFiles());
    }

    [Fact]
    public async Task A_file_that_exists_is_replaced_only_when_asked()
    {
        var format = new Counting();
        await File.WriteAllTextAsync(At("a.txt"), "mine", Token);
        await Assert.ThrowsAsync<IOException>(() => format.SaveAsync(Score, At("a.txt"), cancellationToken: Token));
        Assert.Equal("mine", await File.ReadAllTextAsync(At("a.txt"), Token));
        await format.SaveAsync(Score, At("a.txt"), overwrite: true, Token);
        Assert.Equal("20", await File.ReadAllTextAsync(At("a.txt"), Token));
    }

    private string At(string name) => Path.Combine(_folder.FullName, name);

    /// <summary>Writes the number of notes: 20 for a five-note scale's ladder of 2 to 6 notes.</summary>
    private sealed class Counting : IScoreFormat
    {
        public string Name => "count";

        public ValueList<string> Extensions => [".txt"];

        public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
        {
            cancellationToken.ThrowIfCancellationRequested();
            destination.Write(System.Text.Encoding.ASCII.GetBytes(
                score.Drone is null ? throw new ExportException("no drone") : score.NoteCount.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        }
    }
}

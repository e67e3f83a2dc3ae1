using System.Buffers;

namespace Warmup.MusicXml.Tests;

/// <summary>Writing to files and slow destinations without holding a thread, and stopping on the way.</summary>
public sealed class FileTests : IDisposable
{
    private static readonly Score Plain = Drills.Of().ToScore();
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("warmup-xml-");

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Every_way_of_writing_gives_the_same_bytes()
    {
        using var stream = new MemoryStream();
        await new MusicXmlFormat().WriteAsync(Plain, stream, Token);
        Assert.Equal(ReadScore.Bytes(Plain), stream.ToArray());
        await new MusicXmlFormat().SaveAsync(Plain, At("a.musicxml"), cancellationToken: Token);
        Assert.Equal(ReadScore.Bytes(Plain), await File.ReadAllBytesAsync(At("a.musicxml"), Token));

        using var archive = new MemoryStream();
        new MxlFormat().Write(Plain, archive, Token);
        var buffer = new ArrayBufferWriter<byte>();
        new MxlFormat().Write(Plain, buffer, Token);
        Assert.True(buffer.WrittenSpan.SequenceEqual(archive.ToArray()));
        using var slow = new MemoryStream();
        await new MxlFormat().WriteAsync(Plain, slow, Token);
        Assert.Equal(archive.ToArray(), slow.ToArray());
        await new MxlFormat().SaveAsync(Plain, At("a.mxl"), cancellationToken: Token);
        Assert.Equal(archive.ToArray(), await File.ReadAllBytesAsync(At("a.mxl"), Token));
        Assert.Equal(2, _folder.GetFiles().Length);
    }

    [Fact]
    public async Task A_stopped_token_leaves_no_file_behind()
    {
        var stopped = new CancellationToken(canceled: true);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new MusicXmlFormat().SaveAsync(Plain, At("b.musicxml"), cancellationToken: stopped));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new MxlFormat().SaveAsync(Plain, At("b.mxl"), cancellationToken: stopped));
        using var stream = new MemoryStream();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new MusicXmlFormat().WriteAsync(Plain, stream, stopped));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new MxlFormat().WriteAsync(Plain, stream, stopped));
        Assert.Equal(0, stream.Length);
        Assert.Empty(_folder.GetFiles());
    }

    [Fact]
    public async Task A_file_that_exists_is_replaced_only_when_asked_and_a_refused_score_leaves_it_alone()
    {
        var path = At("c.musicxml");
        await File.WriteAllTextAsync(path, "mine", Token);

        // A note of a 512th of an akshara has no value on paper.
        var note = new LineNote(default, ScaleDirection.Ascent, Approach.Leap, new Rational(1, 512));
        var unwritable = Drills.Of().ToScore(new Expansion([new Line([note])], []));
        await Assert.ThrowsAsync<IOException>(() => new MusicXmlFormat().SaveAsync(Plain, path, cancellationToken: Token));
        await Assert.ThrowsAsync<ExportException>(() => new MusicXmlFormat().SaveAsync(unwritable, path, overwrite: true, Token));
        Assert.Equal("mine", await File.ReadAllTextAsync(path, Token));
        await new MusicXmlFormat().SaveAsync(Plain, path, overwrite: true, Token);
        Assert.Equal(ReadScore.Bytes(Plain), await File.ReadAllBytesAsync(path, Token));
        Assert.Single(_folder.GetFiles());
    }

    private string At(string name) => Path.Combine(_folder.FullName, name);
}

using System.Buffers;
using System.IO.Compression;

namespace Warmup.MusicXml;

/// <summary>MusicXML 4.0 in its compressed container: a ZIP archive whose first entry names the media type.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Equal scores and options give equal bytes on the same runtime and system; the score
/// inside is equal everywhere.
/// </remarks>
public sealed class MxlFormat : IScoreFormat
{
    // The earliest time a ZIP archive can hold: no clock is read.
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly MusicXmlFormat _inner;

    /// <summary>The format with default options.</summary>
    public MxlFormat()
        : this(MusicXmlOptions.Default)
    {
    }

    /// <summary>The format with options.</summary>
    /// <param name="options">How the score is written.</param>
    public MxlFormat(MusicXmlOptions options) => _inner = new(options);

    /// <summary>How the score is written.</summary>
    public MusicXmlOptions Options => _inner.Options;

    /// <inheritdoc/>
    public string Name => "MusicXML 4.0, compressed";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".mxl"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        destination.Write(Archive(score, cancellationToken).Span);
    }

    /// <summary>Writes a score. The format refuses what it cannot hold before the first byte.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">As for <see cref="MusicXmlFormat.Write(Score, IBufferWriter{byte}, CancellationToken)"/>.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void Write(Score score, IBufferWriter<byte> destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        destination.Write(Archive(score, cancellationToken).Span);
    }

    /// <summary>Writes a score and waits for the destination without holding a thread.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">As for <see cref="MusicXmlFormat.Write(Score, IBufferWriter{byte}, CancellationToken)"/>.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public async Task WriteAsync(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        await destination.WriteAsync(Archive(score, cancellationToken), cancellationToken).ConfigureAwait(false);
    }

    /// <summary>The archive. It is made in memory: its headers are completed last, and the destination may not be able to go back.</summary>
    private ReadOnlyMemory<byte> Archive(Score score, CancellationToken cancellation)
    {
        var archive = new MemoryStream();
        using (var zip = new ZipArchive(archive, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(zip, "mimetype", CompressionLevel.NoCompression, s => s.Write("application/vnd.recordare.musicxml"u8));
            Add(zip, "META-INF/container.xml", CompressionLevel.Optimal, s => s.Write(Container));
            Add(zip, "score.musicxml", CompressionLevel.Optimal, s => _inner.Write(score, s, cancellation));
        }

        cancellation.ThrowIfCancellationRequested();
        return archive.GetBuffer().AsMemory(0, (int)archive.Length);
    }

    private static ReadOnlySpan<byte> Container =>
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <container>
          <rootfiles>
            <rootfile full-path="score.musicxml" media-type="application/vnd.recordare.musicxml+xml"/>
          </rootfiles>
        </container>

        """u8;

    private static void Add(ZipArchive zip, string name, CompressionLevel level, Action<Stream> write)
    {
        var entry = zip.CreateEntry(name, level);
        entry.LastWriteTime = NoTime;
        using var stream = entry.Open();
        write(stream);
    }
}

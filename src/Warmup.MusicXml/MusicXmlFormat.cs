using System.Buffers;

namespace Warmup.MusicXml;

/// <summary>MusicXML 4.0, uncompressed: UTF-8 without a byte-order mark, one or two voice parts, and on request parts of the drone and the beat.</summary>
/// <remarks>
/// An akshara is a quarter note, or the beat that a time signature names. Immutable and safe to share between threads. Equal scores and
/// options give equal bytes.
/// </remarks>
public sealed class MusicXmlFormat : IScoreFormat
{
    /// <summary>The most divisions of a quarter note, as the standard advises.</summary>
    internal const int MostDivisions = 16_383;

    private readonly byte[] _page;

    /// <summary>The format with default options.</summary>
    public MusicXmlFormat()
        : this(MusicXmlOptions.Default)
    {
    }

    /// <summary>The format with options.</summary>
    /// <param name="options">How the score is written.</param>
    public MusicXmlFormat(MusicXmlOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        Options = options;
        _page = ScoreHeader.Page(options);
    }

    /// <summary>How the score is written.</summary>
    public MusicXmlOptions Options { get; }

    /// <inheritdoc/>
    public string Name => "MusicXML 4.0";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".musicxml", ".xml"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var buffer = new StreamBuffer(destination);
        Write(score, buffer, cancellationToken);
        buffer.Flush();
    }

    /// <summary>Writes a score. Equal scores give equal bytes. The format refuses what it cannot hold before the first byte.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">
    /// There is no section, a text holds a control character, a length needs a value shorter than a 128th note, the lengths need more than 16,383
    /// divisions, or the second voice leaves the range of tonics or notes.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void Write(Score score, IBufferWriter<byte> destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(destination);
        cancellationToken.ThrowIfCancellationRequested();
        XmlText.Check(score, Options);
        score = Options.Measure == MusicXmlMeasure.Anga ? score.WithAngaMeasures() : score;
        var parts = ScorePart.Of(score, Options);
        parts.ForEach(p => p.Check(score));
        var divisions = Divisions.Of(score, Options.HasDrone, cancellationToken);
        using var xml = new XmlByteWriter(destination);
        ScoreHeader.Write(xml, score, Options, _page, parts);
        foreach (var part in parts)
        {
            part.Write(xml, score, Options, divisions, cancellationToken);
        }

        xml.Raw("</score-partwise>\n"u8);
        xml.Flush();
    }

    /// <summary>Writes a score and waits for the destination without holding a thread. The bytes are made in memory first.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">As for <see cref="Write(Score, IBufferWriter{byte}, CancellationToken)"/>.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public async Task WriteAsync(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        var bytes = new ArrayBufferWriter<byte>();
        Write(score, bytes, cancellationToken);
        await destination.WriteAsync(bytes.WrittenMemory, cancellationToken).ConfigureAwait(false);
    }
}

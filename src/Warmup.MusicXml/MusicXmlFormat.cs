using System.Buffers;

namespace Warmup.MusicXml;

/// <summary>MusicXML 4.0, uncompressed: UTF-8 without a byte-order mark, one voice part, and a part of the beat on request.</summary>
/// <param name="options">How the score is written.</param>
/// <remarks>
/// An akshara is a quarter note, or the beat that a time signature names. Immutable and safe to share between threads. Equal scores and
/// options give equal bytes.
/// </remarks>
public sealed class MusicXmlFormat(MusicXmlOptions options) : IScoreFormat
{
    /// <summary>The most divisions of a quarter note, as the standard advises.</summary>
    public const int MostDivisions = 16_383;

    /// <summary>The format with default options.</summary>
    public MusicXmlFormat()
        : this(MusicXmlOptions.Default)
    {
    }

    /// <summary>How the score is written.</summary>
    public MusicXmlOptions Options { get; } = options;

    /// <inheritdoc/>
    public string Name => "MusicXML 4.0";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".musicxml", ".xml"];

    /// <inheritdoc/>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default) =>
        Write(score, new StreamBuffer(destination), cancellationToken);

    /// <summary>Writes a score. Equal scores give equal bytes. What cannot be written is refused before the first byte.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">
    /// There is no section, a text holds a control character, a length needs a shorter value than a 128th note, or the lengths need more than 16,383
    /// divisions.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void Write(Score score, IBufferWriter<byte> destination, CancellationToken cancellationToken = default)
    {
        cancellationToken.ThrowIfCancellationRequested();
        XmlText.Check(score);
        score = Options.Measure == MusicXmlMeasure.Anga ? AngaMeasures.Split(score) : score;
        var divisions = Divisions.Of(score, cancellationToken);
        var xml = new XmlBytes(destination);
        ScoreHeader.Write(xml, score, Options);
        new PartWriter(xml, Options, divisions).Write(score, cancellationToken);
        if (Options.Beat != MusicXmlBeat.None)
        {
            new BeatWriter(xml, Options.Beat == MusicXmlBeat.Gestures).Write(score, cancellationToken);
        }

        xml.Raw("</score-partwise>\n"u8);
        xml.Flush();
    }
}

using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Reading;

/// <summary>Reads MusicXML (plain and compressed), Standard MIDI Files, and text in svaras, solfa or scale numbers.</summary>
/// <remarks>What kind a file is, its content tells, not its name. Files are not trusted: see <see cref="ReadingLimits"/>. Safe to use from several threads.</remarks>
public static class MusicReader
{
    /// <summary>The endings of names that such files usually have, with their dots, in lower case. What a file holds counts, not its name.</summary>
    public static ValueList<string> Endings => FileEndings.Read;

    /// <summary>Reads a file that somebody hands over, by its name and its content, or says in one line why it cannot be read.</summary>
    /// <param name="name">The file's name, with or without folders. It is the title of what has none, and its ending tells what to do with a file of another kind.</param>
    /// <param name="file">The content.</param>
    /// <param name="options">What is known already; <see langword="null"/> for nothing.</param>
    /// <param name="music">What was read, or <see langword="null"/>.</param>
    /// <param name="refusal">Why nothing was read, where in the file, and what to do, in plain words; or <see langword="null"/>.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Whether the file was read.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static bool TryRead(
        string name,
        ReadOnlyMemory<byte> file,
        ReadingOptions? options,
        [NotNullWhen(true)] out ReadMusic? music,
        [NotNullWhen(false)] out string? refusal,
        CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(name);
        try
        {
            (music, refusal) = (Read(file, options, cancellationToken).Named(FileEndings.TitleOf(name)), null);
            return true;
        }
        catch (ReadingException refused)
        {
            (music, refusal) = (null, OneLine.Cut(PlainText.Of(refused.Message), LongestRefusal) + FileEndings.AdviceFor(name));
            return false;
        }
    }

    // Whatever a file holds, why it is refused is said in a line.
    private const int LongestRefusal = 400;

    /// <summary>Reads a file's content.</summary>
    /// <param name="file">The content, from its present position; it is not closed.</param>
    /// <param name="options">What is known already; nothing by default.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ReadingException">The content is of no known kind, broken, too large, or has no notes. The message says where.</exception>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ReadMusic ReadStream(Stream file, ReadingOptions? options = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(file);
        using var bytes = new MemoryStream();
        var part = new byte[1 << 16];
        while (file.Read(part) is var count and > 0)
        {
            cancellationToken.ThrowIfCancellationRequested();
            bytes.Write(part, 0, count);
            if (bytes.Length > ReadingLimits.Bytes)
            {
                throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"the file is longer than {ReadingLimits.Bytes} bytes, the most that is read"));
            }
        }

        return Read(bytes.GetBuffer().AsMemory(0, (int)bytes.Length), options, cancellationToken);
    }

    /// <summary>Reads a file's content.</summary>
    /// <param name="file">The content, at most <see cref="ReadingLimits.Bytes"/>.</param>
    /// <param name="options">What is known already; nothing by default.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ReadingException">The content is of no known kind, broken, too large, or has no notes. The message says where.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ReadMusic Read(ReadOnlyMemory<byte> file, ReadingOptions? options = null, CancellationToken cancellationToken = default)
    {
        options ??= ReadingOptions.Default;
        if (file.Length > ReadingLimits.Bytes)
        {
            throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"the file is longer than {ReadingLimits.Bytes} bytes, the most that is read"));
        }

        try
        {
            return Kind(file.Span) switch
            {
                FileKind.Midi => PieceReading.Of(MidiScore.Read(file.Span, cancellationToken), options, cancellationToken),
                FileKind.Archive => Archive(file, options, cancellationToken),
                FileKind.Xml => PieceReading.Of(Xml(file, cancellationToken), options, cancellationToken),
                FileKind.Text => TextPiece.Read(file.Span, options, cancellationToken),
                _ => throw new ReadingException("the file is empty or of no known kind; MusicXML (.musicxml, .xml, .mxl), MIDI (.mid) and text are read"),
            };
        }
        catch (OverflowException overflow)
        {
            throw new ReadingException("a time in the file is too long or too finely divided", overflow);
        }
    }

    private static RawPiece Xml(ReadOnlyMemory<byte> file, CancellationToken cancellation)
    {
        using var stream = new MemoryStream(file.ToArray(), writable: false);
        return XmlScore.Read(stream, cancellation);
    }

    private static ReadMusic Archive(ReadOnlyMemory<byte> file, ReadingOptions options, CancellationToken cancellation)
    {
        using var stream = new MemoryStream(file.ToArray(), writable: false);
        using var score = MxlArchive.Score(stream, cancellation);
        return PieceReading.Of(XmlScore.Read(score, cancellation), options, cancellation);
    }

    private static FileKind Kind(ReadOnlySpan<byte> file)
    {
        if (file.StartsWith("MThd"u8))
        {
            return FileKind.Midi;
        }

        if (file.StartsWith("PK"u8))
        {
            return FileKind.Archive;
        }

        // Text begins with a letter, a number or white space; markup with an angle bracket, in UTF-16 as well.
        var start = file.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? file[3..] : file;
        var isWide = start.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || start.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]);
        foreach (var b in isWide ? start[2..] : start)
        {
            if (b is not (0 or (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n'))
            {
                return b == '<' ? FileKind.Xml : b < ' ' ? FileKind.Unknown : FileKind.Text;
            }
        }

        return FileKind.Unknown;
    }

    private enum FileKind
    {
        Unknown,
        Xml,
        Archive,
        Midi,
        Text,
    }
}

using System.Globalization;
using System.IO.Compression;

namespace Warmup.Reading;

/// <summary>Takes the score out of a compressed MusicXML file, without unpacking more than the bound.</summary>
internal static class MxlArchive
{
    public static MemoryStream Score(Stream stream, CancellationToken cancellation)
    {
        try
        {
            using var archive = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
            if (archive.Entries.Count > ReadingLimits.Entries)
            {
                throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"the archive has {archive.Entries.Count} entries; the most is {ReadingLimits.Entries}"));
            }

            var score = Named(archive, cancellation) ?? archive.Entries.FirstOrDefault(IsScore)
                ?? throw new ReadingException("the archive holds no score; a .mxl file names one in META-INF/container.xml");
            return Unpack(score, cancellation);
        }
        catch (InvalidDataException broken)
        {
            throw new ReadingException("the archive is broken", broken);
        }
        catch (NotSupportedException broken)
        {
            throw new ReadingException("the archive is packed in a way that is not read", broken);
        }
    }

    private static bool IsScore(ZipArchiveEntry entry) =>
        !entry.FullName.StartsWith("META-INF/", StringComparison.OrdinalIgnoreCase)
        && (entry.FullName.EndsWith(".xml", StringComparison.OrdinalIgnoreCase) || entry.FullName.EndsWith(".musicxml", StringComparison.OrdinalIgnoreCase));

    /// <summary>The first root file that the container names, if there is one.</summary>
    private static ZipArchiveEntry? Named(ZipArchive archive, CancellationToken cancellation)
    {
        if (archive.GetEntry("META-INF/container.xml") is not { } container)
        {
            return null;
        }

        using var bytes = Unpack(container, cancellation);
        using var xml = XmlCursor.Open(bytes);
        try
        {
            while (xml.Read())
            {
                if (xml.NodeType == System.Xml.XmlNodeType.Element && xml.LocalName == "rootfile" && xml.GetAttribute("full-path") is { } path)
                {
                    return archive.GetEntry(path) ?? throw new ReadingException($"the archive's container names {TextError.Quote(path)}, which is not in it");
                }

                if (xml.Depth > ReadingLimits.Depth)
                {
                    throw new ReadingException("the archive's container is nested too deeply");
                }
            }
        }
        catch (System.Xml.XmlException broken)
        {
            throw new ReadingException($"the archive's container is no well-formed XML: {OneLine.Of(broken.Message)}", broken);
        }

        return null;
    }

    private static MemoryStream Unpack(ZipArchiveEntry entry, CancellationToken cancellation)
    {
        using var from = entry.Open();
        var bytes = new MemoryStream();
        var part = new byte[1 << 16];
        while (from.Read(part) is var count and > 0)
        {
            cancellation.ThrowIfCancellationRequested();
            bytes.Write(part, 0, count);
            if (bytes.Length > ReadingLimits.Bytes)
            {
                bytes.Dispose();
                throw new ReadingException(string.Create(
                    CultureInfo.InvariantCulture, $"{TextError.Quote(entry.FullName)} in the archive unpacks to more than {ReadingLimits.Bytes} bytes, the most that is read"));
            }
        }

        bytes.Position = 0;
        return bytes;
    }
}

using System.IO.Compression;
using System.Text;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;

namespace Warmup.Web;

/// <summary>All files of a drill in one zip, equal bytes for equal drills; a format that refuses the drill is named in <c>about.txt</c>.</summary>
internal sealed class TogetherFormat : IScoreFormat
{
    private static readonly ValueList<IScoreFormat> Formats = [new HtmlFormat(), new PdfFormat(), new MidiFormat(), new MusicXmlFormat(), new SoundFormat()];

    public string Name => "all files of a drill";

    public ValueList<string> Extensions => [".zip"];

    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        using var zip = new ZipArchive(destination, ZipArchiveMode.Create, leaveOpen: true);
        var about = new StringBuilder().Append(score.Title).Append("\n\n");
        foreach (var format in Formats)
        {
            using var bytes = new MemoryStream();
            try
            {
                format.Write(score, bytes, cancellationToken);
            }
            catch (ExportException refused)
            {
                about.Append(format.Name).Append(": ").Append(refused.Message).Append('\n');
                continue;
            }

            Add(zip, $"drill{format.Extensions[0]}", bytes.ToArray());
        }

        foreach (var caution in score.Cautions)
        {
            about.Append(caution.Text).Append(" (").Append(caution.Source).Append(")\n");
        }

        Add(zip, "about.txt", Encoding.UTF8.GetBytes(about.ToString()));
    }

    private static void Add(ZipArchive zip, string name, byte[] content)
    {
        var entry = zip.CreateEntry(name, CompressionLevel.Fastest);
        entry.LastWriteTime = new DateTimeOffset(1980, 1, 1, 0, 0, 0, TimeSpan.Zero); // the earliest day of the format
        using var stream = entry.Open();
        stream.Write(content);
    }
}

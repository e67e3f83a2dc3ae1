using Warmup.Audio;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;

namespace Warmup.Cli;

/// <summary>The file formats the program writes.</summary>
internal static class Formats
{
    /// <summary>A new exporter is one line here.</summary>
    public static readonly ValueList<IScoreFormat> All =
    [
        new MidiFormat(),
        new MusicXmlFormat(),
        new MxlFormat(),
        new TextSheetFormat(),
        new HtmlFormat(),
        new SvgFormat(),
        new PdfFormat(),
        new PngFormat(),
        new WavFormat(),
    ];

    /// <summary>The format of a file, by its ending.</summary>
    public static IScoreFormat Of(string path)
    {
        var ending = Path.GetExtension(path).ToLowerInvariant();
        foreach (var format in All)
        {
            if (format.Extensions.Contains(ending, StringComparer.Ordinal))
            {
                return format;
            }
        }

        var known = string.Join(" ", All.SelectMany(f => f.Extensions));
        throw new InputException($"'{path}' has {(ending.Length == 0 ? "no ending" : $"the ending '{ending}'")}; the endings are {known}");
    }

    /// <summary>Writes a score to files. All paths are checked first, and each file is written whole or not at all.</summary>
    /// <param name="score">The score.</param>
    /// <param name="paths">The files.</param>
    /// <param name="force">Whether to replace files that exist.</param>
    /// <param name="terminal">Where the files are named.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="asWanted">Puts options into a format; without it the formats have their defaults.</param>
    public static void WriteAll(Score score, IReadOnlyList<string> paths, bool force, Terminal terminal, CancellationToken cancellation, Func<IScoreFormat, IScoreFormat>? asWanted = null)
    {
        var formats = paths.Select(Of).Select(f => asWanted is null ? f : asWanted(f)).ToList();
        for (var i = 0; i < paths.Count; i++)
        {
            RefuseUnwritable(paths[i], force);
            if (paths.Take(i).Any(p => Path.GetFullPath(p) == Path.GetFullPath(paths[i])))
            {
                throw new InputException($"--out names {paths[i]} twice");
            }
        }

        for (var i = 0; i < paths.Count; i++)
        {
            var (format, path) = (formats[i], paths[i]);
            terminal.Working($"writing {path}", () => format.Save(score, path, force, cancellation));
            terminal.Out.WriteLine($"wrote {paths[i]} ({formats[i].Name})");
        }
    }

    public static void RefuseUnwritable(string path, bool force)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        if (!Directory.Exists(folder))
        {
            throw new InputException($"the folder {folder} does not exist; make it, or choose another");
        }

        if (!force && File.Exists(path))
        {
            throw new InputException($"{path} exists; choose another name, or add --force");
        }
    }
}

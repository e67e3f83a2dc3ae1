using Warmup.Audio;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Samples;
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

    /// <summary>A file that holds a score in a format.</summary>
    /// <param name="path">The file.</param>
    /// <param name="format">Its format.</param>
    /// <param name="score">The score.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="progress">Hears which file is being written, and how much of a sound file is done; or <see langword="null"/>.</param>
    public static (string Path, Action<Stream> Write) File(string path, IScoreFormat format, Score score, CancellationToken cancellation, Progress? progress = null) => (path, stream =>
    {
        progress?.Begin($"writing {path}");
        var counted = progress is not null && format is WavFormat wav ? new CountedStream(stream, ExpectedBytes(score, wav.Options), progress.Reach) : stream;
        format.Write(score, counted, cancellation);
    });

    /// <summary>
    /// Writes files together: the last is put in its place only when all have been made, so that a format that refuses its content leaves no file.
    /// </summary>
    /// <param name="files">The files, and what makes each.</param>
    /// <param name="force">Whether to replace files that exist.</param>
    public static void WriteTogether(IReadOnlyList<(string Path, Action<Stream> Write)> files, bool force)
    {
        for (var i = 0; i < files.Count; i++)
        {
            RefuseUnwritable(files[i].Path, force);
            if (files.Take(i).Any(f => Path.GetFullPath(f.Path) == Path.GetFullPath(files[i].Path)))
            {
                throw new InputException($"{files[i].Path} is named twice; name each file once");
            }
        }

        foreach (var folder in files.Select(f => Path.GetDirectoryName(Path.GetFullPath(f.Path))!).Distinct())
        {
            RemoveLeftovers(folder);
        }

        WriteWhole(files, force);
    }

    /// <summary>Removes what killed processes left half-written in a folder.</summary>
    public static void RemoveLeftovers(string folder) => AtomicFile.RemoveLeftovers(folder, All.SelectMany(f => f.Extensions));

    /// <summary>Writes files together: where one refuses, none is left or replaced.</summary>
    public static void WriteWhole(IReadOnlyList<(string Path, Action<Stream> Write)> files, bool force)
    {
        From(0);

        // Each file stays under its temporary name until those after it are made.
        void From(int index)
        {
            if (index < files.Count)
            {
                AtomicFile.Write(
                    files[index].Path,
                    stream =>
                    {
                        files[index].Write(stream);
                        From(index + 1);
                    },
                    force);
            }
        }
    }

    // The header and the markers are small beside the sound.
    private static double ExpectedBytes(Score score, WavOptions options) =>
        score.Seconds.ToDouble() * options.SampleRate * sizeof(short) * (options.Channels == WavChannels.Mono ? 1 : 2);

    public static void RefuseUnwritable(string path, bool force)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        if (!Directory.Exists(folder))
        {
            throw new InputException($"the folder {folder} does not exist; make it, or choose another");
        }

        if (!force && System.IO.File.Exists(path))
        {
            throw new InputException($"{path} exists; choose another name, or add --force");
        }
    }
}

using System.Globalization;

namespace Warmup;

/// <summary>Writes files whole or not at all, and replaces an existing one only where the caller allows it.</summary>
public static class AtomicFile
{
    // Writers of one file at the same time, and files left over by writers that were killed (the project's own bound).
    private const int MostTemporary = 100;

    /// <summary>Writes a file: first under a temporary name beside it, then moved into place.</summary>
    /// <param name="path">The file; its folder must exist.</param>
    /// <param name="write">Writes the content. When it throws, no file is left.</param>
    /// <param name="overwrite">Whether an existing file may be replaced.</param>
    /// <exception cref="IOException">The file exists and may not be replaced, or the disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    /// <remarks>The content can be of any size; what <paramref name="write"/> throws is passed on.</remarks>
    public static void Write(string path, Action<Stream> write, bool overwrite = false)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(write);
        var full = Path.GetFullPath(path);
        RefuseExisting(full, overwrite);
        var stream = Begin(full, out var temporary);
        var made = true;
        try
        {
            using (stream)
            {
                write(stream);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, full, overwrite);
            made = false;
        }
        finally
        {
            if (made)
            {
                File.Delete(temporary);
            }
        }
    }

    /// <summary>Writes a score to a file, whole or not at all.</summary>
    /// <param name="format">The format.</param>
    /// <param name="score">The score.</param>
    /// <param name="path">The file; its folder must exist.</param>
    /// <param name="overwrite">Whether an existing file may be replaced.</param>
    /// <param name="cancellationToken">Stops the work and leaves no file.</param>
    /// <exception cref="IOException">The file exists and may not be replaced, or the disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    /// <exception cref="ExportException">The format cannot hold the score.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Save(this IScoreFormat format, Score score, string path, bool overwrite = false, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(format);
        ArgumentNullException.ThrowIfNull(score);
        Write(path, stream => format.Write(score, stream, cancellationToken), overwrite);
    }

    /// <summary>Writes a score to a file on a thread of the pool, whole or not at all.</summary>
    /// <param name="format">The format.</param>
    /// <param name="score">The score.</param>
    /// <param name="path">The file; its folder must exist.</param>
    /// <param name="overwrite">Whether an existing file may be replaced.</param>
    /// <param name="cancellationToken">Stops the work and leaves no file.</param>
    /// <exception cref="IOException">The file exists and may not be replaced, or the disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    /// <exception cref="ExportException">The format cannot hold the score.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Task SaveAsync(this IScoreFormat format, Score score, string path, bool overwrite = false, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(format);
        ArgumentNullException.ThrowIfNull(score);
        ArgumentException.ThrowIfNullOrEmpty(path);
        return Task.Run(() => format.Save(score, path, overwrite, cancellationToken), cancellationToken);
    }

    /// <summary>
    /// Begins a new file beside the one that is wanted. A name that is taken belongs to another writer, or was left over by a process that
    /// was killed: it is not touched, and the next name is tried.
    /// </summary>
    private static FileStream Begin(string full, out string temporary)
    {
        var (folder, name) = (Path.GetDirectoryName(full)!, Path.GetFileName(full));
        temporary = Path.Combine(folder, $".{name}.partial");
        for (var number = 2; ; number++)
        {
            try
            {
                return new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None);
            }
            catch (IOException) when (number <= MostTemporary && File.Exists(temporary))
            {
                temporary = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $".{name}.{number}.partial"));
            }
        }
    }

    private static void RefuseExisting(string path, bool overwrite)
    {
        if (Directory.Exists(path))
        {
            throw new IOException($"{path} is a folder; name a file");
        }

        if (!overwrite && File.Exists(path))
        {
            throw new IOException($"{path} exists; choose another name or allow overwriting");
        }
    }
}

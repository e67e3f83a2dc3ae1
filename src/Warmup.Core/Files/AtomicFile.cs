using System.Globalization;

namespace Warmup;

/// <summary>Writes files whole or not at all, and replaces an existing one only where the caller allows it.</summary>
public static class AtomicFile
{
    private const string Ending = ".partial";

    // Writers of one file at the same time (the project's own bound).
    private const int MostTemporary = 100;

    /// <summary>Writes a file: first under a temporary name beside it, then moved into place.</summary>
    /// <param name="path">The file; its folder must exist.</param>
    /// <param name="write">Writes the content. When it throws, no file is left.</param>
    /// <param name="overwrite">Whether an existing file may be replaced.</param>
    /// <exception cref="IOException">The file exists and may not be replaced, or the disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    /// <remarks>
    /// The content can be of any size; what <paramref name="write"/> throws is passed on. What killed writers of the same file left beside it is
    /// removed.
    /// </remarks>
    public static void Write(string path, Action<Stream> write, bool overwrite = false)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(write);
        var full = Path.GetFullPath(path);
        RefuseExisting(full, overwrite);
        using var stream = Begin(full, out var temporary);
        var made = true;
        try
        {
            write(stream);
            stream.Flush(flushToDisk: true);

            // The file is still held while it moves, so that nobody takes it for a leftover.
            File.Move(temporary, full, overwrite);
            made = false;
        }
        finally
        {
            if (made)
            {
                stream.Dispose();
                File.Delete(temporary);
            }
        }
    }

    /// <summary>Removes the half-written files that killed processes left in a folder. A file that is being written is not touched.</summary>
    /// <param name="folder">The folder; its subfolders are not searched.</param>
    /// <param name="endings">The endings of the files that were to be written, such as <c>.mid</c>; half-written files of other kinds stay.</param>
    /// <exception cref="IOException">The folder does not exist or cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be read.</exception>
    public static void RemoveLeftovers(string folder, IEnumerable<string> endings)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentNullException.ThrowIfNull(endings);
        var kinds = endings.ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var path in Directory.EnumerateFiles(folder, $".*{Ending}", new EnumerationOptions { AttributesToSkip = FileAttributes.Directory }))
        {
            var name = Path.GetFileNameWithoutExtension(path);
            var number = Path.GetExtension(name);
            var whole = number.Length > 1 && number.AsSpan(1).IndexOfAnyExceptInRange('0', '9') < 0 ? Path.GetFileNameWithoutExtension(name) : name;
            if (kinds.Contains(Path.GetExtension(whole)))
            {
                TryRemove(path);
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

    /// <summary>Begins a new file beside the one that is wanted. A name that is taken belongs to another writer: the next name is tried.</summary>
    private static FileStream Begin(string full, out string temporary)
    {
        var (folder, name) = (Path.GetDirectoryName(full)!, Path.GetFileName(full));
        temporary = Path.Combine(folder, $".{name}{Ending}");
        for (var number = 2; ; number++)
        {
            try
            {
                TryRemove(temporary);
                var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.Delete);
                if (File.Exists(temporary))
                {
                    return stream;
                }

                // Another writer took it for a leftover before it was held.
                stream.Dispose();
            }
            catch (IOException) when (number <= MostTemporary && File.Exists(temporary))
            {
            }

            temporary = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $".{name}.{number}{Ending}"));
        }
    }

    /// <summary>Removes a half-written file unless somebody writes it: a writer does not share its file, so only one that nobody holds can be opened.</summary>
    private static void TryRemove(string path)
    {
        if (!File.Exists(path))
        {
            return;
        }

        try
        {
            using (new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose))
            {
            }
        }
        catch (Exception held) when (held is IOException or UnauthorizedAccessException)
        {
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

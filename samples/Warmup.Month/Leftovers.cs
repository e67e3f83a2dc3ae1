namespace Warmup.Month;

/// <summary>Half files that a crash or a power cut left behind; a run that was stopped in good order leaves none.</summary>
internal static class Leftovers
{
    /// <summary>Removes the half of a file, unless another run is just writing it.</summary>
    /// <param name="path">The whole file's path.</param>
    /// <exception cref="IOException">Another run is writing the file.</exception>
    public static void Remove(string path)
    {
        var partial = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, $".{Path.GetFileName(path)}.partial");
        if (!File.Exists(partial))
        {
            return;
        }

        // A writer holds its file without sharing it: only a file that nobody writes can be opened so.
        using (new FileStream(partial, FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
        }

        File.Delete(partial);
    }
}

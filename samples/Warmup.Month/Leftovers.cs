namespace Warmup.Month;

/// <summary>Half-written files from a crash or a power cut; a run that was stopped normally leaves none.</summary>
internal static class Leftovers
{
    /// <summary>Removes a half-written file, unless another run is writing it now.</summary>
    /// <param name="path">The whole file's path.</param>
    /// <exception cref="IOException">Another run is writing the file.</exception>
    public static void Remove(string path)
    {
        var partial = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, $".{Path.GetFileName(path)}.partial");
        if (!File.Exists(partial))
        {
            return;
        }

        // A writer does not share its file: only a file that nobody is writing can be opened like this.
        using (new FileStream(partial, FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
        }

        File.Delete(partial);
    }
}

using Warmup.Takes;

namespace Warmup.Cli;

/// <summary>Opens the recordings that options name.</summary>
internal static class TakeFile
{
    /// <summary>Opens a recording; each refusal names the option and the file.</summary>
    public static SoundSource Open(string option, string path)
    {
        const string Wanted = "a recording such as take.wav";
        if (path.Length == 0)
        {
            throw new InputException($"{option} is empty; name {Wanted}");
        }

        if (Directory.Exists(path))
        {
            throw new InputException($"{option}: {path} is a folder; name {Wanted}");
        }

        try
        {
            return SoundFile.Open(path);
        }
        catch (SoundException broken)
        {
            throw new InputException($"{option}: {path}: {broken.Message}");
        }
        catch (Exception none) when (none is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException($"{option}: there is no file {path}; name {Wanted}");
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new InputException($"{option}: {path} cannot be read; name {Wanted}");
        }
    }
}

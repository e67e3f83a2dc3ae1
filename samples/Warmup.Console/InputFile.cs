namespace Warmup.Cli;

/// <summary>Reads the files that options name.</summary>
internal static class InputFile
{
    /// <summary>What a file holds. Each refusal names the option and the file.</summary>
    /// <param name="option">The option.</param>
    /// <param name="path">The file.</param>
    /// <param name="largest">The most bytes that are read.</param>
    /// <param name="wanted">What the option should name, for the case that there is no such file.</param>
    /// <param name="read">Reads the bytes.</param>
    /// <exception cref="InputException">The file is too large, cannot be opened, or does not hold what is wanted.</exception>
    public static T Read<T>(string option, string path, int largest, string wanted, Func<byte[], T> read)
    {
        byte[] bytes;
        try
        {
            if (new FileInfo(path) is { Exists: true } file && file.Length > largest)
            {
                throw new InputException($"{option}: {path} has {file.Length} bytes; the most is {largest}");
            }

            bytes = File.ReadAllBytes(path);
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            throw new InputException($"{option}: {path} cannot be read ({unreadable.Message}); name {wanted}");
        }

        try
        {
            return read(bytes);
        }
        catch (WarmupFormatException broken)
        {
            throw new InputException($"{option}: {path}, {Describe(broken.Error)}");
        }
    }

    /// <summary>The error with its place; what is wrong with a file as a whole has none.</summary>
    private static string Describe(TextError error) => error is { Line: 1, Column: 1 } ? error.Message : error.ToString();
}

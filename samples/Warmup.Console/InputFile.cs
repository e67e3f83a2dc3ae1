using System.Text;

namespace Warmup.Cli;

/// <summary>Reads the files that options name. No more is read than a file of its kind may hold, whatever the path leads to.</summary>
internal static class InputFile
{
    /// <summary>What a file holds. Each refusal names the option and the file.</summary>
    /// <param name="option">The option.</param>
    /// <param name="path">The file.</param>
    /// <param name="largest">The most bytes that are read.</param>
    /// <param name="wanted">What the option should name, for the case that there is no such file.</param>
    /// <param name="read">Reads the bytes.</param>
    /// <param name="isText">Whether the file is text, which is given in UTF-8 whatever it was saved in.</param>
    /// <exception cref="InputException">The file is too large, cannot be opened, or does not hold what is wanted.</exception>
    public static T Read<T>(string option, string path, int largest, string wanted, Func<byte[], T> read, bool isText = true)
    {
        var bytes = Bytes(option, path, largest, wanted);
        bytes = isText ? AsUtf8(bytes) : bytes;
        try
        {
            return read(bytes);
        }
        catch (WarmupFormatException broken)
        {
            throw new InputException($"{option}: {path}, {Describe(broken.Error)}");
        }
    }

    private static byte[] Bytes(string option, string path, int largest, string wanted)
    {
        if (path.Length == 0)
        {
            throw new InputException($"{option} is empty; name {wanted}");
        }

        if (Directory.Exists(path))
        {
            throw new InputException($"{option}: {path} is a folder; name {wanted}");
        }

        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 1);
            using var bytes = new MemoryStream();
            var part = new byte[1 << 16];
            while (file.Read(part) is var count and > 0)
            {
                bytes.Write(part, 0, count);
                if (bytes.Length > largest)
                {
                    throw new InputException($"{option}: {path} is too long; the most is {largest} bytes");
                }
            }

            return bytes.ToArray();
        }
        catch (Exception none) when (none is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException($"{option}: there is no file {path}; name {wanted}");
        }
        catch (UnauthorizedAccessException)
        {
            throw new InputException($"{option}: {path} may not be read; ask for leave to read it, or name {wanted}");
        }
        catch (Exception unreadable) when (unreadable is IOException or ArgumentException or NotSupportedException)
        {
            throw new InputException($"{option}: {path} cannot be read; name {wanted}");
        }
    }

    /// <summary>Text in UTF-16, as some editors and spreadsheets save it, in UTF-8. Its byte-order mark tells it.</summary>
    private static byte[] AsUtf8(byte[] bytes) => bytes switch
    {
        [0xFF, 0xFE, ..] => Encoding.Convert(Encoding.Unicode, Encoding.UTF8, bytes, 2, bytes.Length - 2),
        [0xFE, 0xFF, ..] => Encoding.Convert(Encoding.BigEndianUnicode, Encoding.UTF8, bytes, 2, bytes.Length - 2),
        _ => bytes,
    };

    /// <summary>The error with its place; what is wrong with a file as a whole has none.</summary>
    private static string Describe(TextError error) => error is { Line: 1, Column: 1 } ? error.Message : error.ToString();
}

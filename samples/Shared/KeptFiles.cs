namespace Warmup.Samples;

/// <summary>A file that is there holds something else than would be written.</summary>
internal sealed class OtherContentException(string message) : IOException(message);

/// <summary>
/// The files that are there when stopped work is taken up again: one that holds just what would be written is kept, any other is refused by name.
/// </summary>
internal static class KeptFiles
{
    private const int BufferBytes = 64 * 1024;

    /// <summary>Whether a file is there, with just the bytes that would be written. Nothing is written, and no more than a buffer is held.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes what the file should hold; it is not called where there is no file.</param>
    /// <param name="otherwise">What to say if the file holds something else; its name comes first.</param>
    /// <exception cref="OtherContentException">The file holds something else.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static bool Has(string path, Action<Stream> write, string otherwise)
    {
        if (!File.Exists(path))
        {
            return false;
        }

        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, BufferBytes, FileOptions.SequentialScan);
        using var comparison = new Comparison(file);
        write(comparison);
        return comparison.IsEqual ? true : throw new OtherContentException($"{path} {otherwise}");
    }

    /// <summary>Takes the bytes that would be written and reads as many from the file.</summary>
    private sealed class Comparison(FileStream file) : OneWayStream
    {
        private readonly byte[] _buffer = new byte[BufferBytes];
        private bool _differs;

        public bool IsEqual => !_differs && file.ReadByte() < 0;

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            while (!buffer.IsEmpty && !_differs)
            {
                var length = Math.Min(buffer.Length, _buffer.Length);
                var read = file.ReadAtLeast(_buffer.AsSpan(0, length), length, throwOnEndOfStream: false);
                _differs = read < length || !buffer[..length].SequenceEqual(_buffer.AsSpan(0, length));
                buffer = buffer[length..];
            }
        }
    }
}

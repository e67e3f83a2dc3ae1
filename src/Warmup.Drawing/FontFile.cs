namespace Warmup.Drawing;

/// <summary>A font: the content of a TrueType or OpenType file and the name it goes by in messages.</summary>
/// <remarks>Immutable; two are equal when name and content are.</remarks>
public sealed class FontFile : IEquatable<FontFile>
{
    // A file far larger than any font is a mistake, and must not fill the memory.
    private const long LargestFile = 64L << 20;

    private readonly byte[] _content;

    private FontFile(string name, byte[] content)
    {
        Name = name;
        _content = content;
        using var data = SkiaSharp.SKData.CreateCopy(content);
        using var face = SkiaSharp.SKTypeface.FromData(data);
        if (face is null || face.GlyphCount == 0)
        {
            throw new ArgumentException($"{name} is not a TrueType or OpenType font");
        }
    }

    /// <summary>The name: the file's, without its folder.</summary>
    public string Name { get; }

    /// <summary>The content of the file.</summary>
    public ReadOnlyMemory<byte> Content => _content;

    /// <summary>Reads a font file.</summary>
    /// <param name="path">The file, at most 64 MiB.</param>
    /// <exception cref="FileNotFoundException">There is no such file; the message names it.</exception>
    /// <exception cref="ArgumentException">The file is too large, or is not a font.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static FontFile Load(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var file = new FileInfo(path);
        if (!file.Exists)
        {
            throw new FileNotFoundException($"there is no font file {path}", path);
        }

        return file.Length <= LargestFile
            ? new FontFile(file.Name, File.ReadAllBytes(path))
            : throw new ArgumentException($"the font file {path} has {file.Length} bytes; the most is {LargestFile}", nameof(path));
    }

    /// <summary>A font from memory.</summary>
    /// <param name="name">The name for messages.</param>
    /// <param name="content">The content of a font file; it is copied.</param>
    /// <exception cref="ArgumentException">The content is not a font, or the name is empty.</exception>
    public static FontFile FromBytes(string name, ReadOnlySpan<byte> content)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        return new FontFile(name, content.ToArray());
    }

    /// <inheritdoc/>
    public bool Equals(FontFile? other) => other is not null && Name == other.Name && _content.AsSpan().SequenceEqual(other._content);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as FontFile);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, _content.Length);

    /// <summary>The name.</summary>
    public override string ToString() => OneLine.Of(Name);
}

namespace Warmup.Drawing;

/// <summary>The fonts that come with the library, and fonts of your own.</summary>
/// <remarks>The fonts are under the SIL Open Font License 1.1, whose text is embedded beside them as <c>OFL.txt</c>.</remarks>
public static class DrawingFonts
{
    private static readonly string[] Names =
    [
        "NotoSans-Regular.ttf", "NotoSansDevanagari-Regular.ttf", "NotoSansTamil-Regular.ttf", "NotoSansTelugu-Regular.ttf",
        "NotoSansKannada-Regular.ttf", "NotoSansMalayalam-Regular.ttf",
    ];

    /// <summary>Noto Sans for Latin, Greek and Cyrillic, and for Devanagari, Tamil, Telugu, Kannada and Malayalam, so that all machines draw alike.</summary>
    public static ValueList<FontFile> Noto => Names.Select(Embedded).ToValueList();

    /// <summary>Reads font files of your own, in the order in which they are used.</summary>
    /// <param name="paths">The files.</param>
    /// <exception cref="FileNotFoundException">A file does not exist; the message names it.</exception>
    /// <exception cref="ArgumentException">A file is too large, or is not a font.</exception>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public static ValueList<FontFile> Load(params IReadOnlyList<string> paths)
    {
        ArgumentNullException.ThrowIfNull(paths);
        return paths.Select(FontFile.Load).ToValueList();
    }

    private static FontFile Embedded(string name)
    {
        using var stream = typeof(DrawingFonts).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the font {name} is missing from the assembly");
        var content = new byte[stream.Length];
        stream.ReadExactly(content);
        return FontFile.FromBytes(name, content);
    }
}

using System.Globalization;

namespace Warmup.Drawing;

/// <summary>What is drawn of a score, and with what: the base of <see cref="SheetOptions"/>.</summary>
/// <remarks>Immutable, value equality.</remarks>
public abstract record DrawingOptions
{
    private readonly int _dotsPerInch = 150;
    private readonly int? _page;

    private protected DrawingOptions()
    {
    }

    /// <summary>The fonts, in the order in which they are asked for a glyph; <see cref="DrawingFonts.Noto"/> by default.</summary>
    public ValueList<FontFile> Fonts { get; init; } = DrawingFonts.Noto;

    /// <summary>The dots an inch of a PNG, 36 to 600; 150 by default. Other formats have none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int DotsPerInch
    {
        get => _dotsPerInch;
        init => _dotsPerInch = value is >= 36 and <= 600 ? value : throw Outside(nameof(DotsPerInch), value, "36 and 600");
    }

    /// <summary>The only page that is drawn, counted from 1; <see langword="null"/>, the default, draws all.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies below 1.</exception>
    public int? Page
    {
        get => _page;
        init => _page = value is null or >= 1 ? value : throw Outside(nameof(Page), value.Value, "1 and the number of pages");
    }

    /// <summary>What is drawn, in a word, for the format's name.</summary>
    internal abstract string Subject { get; }

    /// <summary>Draws all pages.</summary>
    internal abstract PageSet Draw(Score score, TextShaper shaper, CancellationToken cancellation);

    /// <summary>The pages that were asked for.</summary>
    internal PageSet Pages(Score score, TextShaper shaper, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(score);
        var all = Draw(score, shaper, cancellation);
        return Page is not { } page ? all
            : page <= all.Pages.Count ? all with { Pages = [all.Pages[page - 1]] }
            : throw new ExportException(string.Create(CultureInfo.InvariantCulture, $"Page must be between 1 and {all.Pages.Count}, the number of pages, not {page}"));
    }

    private static ArgumentOutOfRangeException Outside(string name, int value, string range) =>
        new(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be between {range}, not {value}"));
}

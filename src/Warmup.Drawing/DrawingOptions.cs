using System.Globalization;

namespace Warmup.Drawing;

/// <summary>What is drawn of a score, and with what: the base of <see cref="SheetOptions"/> and <see cref="ContourOptions"/>.</summary>
/// <remarks>Immutable, value equality.</remarks>
public abstract record DrawingOptions
{
    // The project's own bounds.
    private const int FewestDotsPerInch = 36;
    private const int MostDotsPerInch = 600;

    private readonly ValueList<FontFile> _fonts = DrawingFonts.Noto;
    private readonly int _dotsPerInch = 150;
    private readonly int? _page;

    private protected DrawingOptions()
    {
    }

    /// <summary>The fonts, at least one; a character is drawn in the first that has a glyph for it. <see cref="DrawingFonts.Noto"/> by default.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    /// <exception cref="ArgumentNullException">A font is missing.</exception>
    public ValueList<FontFile> Fonts
    {
        get => _fonts;
        init
        {
            if (value.IsEmpty)
            {
                throw new ArgumentException("drawing needs at least 1 font, not 0", nameof(Fonts));
            }

            foreach (var font in value)
            {
                Require.NotNull(font, nameof(Fonts));
            }

            _fonts = value;
        }
    }

    /// <summary>The dots an inch of a PNG, 36 to 600; 150 by default. Other formats have no dots.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int DotsPerInch
    {
        get => _dotsPerInch;
        init => _dotsPerInch = Require.InRange(value, FewestDotsPerInch, MostDotsPerInch, nameof(DotsPerInch));
    }

    /// <summary>The one page to draw, counted from 1; <see langword="null"/>, the default, draws all.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies below 1.</exception>
    public int? Page
    {
        get => _page;
        init => _page = value is null or >= 1
            ? value
            : throw new ArgumentOutOfRangeException(
                nameof(Page), value, string.Create(CultureInfo.InvariantCulture, $"Page must be between 1 and the number of pages, not {value}"));
    }

    /// <summary>What is drawn, in one word for the format's name.</summary>
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

    /// <summary>What is drawn, and how.</summary>
    public sealed override string ToString() => OneLine.Of(string.Create(
        CultureInfo.InvariantCulture, $"{Subject}, {(Page is { } page ? $"page {page}" : "all pages")}, {DotsPerInch} dots an inch, fonts {string.Join(", ", Fonts)}"));
}

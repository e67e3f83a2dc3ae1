namespace Warmup.Drawing;

/// <summary>Something on a page, in points (1/72 inch) from its upper left corner.</summary>
/// <param name="Kind">What it stands for, in a word: the class of the element in SVG.</param>
internal abstract record Mark(string Kind);

/// <summary>A text; x is its beginning, y its baseline.</summary>
internal sealed record TextMark(string Kind, double X, double Y, double Size, ShapedText Text, string Colour) : Mark(Kind);

/// <summary>A straight stroke.</summary>
internal sealed record StrokeMark(string Kind, double X1, double Y1, double X2, double Y2, double Width, string Colour, double Dash = 0) : Mark(Kind);

/// <summary>A filled rectangle.</summary>
internal sealed record BoxMark(string Kind, double X, double Y, double Width, double Height, string Colour) : Mark(Kind);

/// <summary>A filled disc.</summary>
internal sealed record DotMark(string Kind, double X, double Y, double Radius, string Colour) : Mark(Kind);

/// <summary>A page: its size in points and what is on it, the lowest first.</summary>
internal sealed class Page(double width, double height)
{
    public const double ShortSide = 210 / 25.4 * 72;
    public const double LongSide = 297 / 25.4 * 72;

    public double Width => width;

    public double Height => height;

    public List<Mark> Marks { get; } = [];
}

/// <summary>All pages of a drawing.</summary>
/// <param name="Title">The title, whole.</param>
/// <param name="Description">What the drawing is, for whoever cannot see it.</param>
/// <param name="Pages">The pages, at least one, all of one size.</param>
internal sealed record PageSet(string Title, string Description, List<Page> Pages);

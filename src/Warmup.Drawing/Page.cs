namespace Warmup.Drawing;

/// <summary>A page: its size in points, and the shapes on it; later ones cover earlier ones.</summary>
internal sealed class Page(double width, double height)
{
    public const double ShortSide = 210 / 25.4 * 72;
    public const double LongSide = 297 / 25.4 * 72;

    public double Width => width;

    public double Height => height;

    public List<Shape> Shapes { get; } = [];
}

/// <summary>All pages of a drawing.</summary>
/// <param name="Title">The title.</param>
/// <param name="Description">What the drawing shows, for those who cannot see it.</param>
/// <param name="Pages">The pages, at least one, all of one size.</param>
internal sealed record PageSet(string Title, string Description, List<Page> Pages);

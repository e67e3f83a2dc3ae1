namespace Warmup.Drawing;

/// <summary>A shape on a page, in points (1/72 inch) from its upper left corner.</summary>
/// <param name="Kind">What it stands for, in a word: the class of the element in SVG.</param>
internal abstract record Shape(string Kind);

/// <summary>A text; x is its beginning, y its baseline.</summary>
internal sealed record TextShape(string Kind, double X, double Y, double Size, ShapedText Text, string Colour) : Shape(Kind);

/// <summary>A straight stroke.</summary>
internal sealed record StrokeShape(string Kind, double X1, double Y1, double X2, double Y2, double Width, string Colour, double Dash = 0) : Shape(Kind);

/// <summary>Straight strokes from point to point; dashes go on through them.</summary>
internal sealed record CurveShape(string Kind, ValueList<(double X, double Y)> Points, double Width, string Colour, double Dash = 0) : Shape(Kind);

/// <summary>A filled rectangle.</summary>
internal sealed record BoxShape(string Kind, double X, double Y, double Width, double Height, string Colour) : Shape(Kind);

/// <summary>A filled disc.</summary>
internal sealed record DotShape(string Kind, double X, double Y, double Radius, string Colour) : Shape(Kind);

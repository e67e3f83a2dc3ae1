using System.Globalization;

namespace Warmup.Reading;

/// <summary>A place in a file that was read. Immutable, compared by value; <c>default</c> is the file as a whole.</summary>
/// <param name="Kind">What the numbers count.</param>
/// <param name="Number">The measure or the line of text, counted from 1; or the byte, counted from 0. Measures count as they follow each other, whatever numbers they show.</param>
/// <param name="Within">The quarter note within the measure, or the column, counted from 1; 0 where none is meant.</param>
/// <param name="Part">The part, or <see langword="null"/>.</param>
public readonly record struct PiecePlace(PlaceKind Kind, int Number, Rational Within = default, string? Part = null)
{
    /// <summary>The place in words: <c>Voice, measure 3, quarter 2 1/2</c>.</summary>
    public override string ToString()
    {
        var part = Part is { Length: > 0 } ? $"{OneLine.Cut(Part, 40)}, " : string.Empty;
        return Kind switch
        {
            PlaceKind.Measure => string.Create(CultureInfo.InvariantCulture, $"{part}measure {Number}{(Within.Sign > 0 ? $", quarter {Within}" : string.Empty)}"),
            PlaceKind.TextLine => string.Create(CultureInfo.InvariantCulture, $"{part}line {Number}{(Within.Sign > 0 ? $", column {Within}" : string.Empty)}"),
            PlaceKind.Byte => string.Create(CultureInfo.InvariantCulture, $"{part}byte {Number}"),
            _ => part.Length == 0 ? "the file" : part[..^2],
        };
    }
}

namespace Warmup;

/// <summary>The families of the catalogue.</summary>
public enum ScaleFamily
{
    /// <summary>A parent scale (melakarta).</summary>
    Parent,

    /// <summary>A scale derived from a parent (janya).</summary>
    Derived,

    /// <summary>A thaat of Hindustani music.</summary>
    Thaat,

    /// <summary>A Western scale or mode.</summary>
    Western,

    /// <summary>A scale that a caller added.</summary>
    Custom,
}

/// <summary>A row of the catalogue.</summary>
/// <param name="Scale">The scale.</param>
/// <param name="Family">Its family.</param>
/// <param name="Parent">The number of its parent scale, its own number for a parent scale, or <see langword="null"/>.</param>
/// <param name="Spellings">Other names it is found by.</param>
/// <param name="Source">How sure the row is: where its notes come from.</param>
public sealed record CatalogueEntry(Scale Scale, ScaleFamily Family, int? Parent, ValueList<string> Spellings, string Source)
{
    /// <summary>The number of different notes in the ascent and the descent, upper tonic not counted: <c>5</c> or <c>5-7</c>.</summary>
    public string NoteCounts
    {
        get
        {
            var up = Count(Scale.Ascent);
            var down = Count(Scale.Descent);
            return up == down ? up : $"{up}-{down}";
        }
    }

    private static string Count(ValueList<ScaleTone> tones) =>
        ((IEnumerable<ScaleTone>)tones).Select(t => t.Degree).Distinct().Count().ToString(System.Globalization.CultureInfo.InvariantCulture);
}

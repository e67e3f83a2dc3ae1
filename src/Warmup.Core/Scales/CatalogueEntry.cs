using System.Globalization;

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
    /// <summary>A parent scale's name in IAST, the scholarly transliteration that the katapayadi code reads; otherwise <see langword="null"/>.</summary>
    public string? IastName { get; init; }

    /// <summary>A parent scale's chakra, the group of six it stands in (Indu, Netra, ...); otherwise <see langword="null"/>.</summary>
    public string? Chakra { get; init; }

    /// <summary>Why a parent scale's name breaks the general rule of the katapayadi code, or <see langword="null"/> where it keeps it.</summary>
    public string? CodeException { get; init; }

    /// <summary>The notes of the scale that its parent has not, from low to high.</summary>
    public ValueList<Degree> ForeignNotes { get; init; }

    /// <summary>Audava, shadava-sampurna and so on; <see langword="null"/> for scales that are not made of svaras.</summary>
    public ScaleKind? Kind => Scale.Kind;

    /// <summary>The number of different notes in the ascent and the descent, upper tonic not counted: <c>5</c> or <c>5-7</c>.</summary>
    public string NoteCounts => NotesUp == NotesDown
        ? NotesUp.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{NotesUp}-{NotesDown}");

    /// <summary>The number of different notes in the ascent.</summary>
    public int NotesUp => Count(Scale.Ascent);

    /// <summary>The number of different notes in the descent.</summary>
    public int NotesDown => Count(Scale.Descent);

    private static int Count(ValueList<ScaleTone> tones) => ((IEnumerable<ScaleTone>)tones).Select(t => t.Degree).Distinct().Count();
}

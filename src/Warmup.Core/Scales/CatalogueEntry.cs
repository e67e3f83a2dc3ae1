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
/// <remarks>Immutable.</remarks>
public sealed class CatalogueEntry
{
    internal CatalogueEntry(Scale scale, ScaleFamily family, int? parent, ValueList<string> spellings, string source)
    {
        Scale = scale;
        Family = family;
        Parent = parent;
        Spellings = spellings;
        Source = source;
    }

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>Its family.</summary>
    public ScaleFamily Family { get; }

    /// <summary>The number of its parent scale, 1 to 72; its own number for a parent scale, <see langword="null"/> where it has no parent.</summary>
    public int? Parent { get; }

    /// <summary>Other names it is found by.</summary>
    public ValueList<string> Spellings { get; }

    /// <summary>Where its notes come from, and so how sure the row is.</summary>
    public string Source { get; }

    /// <summary>A parent scale's name in IAST, the scholarly transliteration that the katapayadi code reads; otherwise <see langword="null"/>.</summary>
    public string? IastName { get; internal init; }

    /// <summary>A parent scale's chakra, the group of six it stands in (Indu, Netra, ...); otherwise <see langword="null"/>.</summary>
    public string? Chakra { get; internal init; }

    /// <summary>Why a parent scale's name breaks the general rule of the katapayadi code, or <see langword="null"/> where it keeps it.</summary>
    public string? CodeException { get; internal init; }

    /// <summary>The notes of the scale that its parent lacks, from low to high.</summary>
    public ValueList<Degree> ForeignNotes { get; internal init; }

    /// <summary>Audava, shadava-sampurna and so on; <see langword="null"/> where a note is not a svara or a list has fewer than four letters.</summary>
    public ScaleKind? Kind => Scale.Kind;

    /// <summary>The number of different notes in the ascent and the descent, upper tonic not counted: <c>5</c> or <c>5-7</c>.</summary>
    public string NoteCounts => NotesUp == NotesDown
        ? NotesUp.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{NotesUp}-{NotesDown}");

    /// <summary>The number of different notes in the ascent.</summary>
    public int NotesUp => Count(Scale.Ascent);

    /// <summary>The number of different notes in the descent.</summary>
    public int NotesDown => Count(Scale.Descent);

    /// <summary>The name, the family and the parent: <c>Mohanam (derived, parent 28)</c>.</summary>
    public override string ToString()
    {
        var parent = Parent is { } number ? string.Create(CultureInfo.InvariantCulture, $", parent {number}") : string.Empty;
        return $"{Scale.Name} ({Family.ToString().ToLowerInvariant()}{parent})";
    }

    private static int Count(ValueList<ScaleTone> tones) => tones.Select(t => t.Degree).Distinct().Count();
}

using System.Globalization;

namespace Warmup;

/// <summary>What a scale must have to be found. Every condition that is given must hold; none is given by default.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record ScaleQuery
{
    private readonly int? _notesUp;
    private readonly int? _notesDown;
    private readonly int? _parent;
    private readonly ScaleFamily? _family;

    /// <summary>A part of the name or of a usual spelling; case and diacritics are forgiven.</summary>
    public string? Text { get; init; }

    /// <summary>Svaras the scale must have in its ascent or its descent; R2 and G1 are different svaras.</summary>
    public ValueList<Degree> Contains { get; init; }

    /// <summary>Svaras the scale must not have in either list, such as P.</summary>
    public ValueList<Degree> Without { get; init; }

    /// <summary>The pitches of both lists together must be exactly these; here R2 and G1 are one pitch.</summary>
    public ValueList<Degree>? EqualTo { get; init; }

    /// <summary>
    /// The pitches of both lists together must differ from these by one: a pitch more, a pitch less, or one in another's place.
    /// </summary>
    public ValueList<Degree>? OneNoteFrom { get; init; }

    /// <summary>The number of different notes of the ascent, 2 to 12.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int? NotesUp
    {
        get => _notesUp;
        init => _notesUp = value is { } count ? Require.InRange(count, Scale.FewestNotes, Scale.MostNotes, nameof(NotesUp)) : null;
    }

    /// <summary>The number of different notes of the descent, 2 to 12.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int? NotesDown
    {
        get => _notesDown;
        init => _notesDown = value is { } count ? Require.InRange(count, Scale.FewestNotes, Scale.MostNotes, nameof(NotesDown)) : null;
    }

    /// <summary>The number of the parent scale, 1 to 72; the parent itself is found too.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int? Parent
    {
        get => _parent;
        init => _parent = value is { } number ? Require.InRange(number, 1, Melakarta.Count, "the number of a parent scale") : null;
    }

    /// <summary>The kind by letters.</summary>
    public ScaleKind? Kind { get; init; }

    /// <summary>The family.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the families.</exception>
    public ScaleFamily? Family
    {
        get => _family;
        init => _family = value is { } family ? (ScaleFamily)Require.InRange((int)family, (int)ScaleFamily.Parent, (int)ScaleFamily.Custom, nameof(Family)) : null;
    }

    /// <summary>Whether a list zigzags.</summary>
    public bool? IsVakra { get; init; }

    /// <summary>Whether the scale has notes that its parent lacks.</summary>
    public bool? HasForeignNotes { get; init; }

    /// <summary>The conditions that are given: <c>has R2 G3, without P, parent 28</c>; <c>any scale</c> where none is.</summary>
    public override string ToString()
    {
        (string Label, object? Value)[] conditions =
        [
            ("named", Text), ("has", Notes(Contains)), ("without", Notes(Without)), ("equal to", Notes(EqualTo)), ("one note from", Notes(OneNoteFrom)),
            ("notes up", NotesUp), ("notes down", NotesDown), ("parent", Parent), ("kind", Kind), ("family", Family), ("vakra", IsVakra),
            ("foreign notes", HasForeignNotes),
        ];
        var given = conditions.Where(c => c.Value is not null).Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Label} {c.Value}"));
        return string.Join(", ", given) is { Length: > 0 } text ? OneLine.Of(text) : "any scale";
    }

    /// <summary>Whether a row meets every condition but the text, which needs the catalogue.</summary>
    /// <param name="entry">The row.</param>
    internal bool Matches(CatalogueEntry entry)
    {
        var scale = entry.Scale;
        return All(Contains, scale, true)
            && All(Without, scale, false)
            && (EqualTo is not { } equal || PitchSets.Of(scale.Degrees) == PitchSets.Of(equal))
            && (OneNoteFrom is not { } near || PitchSets.DifferByOne(PitchSets.Of(scale.Degrees), PitchSets.Of(near)))
            && (NotesUp is null || NotesUp == entry.NotesUp)
            && (NotesDown is null || NotesDown == entry.NotesDown)
            && (Parent is null || Parent == entry.Parent)
            && (Kind is null || Kind == entry.Scale.Kind)
            && (Family is null || Family == entry.Family)
            && (IsVakra is null || IsVakra == scale.IsVakra)
            && (HasForeignNotes is null || HasForeignNotes == !entry.ForeignNotes.IsEmpty);
    }

    private static string? Notes(ValueList<Degree>? degrees) => degrees is { IsEmpty: false } notes ? string.Join(' ', notes) : null;

    private static bool All(ValueList<Degree> degrees, Scale scale, bool wanted)
    {
        foreach (var degree in degrees)
        {
            if (scale.Contains(degree) != wanted)
            {
                return false;
            }
        }

        return true;
    }
}

public sealed partial class Catalogue
{
    /// <summary>The rows that meet every condition of a query, in the catalogue's order.</summary>
    /// <param name="query">The conditions; a query without any finds all.</param>
    /// <exception cref="ArgumentNullException"><paramref name="query"/> is <see langword="null"/>.</exception>
    public ValueList<CatalogueEntry> Search(ScaleQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        return Search(query.Text ?? string.Empty).Where(query.Matches).ToValueList();
    }
}

namespace Warmup;

/// <summary>What a scale must have to be found. Every condition that is given must hold; none is given by default.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record ScaleQuery
{
    private readonly int? _notesUp;
    private readonly int? _notesDown;
    private readonly int? _parent;

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
    public ScaleFamily? Family { get; init; }

    /// <summary>Whether a list zigzags.</summary>
    public bool? IsVakra { get; init; }

    /// <summary>Whether the scale has notes that its parent has not.</summary>
    public bool? HasForeignNotes { get; init; }

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
            && (Kind is null || Kind == entry.Kind)
            && (Family is null || Family == entry.Family)
            && (IsVakra is null || IsVakra == scale.IsVakra)
            && (HasForeignNotes is null || HasForeignNotes == !entry.ForeignNotes.IsEmpty);
    }

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
    public ValueList<CatalogueEntry> Search(ScaleQuery query) =>
        ((IEnumerable<CatalogueEntry>)Search(query.Text ?? string.Empty)).Where(query.Matches).ToValueList();
}

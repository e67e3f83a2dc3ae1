using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>The scales that have a name: parents, derived scales, thaats and Western scales, and whatever a caller adds.</summary>
/// <remarks>Immutable, safe to share between threads.</remarks>
public sealed partial class Catalogue
{
    // Spellings further away than this are not offered as near misses.
    private const int FarthestMiss = 4;
    private const int MostSuggestions = 3;

    private static readonly Lazy<Catalogue> Shared = new(() => new Catalogue(CatalogueData.Read()));

    private readonly Dictionary<string, CatalogueEntry> _byName = [];

    // Spellings of several different scales, none of which is a parent or has the spelling for its name.
    private readonly Dictionary<string, List<CatalogueEntry>> _shared = [];

    private Catalogue(ValueList<CatalogueEntry> entries)
    {
        Entries = entries;
        foreach (var entry in entries)
        {
            // A name goes before a spelling, and of two spellings the first one stays: parents come first.
            foreach (var name in (ReadOnlySpan<string>)[entry.Scale.Name, .. entry.Spellings])
            {
                AddName(ScaleName.Fold(name), entry);
            }
        }

        foreach (var entry in entries)
        {
            _byName[ScaleName.Fold(entry.Scale.Name)] = entry;
            _shared.Remove(ScaleName.Fold(entry.Scale.Name));
        }
    }

    /// <summary>The library's own catalogue.</summary>
    public static Catalogue Default => Shared.Value;

    /// <summary>All rows: parents by number, then derived scales, thaats, Western scales and added ones.</summary>
    public ValueList<CatalogueEntry> Entries { get; }

    /// <summary>A catalogue with one more scale; a scale of the same name is found before the library's.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="spellings">Other names it is found by, each 1 to 100 characters.</param>
    /// <exception cref="ArgumentNullException">The scale or a spelling is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">A spelling is empty, too long or holds control characters.</exception>
    public Catalogue With(Scale scale, params ReadOnlySpan<string> spellings)
    {
        ArgumentNullException.ThrowIfNull(scale);
        foreach (var spelling in spellings)
        {
            Require.Name(spelling, Scale.LongestName, nameof(spellings));
        }

        return new([.. Entries, new CatalogueEntry(scale, ScaleFamily.Custom, null, ValueList.Create(spellings), "added by the caller")]);
    }

    /// <summary>The parent scale of a number.</summary>
    /// <param name="number">1 to 72.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="number"/> lies outside its range.</exception>
    public CatalogueEntry Parent(int number) => Entries[Require.InRange(number, 1, Melakarta.Count, "the number of a parent scale") - 1];

    /// <summary>Finds a row by name; case, diacritics and usual spellings are forgiven.</summary>
    /// <param name="name">The name.</param>
    /// <returns>The row, or <see langword="null"/>.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is <see langword="null"/>.</exception>
    public CatalogueEntry? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Length <= Scale.LongestName ? _byName.GetValueOrDefault(ScaleName.Fold(name)) : null;
    }

    /// <summary>The rows whose name or spelling holds a text: those that are called so first, each part in the catalogue's order.</summary>
    /// <param name="text">The text; case, diacritics and usual spellings are forgiven. The empty text finds all.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    public ValueList<CatalogueEntry> Search(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var wanted = ScaleName.Fold(text.AsSpan(0, Math.Min(text.Length, Scale.LongestName)));
        return Entries
            .Select(e => (Entry: e, Names: e.Spellings.Prepend(e.Scale.Name).Select(n => ScaleName.Fold(n)).ToList()))
            .Where(row => row.Names.Exists(n => n.Contains(wanted, StringComparison.Ordinal)))
            .OrderByDescending(row => row.Names.Contains(wanted))
            .Select(row => row.Entry)
            .ToValueList();
    }

    /// <summary>
    /// Reads what a person types for a scale: a name (<c>mohanam</c>), the number of a parent scale (<c>15</c>), or the scale written
    /// out (<c>S R2 G3 P D2 S'</c>, <c>do re mi sol la do'</c>, <c>semitones: 0 2 4 7 9</c>).
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="scale">The scale, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, with the nearest names; or <see langword="null"/>.</param>
    /// <returns>Whether the text named a scale.</returns>
    public bool TryRead([NotNullWhen(true)] string? text, [NotNullWhen(true)] out Scale? scale, [NotNullWhen(false)] out TextError? error)
    {
        scale = null;
        error = null;
        var trimmed = text.AsSpan().Trim();
        if (text is null || trimmed.IsEmpty)
        {
            error = TextError.At(1, "the scale is empty; write a name (Mohanam), a parent's number (15) or the notes (S R2 G3 P D2 S')");
            return false;
        }

        if (!trimmed.Contains('\0') && int.TryParse(trimmed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
        {
            if (number is < 1 or > Melakarta.Count)
            {
                error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"the number of a parent scale must be between 1 and {Melakarta.Count}, not {number}"));
                return false;
            }

            scale = Parent(number).Scale;
            return true;
        }

        if (ScaleText.IsWrittenOut(trimmed))
        {
            return Scale.TryParse(text, out scale, out error);
        }

        if (trimmed.Length <= Scale.LongestName && _shared.TryGetValue(ScaleName.Fold(trimmed), out var several))
        {
            var names = string.Join(" and ", several.Select(e => $"{e.Scale.Name} ({string.Join(' ', e.Scale.Ascent)})"));
            error = TextError.At(1, $"{TextError.Quote(trimmed)} is the name of several scales: {names}; write the one that is meant");
            return false;
        }

        scale = Find(trimmed.ToString())?.Scale;
        if (scale is null)
        {
            error = TextError.At(1, $"unknown scale {TextError.Quote(trimmed)}; {Suggest(trimmed)}");
        }

        return scale is not null;
    }

    /// <summary>Reads a scale as <see cref="TryRead"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text names no scale.</exception>
    public Scale Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return TryRead(text, out var scale, out var error) ? scale : throw error.ToException();
    }

    /// <summary>
    /// Reads notes to search with: written out in any order (<c>S R2 G3 P</c>), or those of a scale (<c>Mohanam</c>), its ascent and descent
    /// together.
    /// </summary>
    /// <param name="text">The text, at most 400 characters.</param>
    /// <param name="degrees">The notes, or none.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was notes or a scale.</returns>
    public bool TryReadNotes([NotNullWhen(true)] string? text, out ValueList<Degree> degrees, [NotNullWhen(false)] out TextError? error)
    {
        // A name or a parent's number goes before a single note: 1 is Kanakangi, S is not a scale.
        degrees = default;
        if (TryRead(text, out var scale, out var scaleError))
        {
            (degrees, error) = (scale.Degrees, null);
            return true;
        }

        if (Degree.TryParseList(text, out degrees, out error))
        {
            return true;
        }

        // A scale's error says more than a note's, unless the text is notes of which one is wrong.
        error = ScaleText.IsWrittenOut(text.AsSpan().Trim()) ? error : scaleError;
        return false;
    }

    private void AddName(string folded, CatalogueEntry entry)
    {
        if (_byName.TryAdd(folded, entry))
        {
            return;
        }

        var first = _byName[folded];
        if (first.Family != ScaleFamily.Parent && entry.Family != ScaleFamily.Custom && first.Scale.ToNotesText() != entry.Scale.ToNotesText())
        {
            if (!_shared.TryGetValue(folded, out var several))
            {
                _shared[folded] = several = [first];
            }

            several.Add(entry);
        }
    }

    private string Suggest(ReadOnlySpan<char> text)
    {
        var wanted = ScaleName.Fold(text[..Math.Min(text.Length, Scale.LongestName)]);
        var near = _byName
            .Select(pair => (pair.Value.Scale.Name, Distance: ScaleName.Distance(wanted, pair.Key)))
            .Where(miss => miss.Distance <= Math.Min(FarthestMiss, Math.Max(1, wanted.Length / 2)))
            .OrderBy(miss => miss.Distance)
            .ThenBy(miss => miss.Name, StringComparer.Ordinal)
            .Select(miss => miss.Name)
            .Distinct()
            .Take(MostSuggestions)
            .ToList();
        return near.Count > 0
            ? $"did you mean {string.Join(", ", near)}?"
            : "list the names with the catalogue's search, or write the notes out: S R2 G3 P D2 S'";
    }
}

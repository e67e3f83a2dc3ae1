using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

public sealed partial class Catalogue
{
    private const string SvaraLetters = "SRGMPDN";

    /// <summary>
    /// The scales that hold the given svaras in their ascent or descent: bare letters (<c>S R G P N</c>), of which any form will do, and
    /// svaras with their form (<c>R2</c>). The nearest come first: those with the fewest other letters, then those with the fewest other
    /// notes, then in the catalogue's order.
    /// </summary>
    /// <param name="text">The letters and svaras, at most 400 characters; bare letters all in capitals or all small.</param>
    /// <param name="found">The scales, or none.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was letters and svaras.</returns>
    public bool TryFindHolding([NotNullWhen(true)] string? text, out ValueList<CatalogueEntry> found, [NotNullWhen(false)] out TextError? error)
    {
        found = default;
        if (!TryReadLetters(text, out var letters, out var svaras, out error))
        {
            return false;
        }

        found = Entries
            .Where(e => svaras.TrueForAll(e.Scale.Contains) && letters.TrueForAll(l => e.Scale.Degrees.Any(d => d.Letter == l)))
            .Select(e => (Entry: e, Letters: e.Scale.Degrees.Select(d => d.Letter).Distinct().Count()))
            .OrderBy(e => e.Letters)
            .ThenBy(e => e.Entry.Scale.Degrees.Count)
            .Select(e => e.Entry)
            .ToValueList();
        return true;
    }

    private static bool TryReadLetters(string? text, out List<int> letters, out List<Degree> svaras, [NotNullWhen(false)] out TextError? error)
    {
        (letters, svaras, error) = ([], [], null);
        if (text?.Length > ToneText.LongestList)
        {
            error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"letters must be at most {ToneText.LongestList} characters long, not {text.Length}"));
            return false;
        }

        bool? isSmall = null;
        var cursor = new TextCursor(text);
        while (error is null && cursor.TryTakeWord(out var word))
        {
            var letter = word.Rest.Length == 1 ? SvaraLetters.IndexOf(char.ToUpperInvariant(word.Peek()), StringComparison.Ordinal) : -1;
            if (letter >= 0)
            {
                var small = char.IsAsciiLetterLower(word.Peek());
                error = isSmall is { } before && before != small
                    ? word.Error($"{TextError.Quote(word.Rest)}: write the letters all in capitals or all small; small letters beside capitals mark lowered notes in another tradition")
                    : null;
                isSmall = small;
                letters.Add(letter + 1);
            }
            else if (ToneText.TryRead(word, out var tone, out _))
            {
                svaras.Add(tone.Degree);
            }
            else
            {
                error = word.Error($"{TextError.Quote(word.Rest)} is neither a svara nor a letter; write for example S R G P N, or S R2 G P");
            }
        }

        error ??= letters.Count + svaras.Count == 0 ? TextError.At(1, "there are no letters; write for example S R G P N") : null;
        return error is null;
    }
}

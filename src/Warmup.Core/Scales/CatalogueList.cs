using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

public sealed partial class Catalogue
{
    private const string ParentPrefix = "parent:";
    private const string ParentsPrefix = "parents:";

    /// <summary>
    /// Reads what a person types for several scales, with commas between them: whatever <see cref="TryRead"/> reads; a kind (<c>audava</c>, or
    /// <c>all five-note scales</c>); <c>parent:15</c> for a parent and what is derived from it; <c>parents:1-12</c> for parents by number. A scale
    /// that is typed by its name keeps the name as it was typed, in whichever of its spellings.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="scales">The scales in the order of the text, or none.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text named at least one scale, and nothing else.</returns>
    public bool TryReadList(string text, out ValueList<Scale> scales, [NotNullWhen(false)] out TextError? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        scales = default;
        var found = new List<Scale>();
        var start = 0;
        foreach (var piece in text.Split(','))
        {
            var word = piece.Trim();
            if (word.Length > 0 && WrongPiece(word, found) is { } wrong)
            {
                error = TextError.At(start + piece.Length - piece.TrimStart().Length + wrong.Column, wrong.Message);
                return false;
            }

            start += piece.Length + 1;
        }

        scales = found.ToValueList();
        error = scales.IsEmpty ? TextError.At(1, $"{TextError.Quote(text)} names no scale; write names with commas between them, such as mohanam, bilahari") : null;
        return error is null;
    }

    /// <summary>Adds the scales that a piece of a list names; what is wrong with it otherwise.</summary>
    private TextError? WrongPiece(string word, List<Scale> found)
    {
        TextError? error = null;
        if (word.StartsWith(ParentsPrefix, StringComparison.OrdinalIgnoreCase))
        {
            var ends = word[ParentsPrefix.Length..].Split('-');
            if (ends.Length > 2 || !TryParent(ends[0], out var first) || !TryParent(ends[^1], out var last) || last < first)
            {
                return TextError.At(1, $"the parents must be one number or two that rise, between 1 and {Melakarta.Count}, such as parents:1-12, not {TextError.Quote(word)}");
            }

            found.AddRange(Enumerable.Range(first, last - first + 1).Select(n => Parent(n).Scale));
        }
        else if (word.StartsWith(ParentPrefix, StringComparison.OrdinalIgnoreCase))
        {
            if (!TryParent(word.AsSpan(ParentPrefix.Length), out var parent))
            {
                return TextError.At(1, $"the number of a parent scale must be between 1 and {Melakarta.Count}, not {TextError.Quote(word)}");
            }

            found.AddRange(Search(new ScaleQuery { Parent = parent }).Select(e => e.Scale));
        }
        else if (ScaleKind.TryParse(KindOf(word), out var kind, out _))
        {
            found.AddRange(Search(new ScaleQuery { Kind = kind }).Select(e => e.Scale));
        }
        else if (Find(word) is { } entry)
        {
            found.Add(Require.NameFault(word, Scale.LongestName) is null ? new Scale(word, entry.Scale.Ascent, entry.Scale.Descent) : entry.Scale);
        }
        else if (TryRead(word, out var scale, out error))
        {
            found.Add(scale);
        }

        return error;
    }

    private static bool TryParent(ReadOnlySpan<char> text, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && !text.Contains('\0') && number >= 1 && number <= Melakarta.Count;

    /// <summary>The trade's word for "all five-note scales" and its like; other words stay as they are.</summary>
    private static string KindOf(string word) => word.ToLowerInvariant() switch
    {
        "all five-note scales" or "five-note scales" => "audava",
        "all six-note scales" or "six-note scales" => "shadava",
        "all seven-note scales" or "seven-note scales" => "sampurna",
        _ => word,
    };
}

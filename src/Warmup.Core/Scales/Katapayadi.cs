using System.Globalization;

namespace Warmup;

/// <summary>
/// The katapayadi syllable code: each consonant stands for a digit, and the first two syllables of a parent scale's name give its number,
/// the second one first.
/// </summary>
/// <remarks>
/// Common practice: ka to jha are 1 to 9, ña 0; ṭa to dha 1 to 9, na 0; pa to ma 1 to 5; ya to ḷa 1 to 9; a vowel that begins a word is 0. Of a cluster
/// the last consonant counts: rma is m.
/// The code is computed on the name in IAST, the usual scholarly transliteration. Eight names break the general rule: 16, 48, 54, 55, 57,
/// 62, 66 and 68; <see cref="CatalogueEntry.CodeException"/> has the reason of each.
/// </remarks>
public static class Katapayadi
{
    // Two-letter consonants stand before the one-letter ones that begin them.
    private static readonly (string Letters, int Digit)[] Consonants =
    [
        ("kh", 2), ("gh", 4), ("ch", 7), ("jh", 9), ("ṭh", 2), ("ḍh", 4), ("th", 7), ("dh", 9), ("ph", 2), ("bh", 4),
        ("k", 1), ("g", 3), ("ṅ", 5), ("c", 6), ("j", 8), ("ñ", 0),
        ("ṭ", 1), ("ḍ", 3), ("ṇ", 5), ("t", 6), ("d", 8), ("n", 0),
        ("p", 1), ("b", 3), ("m", 5), ("ṃ", 5),
        ("y", 1), ("r", 2), ("l", 3), ("v", 4), ("ś", 5), ("ṣ", 6), ("s", 7), ("h", 8), ("ḷ", 9),
    ];

    /// <summary>The number that the first two syllables of a name give.</summary>
    /// <param name="iastName">The name in IAST, in any case: at most 100 characters.</param>
    /// <returns>0 to 99.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="iastName"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The name has fewer than two syllables, is too long or holds a letter that is not IAST.</exception>
    public static int NumberOf(string iastName)
    {
        ArgumentNullException.ThrowIfNull(iastName);
        if (iastName.Length > Scale.LongestName)
        {
            throw TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a name must be at most {Scale.LongestName} characters long, not {iastName.Length}")).ToException();
        }

        var name = iastName.ToLowerInvariant();
        var at = 0;
        var ones = 0;
        for (var syllable = 0; syllable < 2; syllable++)
        {
            var digit = 0;
            while (at < name.Length && ConsonantAt(name, at) is { } consonant)
            {
                digit = consonant.Digit;
                at += consonant.Letters.Length;
            }

            var vowels = at;
            while (at < name.Length && IsVowel(name[at]))
            {
                at++;
            }

            if (at == vowels)
            {
                throw TextError.At(at + 1, at < name.Length
                    ? $"{TextError.Quote(name.AsSpan(at, 1))} is not a letter of IAST"
                    : $"{TextError.Quote(iastName)} has fewer than two syllables").ToException();
            }

            if (syllable == 1)
            {
                return (10 * digit) + ones;
            }

            ones = digit;
        }

        return ones;
    }

    private static bool IsVowel(char c) => "aāiīuūṛṝeēoō".Contains(c, StringComparison.Ordinal);

    private static (string Letters, int Digit)? ConsonantAt(string name, int at)
    {
        foreach (var consonant in Consonants)
        {
            if (string.CompareOrdinal(name, at, consonant.Letters, 0, consonant.Letters.Length) == 0)
            {
                return consonant;
            }
        }

        return null;
    }
}

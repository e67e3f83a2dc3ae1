using System.Globalization;

namespace Warmup;

/// <summary>Which consonant of a cluster counts in the katapayadi code.</summary>
public enum ClusterReading
{
    /// <summary>The last one, which is the code's general rule: <c>rma</c> counts as m.</summary>
    Last,

    /// <summary>The first one, an anusvara included: the reading of the names that break the rule.</summary>
    First,
}

/// <summary>
/// The katapayadi syllable code: each consonant stands for a digit, and the first two syllables of a parent scale's name give its number,
/// the second one first.
/// </summary>
/// <remarks>
/// Common practice: ka to jha are 1 to 9, ña 0; ṭa to dha 1 to 9, na 0; pa to ma 1 to 5; ya to ḷa 1 to 9; a vowel that begins a word is 0.
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
    /// <param name="reading">Which consonant of a cluster counts; the last one by default.</param>
    /// <returns>0 to 99.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="iastName"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="reading"/> is neither.</exception>
    /// <exception cref="WarmupFormatException">The name has fewer than two syllables, is too long or holds a letter that is not IAST.</exception>
    public static int NumberOf(string iastName, ClusterReading reading = ClusterReading.Last)
    {
        ArgumentNullException.ThrowIfNull(iastName);
        Require.InRange((int)reading, (int)ClusterReading.Last, (int)ClusterReading.First, nameof(reading));
        if (iastName.Length > Scale.LongestName)
        {
            throw TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a name must be at most {Scale.LongestName} characters long, not {iastName.Length}")).ToException();
        }

        var name = iastName.ToLowerInvariant();
        var at = 0;
        var ones = 0;
        for (var syllable = 0; syllable < 2; syllable++)
        {
            int? digit = null;
            while (at < name.Length && ConsonantAt(name, at) is { } consonant)
            {
                digit = reading == ClusterReading.First ? digit ?? consonant.Digit : consonant.Digit;
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

            // A syllabic r at the beginning counts as its consonant among the exceptions, as nothing under the rule.
            var value = digit ?? (reading == ClusterReading.First && name[vowels] == 'ṛ' ? 2 : 0);
            if (syllable == 1)
            {
                return (10 * value) + ones;
            }

            ones = value;
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

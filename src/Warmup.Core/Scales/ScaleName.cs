namespace Warmup;

/// <summary>
/// What two spellings of a scale's name have in common: case, diacritics, spaces and the usual variations of transliteration are
/// folded away, so that Śaṅkarābharaṇam, Shankarabharanam and sankarabaranam are one name.
/// </summary>
internal static class ScaleName
{
    // Latin letters with the diacritics of Indic transliteration, and the plain letter each stands for. A table, because Unicode
    // normalisation is not available in every runtime configuration.
    private const string Marked = "āáàâäãăåīíìîïĭĩūúùûüŭũēéèêëĕẽōóòôöŏõṅñṇńņṉťṭţḍďśṣşšçčĉḷļłṟṛřṃṁḥḻḵẏž";
    private const string Plain = "aaaaaaaaiiiiiiiuuuuuuueeeeeeeooooooonnnnnntttddssssccclllrrrmmhlkyz";

    private static readonly (string From, string To)[] Spellings =
    [
        ("zh", "l"), ("sh", "s"), ("ch", "c"), ("th", "t"), ("dh", "d"), ("bh", "b"), ("kh", "k"), ("gh", "g"), ("jh", "j"), ("ph", "p"),
        ("au", "o"), ("ow", "o"), ("ou", "o"), ("ee", "i"), ("oo", "u"), ("w", "v"), ("ns", "ms"), ("ksh", "ks"), ("x", "ks"),
    ];

    public static string Fold(ReadOnlySpan<char> name)
    {
        Span<char> letters = stackalloc char[Math.Min(name.Length, Scale.LongestName)];
        var length = 0;
        foreach (var raw in name[..letters.Length])
        {
            var c = char.ToLowerInvariant(raw);
            var marked = Marked.IndexOf(c, StringComparison.Ordinal);
            c = marked < 0 ? c : Plain[marked];
            if (char.IsLetterOrDigit(c) || c == '#')
            {
                letters[length++] = c;
            }
        }

        var folded = letters[..length].ToString();
        foreach (var (from, to) in Spellings)
        {
            folded = folded.Replace(from, to, StringComparison.Ordinal);
        }

        return Trim(folded);
    }

    /// <summary>Letters to add, drop or change to turn one folded name into another (Levenshtein distance).</summary>
    public static int Distance(string a, string b)
    {
        Span<int> row = stackalloc int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            row[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = row[j];
                row[j] = cost;
            }
        }

        return row[b.Length];
    }

    private static string Trim(string folded)
    {
        // Doubled letters count once; Mohana and Mohanam are one name.
        Span<char> kept = stackalloc char[folded.Length];
        var length = 0;
        foreach (var c in folded)
        {
            if (length == 0 || kept[length - 1] != c || char.IsDigit(c))
            {
                kept[length++] = c;
            }
        }

        return kept[..(length > 3 && kept[length - 1] == 'm' && kept[length - 2] == 'a' ? length - 1 : length)].ToString();
    }
}

using System.Globalization;

namespace Warmup.TestSupport;

/// <summary>A sung letter as notation shows it: a dot above for the upper octave, below for the lower, two for the next (common practice).</summary>
public static class OctaveDotted
{
    // Combining marks of Unicode.
    private const char DotAbove = '\u0307';
    private const char TwoAbove = '\u0308';
    private const char DotBelow = '\u0323';
    private const char TwoBelow = '\u0324';

    // The letters that Unicode has with a dot, by their names: LATIN CAPITAL LETTER S WITH DOT ABOVE and so on. There is no G or P with a dot below.
    private static readonly Dictionary<string, string> Whole = new(StringComparer.Ordinal)
    {
        ["S\u0307"] = "Ṡ", ["R\u0307"] = "Ṙ", ["G\u0307"] = "Ġ", ["M\u0307"] = "Ṁ", ["P\u0307"] = "Ṗ", ["D\u0307"] = "Ḋ", ["N\u0307"] = "Ṅ",
        ["S\u0323"] = "Ṣ", ["R\u0323"] = "Ṛ", ["M\u0323"] = "Ṃ", ["D\u0323"] = "Ḍ", ["N\u0323"] = "Ṇ",
    };

    // Where the scripts of India begin in Unicode.
    private const char Devanagari = '\u0900';

    /// <summary>The syllable with its dots; what is not a svara letter, in Latin or in an Indic script, has none.</summary>
    public static string Of(string syllable, int octave)
    {
        if (octave == 0 || syllable.Length == 0 || !(IsLetter(syllable) || syllable[0] >= Devanagari))
        {
            return syllable;
        }

        var mark = octave switch { 1 => DotAbove, 2 => TwoAbove, -1 => DotBelow, -2 => TwoBelow, _ => throw new ArgumentOutOfRangeException(nameof(octave)) };
        var first = StringInfo.GetNextTextElementLength(syllable);
        var whole = syllable[..first] + mark;
        return (Whole.TryGetValue(whole, out var one) ? one : whole) + syllable[first..];
    }

    /// <summary>One of the seven letters, with its variant where the drill has two.</summary>
    private static bool IsLetter(string syllable) =>
        "SRGMPDN".Contains(syllable[0], StringComparison.Ordinal) && syllable[1..].All(char.IsAsciiDigit);
}

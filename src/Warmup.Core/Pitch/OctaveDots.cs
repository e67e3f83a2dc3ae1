using System.Globalization;

namespace Warmup;

/// <summary>
/// Dots above a letter for the octaves above the middle one, dots below for those below (common practice), as combining marks.
/// </summary>
internal static class OctaveDots
{
    // Unicode has marks of one, two and three dots; more octaves are several marks one after the other.
    private static readonly string[] Above = ["\u0307", "\u0308", "\u20DB"];
    private static readonly string[] Below = ["\u0323", "\u0324", "\u20E8"];

    /// <summary>The text with the marks on its first letter, whatever vowel signs that letter carries.</summary>
    public static string Mark(string text, int octave)
    {
        if (octave == 0 || text.Length == 0)
        {
            return text;
        }

        var marks = octave > 0 ? Above : Below;
        var first = StringInfo.GetNextTextElementLength(text);
        var written = string.Empty;
        for (var left = Math.Abs(octave); left > 0; left -= marks.Length)
        {
            written += marks[Math.Min(left, marks.Length) - 1];
        }

        return text[..first] + written + text[first..];
    }
}

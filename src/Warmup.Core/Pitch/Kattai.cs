using System.Globalization;

namespace Warmup;

/// <summary>
/// The kattai numbering of the tonic: white keys from C are whole numbers, black keys halves, so 1 is C, 5.5 is G#.
/// </summary>
/// <remarks>Common practice. There is no 3.5 and no 7.5.</remarks>
internal static class Kattai
{
    private static ReadOnlySpan<sbyte> White => [0, 2, 4, 5, 7, 9, 11];

    /// <summary>The pitch class of a kattai.</summary>
    /// <param name="kattai">1 to 7, in halves.</param>
    /// <param name="pitchClass">Semitones above C, 0 to 11.</param>
    /// <returns>Whether there is such a kattai: 3.5 and 7.5 do not exist.</returns>
    public static bool TryGetPitchClass(Rational kattai, out int pitchClass)
    {
        pitchClass = 0;
        var whole = kattai.Floor();
        if (whole is < 1 or > 7)
        {
            return false;
        }

        pitchClass = White[(int)whole - 1];
        if (kattai.IsInteger)
        {
            return true;
        }

        pitchClass++;
        return kattai - whole == new Rational(1, 2) && whole is not (3 or 7);
    }

    /// <summary>The kattai of a MIDI note, such as <c>5.5</c> for G#.</summary>
    /// <param name="midi">The MIDI note number.</param>
    public static string FromMidi(int midi)
    {
        var pitchClass = ((midi % 12) + 12) % 12;
        var white = White.LastIndexOf((sbyte)pitchClass);
        return white >= 0
            ? (white + 1).ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{White.LastIndexOf((sbyte)(pitchClass - 1)) + 1}.5");
    }
}

using System.Text;

namespace Warmup.Midi;

/// <summary>Text as the bytes of a meta event, a character at a time and without allocation.</summary>
internal static class MidiText
{
    /// <summary>The most bytes of one character.</summary>
    public const int LongestCharacter = 4;

    /// <summary>
    /// The characters that RP-026 uses for commands in lyrics, and that RP-017 asks writers to avoid. They are refused and not escaped: a
    /// program that does not know RP-026 would show the escape.
    /// </summary>
    public const string Reserved = @"\[]{}";

    // The letters of Indic transliteration and of Western European languages, and below them their plain letters. They are written out and
    // not decomposed: normalization depends on the host's globalization data, and equal scores must give equal bytes.
    private const string Marked =
        "ĀāĪīŪūĒēŌōṚṛṜṝḶḷḸḹḺḻṀṁṂṃÑñṄṅṆṇṈṉŚśṢṣŠšṬṭḌḍḤḥṞṟẎẏĊċČčŽžÀàÁáÂâÃãÄäÅåÇçÈèÉéÊêËëÌìÍíÎîÏïÒòÓóÔôÕõÖöØøÙùÚúÛûÜüÝýÿ♭♯\u2018\u2019\u02BC\u201C\u201D\u2010\u2011\u2012\u2013\u2014\u2212\u00A0·×";

    private const string Plain =
        "AaIiUuEeOoRrRrLlLlLlMmMmNnNnNnNnSsSsSsTtDdHhRrYyCcCcZzAaAaAaAaAaAaCcEeEeEeEeIiIiIiIiOoOoOoOoOoOoUuUuUuUuYyyb#'''\"\"------ .x";

    /// <summary>The bytes of a character. In ASCII a combining mark has none: its letter loses it.</summary>
    /// <param name="rune">The character.</param>
    /// <param name="encoding">The encoding.</param>
    /// <param name="scratch">At least <see cref="LongestCharacter"/> bytes, which the result may use.</param>
    public static ReadOnlySpan<byte> Encode(Rune rune, MidiTextEncoding encoding, Span<byte> scratch)
    {
        if (rune.IsAscii)
        {
            // A control character would end a lyric's line or a whole text in the programs that read it.
            scratch[0] = rune.Value is >= 0x20 and < 0x7F ? (byte)rune.Value : (byte)'?';
            return scratch[..1];
        }

        if (encoding == MidiTextEncoding.Utf8)
        {
            return Rune.IsControl(rune) ? "?"u8 : scratch[..rune.EncodeToUtf8(scratch)];
        }

        if (IsCombiningMark(rune))
        {
            return default;
        }

        scratch[0] = (byte)Folded(rune);
        return scratch[..1];
    }

    /// <summary>Whether every character has an ASCII form of its own.</summary>
    /// <param name="text">The text.</param>
    public static bool IsAsciiAble(ReadOnlySpan<char> text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (!rune.IsAscii && !IsCombiningMark(rune) && Folded(rune) == '?')
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsCombiningMark(Rune rune) => rune.Value is >= 0x0300 and <= 0x036F;

    private static char Folded(Rune rune)
    {
        var at = rune.IsBmp ? Marked.IndexOf((char)rune.Value, StringComparison.Ordinal) : -1;
        return at < 0 ? '?' : Plain[at];
    }
}

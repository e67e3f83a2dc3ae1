namespace Warmup.Midi;

/// <summary>The bytes of a text of at most eight of them, as one number that begins with its lowest byte; none by default.</summary>
/// <param name="Bytes">The bytes.</param>
/// <param name="Length">Their number.</param>
internal readonly record struct ShortText(ulong Bytes, int Length)
{
    private const int Longest = sizeof(ulong);

    /// <summary>A text of letters and digits of ASCII with room for two more; none where it is longer or holds others.</summary>
    public static ShortText Of(string text)
    {
        var made = default(ShortText);
        for (var i = 0; i < text.Length; i++)
        {
            if (i == Longest - 2 || !char.IsAsciiLetterOrDigit(text[i]))
            {
                return default;
            }

            made = made.With(text[i]);
        }

        return made;
    }

    /// <summary>The text with one more plain letter.</summary>
    public ShortText With(char letter) => new(Bytes | ((ulong)letter << (8 * Length)), Length + 1);

    /// <summary>A meta event of the text, as such a number too; the text has at most five bytes.</summary>
    public ulong ToMeta(int type) => 0xFF | ((ulong)type << 8) | ((ulong)Length << 16) | (Bytes << 24);
}

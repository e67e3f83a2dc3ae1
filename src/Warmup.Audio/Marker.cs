using System.Globalization;
using System.Text.Unicode;

namespace Warmup.Audio;

/// <summary>What a marker says, in ASCII: the character set of labels is nowhere defined.</summary>
/// <param name="Section">The index of the section, or -1 where there is only one.</param>
/// <param name="Line">The index of the line.</param>
/// <param name="IsAnswer">Whether the answer begins here instead of the line.</param>
internal readonly record struct Marker(int Section, int Line, bool IsAnswer)
{
    /// <summary>The most bytes of a text.</summary>
    public const int Longest = 64;

    /// <summary>Writes the text.</summary>
    /// <returns>The number of bytes.</returns>
    public int Write(Span<byte> text)
    {
        var written = 0;
        if (Section >= 0)
        {
            Append(text, ref written, "Section ");
            Append(text, ref written, Section + 1);
            Append(text, ref written, ", line ");
        }
        else
        {
            Append(text, ref written, "Line ");
        }

        Append(text, ref written, Line + 1);
        if (IsAnswer)
        {
            Append(text, ref written, ", answer");
        }

        return written;
    }

    private static void Append(Span<byte> text, ref int written, string word)
    {
        _ = Utf8.FromUtf16(word, text[written..], out _, out var bytes);
        written += bytes;
    }

    private static void Append(Span<byte> text, ref int written, int number)
    {
        _ = number.TryFormat(text[written..], out var bytes, default, CultureInfo.InvariantCulture);
        written += bytes;
    }
}

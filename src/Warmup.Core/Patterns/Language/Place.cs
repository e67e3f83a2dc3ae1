using System.Globalization;
using System.Text;

namespace Warmup;

/// <summary>
/// Places as people count them in texts: 1 is the note a line stands on, the tonic of written lines, -1 the note below it, and no place is
/// called 0. Code counts steps, in which the tonic is 0.
/// </summary>
internal static class Place
{
    private const int LongestShown = 80;

    /// <summary>The place of a step.</summary>
    public static int FromStep(int step) => step >= 0 ? step + 1 : step;

    /// <summary>The step of a place; a place is never 0.</summary>
    public static int ToStep(int place) => place > 0 ? place - 1 : place;

    /// <summary>The place of a step as text.</summary>
    public static string Show(int step) => FromStep(step).ToString(CultureInfo.InvariantCulture);

    /// <summary>Why a text with the place 0 is refused, and how it is written now.</summary>
    /// <param name="text">The text, in which 0 was the tonic.</param>
    public static string NoZero(ReadOnlySpan<char> text) => $"places count from 1, the tonic, and the note below it is -1, so there is no 0; what counted from 0 is now {Recounted(text)}";

    /// <summary>A text whose numbers counted from 0, as it is written now, cut to one line.</summary>
    public static string Recounted(ReadOnlySpan<char> text)
    {
        var written = new StringBuilder();
        var cursor = new TextCursor(text);
        while (!cursor.IsAtEnd)
        {
            if ((char.IsAsciiDigit(cursor.Peek()) || (cursor.Peek() == '-' && char.IsAsciiDigit(cursor.Peek(1)))) && cursor.TryTakeInteger(out var number))
            {
                written.Append(Show(number));
            }
            else
            {
                written.Append(cursor.Peek() is >= ' ' and <= '~' ? cursor.Peek() : '?');
                cursor.Position++;
            }
        }

        return OneLine.Cut(written.ToString().Trim(), LongestShown);
    }
}

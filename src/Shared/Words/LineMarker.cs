namespace Warmup;

/// <summary>A place in a score that a player can jump to: where a line begins, or its answer.</summary>
/// <param name="Section">The index of the section, or -1 where the score has only one.</param>
/// <param name="Line">The index of the line in its section.</param>
/// <param name="IsAnswer">Whether the answer to the line begins here, and not the line itself.</param>
internal readonly record struct LineMarker(int Section, int Line, bool IsAnswer)
{
    /// <summary>The most bytes of a text.</summary>
    public const int Longest = 64;

    /// <summary>Where the marker stands, in aksharas from the section's beginning.</summary>
    /// <param name="line">The marker's line.</param>
    public Rational OnsetIn(in ScoreLine line) => IsAnswer ? line.AnswerOnset : line.Onset;

    /// <summary>The same in grid steps.</summary>
    public int StepsIn(in ScoreLine line) => IsAnswer ? line.AnswerOnsetSteps : line.OnsetSteps;

    /// <summary>Writes what the marker says, in ASCII: <c>Section 2, line 3, answer</c>.</summary>
    /// <param name="text">Room for <see cref="Longest"/> bytes.</param>
    /// <returns>The number of bytes.</returns>
    public int Write(Span<byte> text)
    {
        // Number by number: an interpolated string boxes its numbers until the code has been compiled a second time.
        var length = 0;
        if (Section >= 0)
        {
            Append(text, ref length, "Section "u8, Section + 1);
            Append(text, ref length, ", line "u8, Line + 1);
        }
        else
        {
            Append(text, ref length, "Line "u8, Line + 1);
        }

        if (IsAnswer)
        {
            Append(text, ref length, ", answer"u8);
        }

        return length;
    }

    private static void Append(Span<byte> text, ref int length, ReadOnlySpan<byte> word)
    {
        word.CopyTo(text[length..]);
        length += word.Length;
    }

    private static void Append(Span<byte> text, ref int length, ReadOnlySpan<byte> word, int number)
    {
        Append(text, ref length, word);
        for (var rest = number; rest >= 10; rest /= 10)
        {
            length++;
        }

        var at = length++;
        for (; number >= 10; number /= 10)
        {
            text[at--] = (byte)('0' + (number % 10));
        }

        text[at] = (byte)('0' + number);
    }
}

namespace Warmup;

public abstract partial record Pattern
{
    // The farthest step or letter of a written line from the tonic, in places either way: four octaves of letters.
    internal const int WidestWritten = 28;

    /// <summary>
    /// Lines written out in svara letters or in numbers, as in exercise books: <c>S R G , / R G M -</c> or <c>1 2 3 / 2 3 4</c>.
    /// </summary>
    /// <remarks>
    /// <para><c>S'</c> is the upper and <c>N_</c> the lower octave; <c>,</c> holds the note one unit longer and <c>;</c> two; <c>-</c> is
    /// one unit of silence; <c>/</c> ends a line; the bar marks <c>|</c> and <c>||</c> are skipped. A step or a letter is at most 28 places from the tonic.</para>
    /// <para>Letters stay letters in every scale: each takes its form from the list in whose direction the line goes on. A scale without
    /// the letter refuses the line and names the letter. Steps count the scale's own notes from 0, the tonic.</para>
    /// </remarks>
    /// <param name="lines">The lines, at most 10,000 characters.</param>
    /// <exception cref="WarmupFormatException">The text is not a written line; the error has the place.</exception>
    public static Pattern Written(string lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return WrittenText.TryRead(new TextCursor(lines), out var pattern, out var error) ? pattern : throw error.ToException();
    }
}

namespace Warmup;

/// <summary>The marks of octaves in text: <c>'</c> for each octave above the middle one, <c>_</c> for each below.</summary>
internal static class OctaveMarks
{
    /// <summary>Whether a character is such a mark; a typographic apostrophe is one too.</summary>
    public static bool Is(char c) => c is '\'' or '\u2019' or '_';

    /// <summary>Takes all marks that come next.</summary>
    /// <param name="cursor">The text.</param>
    /// <param name="octave">The octave, or 0.</param>
    /// <returns>Whether they all go one way and are not too many.</returns>
    public static bool TryTake(ref TextCursor cursor, out int octave)
    {
        octave = 0;
        for (; Is(cursor.Peek()); cursor.Position++)
        {
            var step = cursor.Peek() == '_' ? -1 : 1;
            if (step * octave < 0 || Math.Abs(octave) == ScaleTone.HighestOctave)
            {
                octave = 0;
                return false;
            }

            octave += step;
        }

        return true;
    }

    /// <summary>The marks of an octave; none for the middle one.</summary>
    public static string Of(int octave) => octave == 0 ? string.Empty : new string(octave > 0 ? '\'' : '_', Math.Abs(octave));
}

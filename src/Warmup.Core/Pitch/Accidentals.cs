namespace Warmup;

/// <summary>Reads sharps and flats.</summary>
internal static class Accidentals
{
    /// <summary>Takes all accidentals that come next, in ASCII or as signs; a sharp and a flat on one note are a slip, so the second kind is left.</summary>
    /// <returns>The semitones that they add.</returns>
    public static int Take(ref TextCursor cursor)
    {
        var alteration = 0;
        while (true)
        {
            var add = cursor.Peek() switch { '#' or '♯' => 1, 'b' or '♭' => -1, 'x' => 2, _ => 0 };
            if (add == 0 || add * alteration < 0)
            {
                return alteration;
            }

            alteration += add;
            cursor.Position++;
        }
    }
}

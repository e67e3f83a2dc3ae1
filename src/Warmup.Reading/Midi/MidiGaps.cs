namespace Warmup.Reading;

/// <summary>Closes the small gaps that programs leave between notes when they save what they play.</summary>
internal static class MidiGaps
{
    // The project's own setting: a gap is closed where it is shorter than this part of the note with its gap.
    private const int Part = 20;

    private static readonly Rational Grid = new(1, 4);

    /// <summary>Lengthens notes to the next one, and the last to the next sixteenth; gives where the first of them begins.</summary>
    public static Rational? Close(List<RawNote> notes)
    {
        Rational? first = null;
        for (var n = 0; n < notes.Count; n++)
        {
            var note = notes[n];
            var end = n + 1 < notes.Count ? notes[n + 1].Onset : new Rational((note.End / Grid).Ceiling()) * Grid;
            if (end > note.End && (end - note.End) * Part < end - note.Onset)
            {
                first ??= note.Onset;
                notes[n] = note with { Length = end - note.Onset };
            }
        }

        return first;
    }
}

namespace Warmup.Reading;

/// <summary>Closes the small gaps that programs leave between notes when they save what they play.</summary>
internal static class MidiGaps
{
    // The project's own settings: a gap is closed where it is less than this share of the note with its gap, or no more than what most notes of a part
    // leave, up to a quarter; a player that detaches notes takes an eighth or a tenth of each.
    private static readonly Rational Usual = new(1, 20);
    private static readonly Rational Largest = new(1, 4);

    // After a long note even a breath is a small share of it: a gap is shorter than this, in quarter notes.
    private static readonly Rational Longest = new(1, 8);

    // Where a silence follows, a note ends on such parts of a quarter note.
    private static readonly Rational HalfBeat = new(1, 2);
    private static readonly Rational Sixteenth = new(1, 4);
    private static readonly Rational Finest = new(1, 12);

    /// <summary>Lengthens notes to the next one, and those before silences to where such notes end; gives where the first of them begins.</summary>
    public static Rational? Close(List<RawNote> notes)
    {
        var share = Rational.Max(Usual, Detached(notes));
        Rational? first = null;
        for (var n = 0; n < notes.Count; n++)
        {
            var note = notes[n];
            var next = n + 1 < notes.Count ? notes[n + 1].Onset : (Rational?)null;
            if ((next is { } at && at - note.End < Longest && IsSmall(note, at, share) ? at : BeforeSilence(note, next, share)) is { } end)
            {
                notes[n] = note with { Length = end - note.Onset };
                first ??= note.Onset;
            }
        }

        return first;
    }

    /// <summary>Where a note ends that a silence follows: at the next place where notes end; where they are played detached, on the next half of a beat or at their whole length.</summary>
    private static Rational? BeforeSilence(RawNote note, Rational? next, Rational share)
    {
        var whole = note.Onset + (note.Length / (Rational.One - share));
        Rational[] ends = share > Usual
            ? [(new Rational((note.End / HalfBeat).Floor()) + 1) * HalfBeat, .. (whole / Sixteenth).IsInteger ? (Rational[])[whole] : []]
            : [new Rational((note.End / Finest).Ceiling()) * Finest];
        foreach (var end in ends)
        {
            if ((next is null || end <= next) && (share > Usual || end - note.End < Longest) && IsSmall(note, end, share))
            {
                return end;
            }
        }

        return null;
    }

    private static bool IsSmall(RawNote note, Rational end, Rational share)
    {
        var (gap, most) = (end - note.End, share * (end - note.Onset));
        return gap.Sign > 0 && (gap < most || (gap == most && share > Usual));
    }

    /// <summary>The share of its time that most notes are silent; 0 where most are not, or where it is a silence of the music.</summary>
    private static Rational Detached(List<RawNote> notes)
    {
        var counts = new Dictionary<(Rational Length, Rational Time), int>();
        for (var n = 0; n + 1 < notes.Count; n++)
        {
            var key = (notes[n].Length, notes[n + 1].Onset - notes[n].Onset);
            counts[key] = counts.GetValueOrDefault(key) + 1;
        }

        if (counts.Count == 0)
        {
            return default;
        }

        var ((length, time), count) = counts.MaxBy(c => c.Value);
        var share = (time - length) / time;
        return 2 * count >= notes.Count - 1 && share < Largest ? share : default;
    }
}

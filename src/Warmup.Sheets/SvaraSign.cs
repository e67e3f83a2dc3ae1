namespace Warmup.Sheets;

/// <summary>What a sign in a line of svaras stands for.</summary>
internal enum SignKind
{
    /// <summary>A note begins.</summary>
    Note,

    /// <summary>The note is held for one more unit.</summary>
    Hold,

    /// <summary>A breath begins.</summary>
    Breath,

    /// <summary>One more unit of silence.</summary>
    Silence,
}

/// <summary>A sign in a line of svaras.</summary>
/// <param name="At">Where, in aksharas from the section's beginning.</param>
/// <param name="Kind">What it stands for.</param>
/// <param name="Note">The note that it belongs to: its index in the section.</param>
internal readonly record struct SvaraSign(Rational At, SignKind Kind, int Note)
{
    /// <summary>The signs of a line, note by note.</summary>
    public static IEnumerable<SvaraSign> Of(Section section, ScoreLine line, Dictionary<int, Breath> breaths)
    {
        var end = line.Onset + line.Length;
        var unit = line.Speed.Unit;
        for (var n = line.FirstNote; n < line.FirstNote + line.NoteCount; n++)
        {
            var note = section.Notes[n];
            var sung = note.Onset + note.Length;
            var next = n + 1 < line.FirstNote + line.NoteCount ? section.Notes[n + 1].Onset : end;
            yield return new SvaraSign(note.Onset, SignKind.Note, n);
            for (var at = note.Onset + unit; at < sung; at += unit)
            {
                yield return new SvaraSign(at, SignKind.Hold, n);
            }

            if (breaths.TryGetValue(n, out var breath))
            {
                yield return new SvaraSign(breath.Onset, SignKind.Breath, n);
            }

            // Silence is counted in the units that began with the note.
            for (var at = note.Onset + (unit * ((sung - note.Onset) / unit).Ceiling()); at < next; at += unit)
            {
                yield return new SvaraSign(at, SignKind.Silence, n);
            }
        }
    }
}

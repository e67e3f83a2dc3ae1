using System.Globalization;

namespace Warmup;

/// <summary>A line of a composition: notes one after the other, with or without silence between them. Immutable, value equality.</summary>
public sealed record TimedLine
{
    /// <summary>Makes a line.</summary>
    /// <param name="notes">
    /// The notes in order, at least one. Each begins no earlier than the one before, with its breath, has ended; only the last can be held.
    /// </param>
    /// <param name="length">
    /// Aksharas until the next line begins, 4,096 at most; <see langword="null"/> for where the last note, with its breath, ends.
    /// </param>
    /// <exception cref="ArgumentException">There are no notes, they overlap or are out of order, or the length does not hold them.</exception>
    public TimedLine(ValueList<TimedNote> notes, Rational? length = null)
    {
        if (notes.IsEmpty)
        {
            throw new ArgumentException("a line must have at least 1 note, not 0", nameof(notes));
        }

        var end = Rational.Zero;
        for (var n = 0; n < notes.Count; n++)
        {
            var note = notes[n] ?? throw new ArgumentNullException(nameof(notes), $"note {n + 1} of the line is missing");
            if (note.Onset < end)
            {
                throw new ArgumentException($"note {n + 1} of the line begins at {note.Onset}, before the note or breath ahead of it ends at {end}", nameof(notes));
            }

            if (note.IsHeld && n + 1 < notes.Count)
            {
                throw new ArgumentException($"note {n + 1} of the line is held, and only the last, note {notes.Count}, can be", nameof(notes));
            }

            end = note.End;
        }

        Notes = notes;
        Length = TimedNote.Fine(Require.InRange(length ?? end, end, Longest, nameof(length)), nameof(length));
    }

    /// <summary>The longest line, in aksharas: 4,096 (the project's own bound).</summary>
    internal static int Longest => TimeGrid.LongestLine;

    /// <summary>The notes in order, at least one.</summary>
    public ValueList<TimedNote> Notes { get; }

    /// <summary>Its length in aksharas: the next line begins there.</summary>
    public Rational Length { get; }

    /// <summary>The number of notes and the length.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Notes.Count} {(Notes.Count == 1 ? "note" : "notes")} in {Length} aksharas");
}

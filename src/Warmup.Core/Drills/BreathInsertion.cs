using System.Globalization;

namespace Warmup;

/// <summary>Takes breaths into a section: the note before each ends early.</summary>
internal static class BreathInsertion
{
    public static Section Into(Section section, ValueList<Breath> breaths)
    {
        var resolution = Resolution(section, breaths);
        var factor = resolution / section.Resolution;
        if ((long)section.LengthSteps * factor > int.MaxValue)
        {
            throw new ArgumentException($"'{Name(section)}' is too long to be given breaths; take fewer lines", nameof(section));
        }

        var notes = new ScoreNote[section.Notes.Count];
        for (var n = 0; n < notes.Length; n++)
        {
            var note = section.Notes[n];
            notes[n] = Resized(note, note.OnsetSteps * factor, note.LengthSteps * factor, resolution, note.Joining);
        }

        var all = new SortedDictionary<int, Breath>();
        foreach (var breath in section.Breaths)
        {
            all[breath.AfterNote] = breath;
        }

        foreach (var breath in breaths)
        {
            var kept = breath.AfterNote >= notes.Length ? 0 : (breath.Onset - section.Notes[breath.AfterNote].Onset) * resolution;
            if (!kept.IsInteger || kept.Sign <= 0 || kept > section.Notes[breath.AfterNote].LengthSteps * factor)
            {
                throw new ArgumentException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the breath at akshara {breath.Onset + 1} does not begin within note {breath.AfterNote + 1} of '{Name(section)}', or falls on no 24th of an akshara"),
                    nameof(breaths));
            }

            var until = breath.AfterNote + 1 < notes.Length ? section.Notes[breath.AfterNote + 1].Onset : section.Length;
            if (breath.Length.Sign <= 0 || breath.Onset + breath.Length > until)
            {
                throw new ArgumentException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"the breath after note {breath.AfterNote + 1} of '{Name(section)}' must end by akshara {until + 1}, where the next note or the end is, not at {breath.Onset + breath.Length + 1}"),
                    nameof(breaths));
            }

            var note = notes[breath.AfterNote];

            // Nothing slides over a breath.
            notes[breath.AfterNote] = Resized(note, note.OnsetSteps, (int)kept.Numerator, resolution, note.Joining == Joining.Glide ? Joining.Plain : note.Joining);
            all[breath.AfterNote] = breath;
        }

        return section with
        {
            Resolution = resolution,
            Notes = ValueList.Adopt(notes),
            Lines = section.Lines.ConvertAll(l => l.Refined(factor)),
            Measures = section.Measures.ConvertAll(m => m.Refined(factor)),
            Breaths = all.Values.ToValueList(),
            LengthSteps = section.LengthSteps * factor,
        };
    }

    /// <summary>The section's own grid where every breath falls on it, else the coarsest one that holds the breaths' grid too.</summary>
    private static int Resolution(Section section, ValueList<Breath> breaths)
    {
        foreach (var breath in breaths)
        {
            if (!(breath.Onset * section.Resolution).IsInteger || !(breath.Length * section.Resolution).IsInteger)
            {
                return section.Resolution * (int)new Rational(Delivery.FinestBreathGrid, section.Resolution).Numerator;
            }
        }

        return section.Resolution;
    }

    private static string Name(Section section) => OneLine.Cut(section.Title, 60);

    private static ScoreNote Resized(ScoreNote note, int onset, int length, int resolution, Joining joining) =>
        new(onset, length, resolution, note.PitchIndex, note.SyllableIndex, note.LineIndex, note.IsHeld) { Joining = joining, Loudness = note.Loudness };
}

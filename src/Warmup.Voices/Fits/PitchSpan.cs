namespace Warmup.Voices;

/// <summary>How far scores reach above and below their tonic, and where: all that a tonic's fit depends on.</summary>
/// <param name="Lowest">The lowest height less the tonic's keyboard note, in thousandths of a cent.</param>
/// <param name="Highest">The highest height less the tonic's keyboard note.</param>
/// <param name="LowestNote">The lowest written note less the tonic's, in semitones.</param>
/// <param name="HighestNote">The highest written note less the tonic's, in semitones.</param>
/// <param name="LowestPlace">The first note that reaches the lowest height; sections are counted through all scores.</param>
/// <param name="HighestPlace">The first note that reaches the highest height.</param>
internal readonly record struct PitchSpan(long Lowest, long Highest, int LowestNote, int HighestNote, ScorePlace LowestPlace, ScorePlace HighestPlace)
{
    public static PitchSpan Of(ValueList<Score> scores)
    {
        if (scores.IsEmpty)
        {
            throw new ArgumentException("there must be at least 1 score, not 0", nameof(scores));
        }

        var reach = new PitchSpan(long.MaxValue, long.MinValue, int.MaxValue, int.MinValue, default, default);
        var number = 0;
        foreach (var score in scores)
        {
            // The whole score moves with its first tonic, also where its sections climb.
            var tonic = score.Sections[0].Tonic.Midi;
            foreach (var section in score.Sections)
            {
                number++;
                var title = scores.Count > 1 || score.Sections.Count > 1 ? section.Title : null;
                var heights = Millicents.Of(section);
                foreach (var note in section.Notes)
                {
                    reach = reach.With(section, note, heights[note.PitchIndex], tonic, number, title);
                }
            }
        }

        return reach;
    }

    /// <summary>Whether a tonic and all its notes stay where tonics and MIDI notes may lie.</summary>
    public bool IsPossible(int tonic) =>
        tonic >= Tonic.LowestMidi && tonic <= Tonic.HighestMidi && tonic + LowestNote >= 0 && tonic + HighestNote <= 127;

    private PitchSpan With(Section section, ScoreNote note, long height, int tonic, int number, string? title)
    {
        var relative = height - (Millicents.Semitone * tonic);
        var semitones = section.PitchOf(note).Midi - tonic;
        var result = this with { LowestNote = Math.Min(LowestNote, semitones), HighestNote = Math.Max(HighestNote, semitones) };
        if (relative < Lowest)
        {
            result = result with { Lowest = relative, LowestPlace = Place() };
        }

        return relative > Highest ? result with { Highest = relative, HighestPlace = Place() } : result;

        ScorePlace Place() => new(number, note.LineIndex + 1, note.Onset, title);
    }
}

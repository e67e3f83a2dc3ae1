using System.Globalization;

namespace Warmup.Voices;

/// <summary>How far scores reach above and below their tonic, and on which lines: all that a tonic's fit depends on.</summary>
/// <param name="Lowest">The lowest height less the tonic's keyboard note, in thousandths of a cent.</param>
/// <param name="Highest">The highest height less the tonic's keyboard note.</param>
/// <param name="LowestNote">The lowest written note less the tonic's, in semitones.</param>
/// <param name="HighestNote">The highest written note less the tonic's, in semitones.</param>
/// <param name="LowestPlace">The first line that reaches the lowest height, in words.</param>
/// <param name="HighestPlace">The first line that reaches the highest height, in words.</param>
internal readonly record struct PitchSpan(long Lowest, long Highest, int LowestNote, int HighestNote, string LowestPlace, string HighestPlace)
{
    public static PitchSpan Of(ValueList<Score> scores)
    {
        if (scores.IsEmpty)
        {
            throw new ArgumentException("there must be at least 1 score, not 0", nameof(scores));
        }

        var reach = new PitchSpan(long.MaxValue, long.MinValue, int.MaxValue, int.MinValue, string.Empty, string.Empty);
        foreach (var score in scores)
        {
            // The whole score moves with its first tonic, also where its sections climb.
            var tonic = score.Sections[0].Tonic.Midi;
            foreach (var section in score.Sections)
            {
                var heights = Millicents.Of(section);
                foreach (var note in section.Notes)
                {
                    reach = reach.With(section, note, heights[note.PitchIndex], tonic, scores.Count > 1 || score.Sections.Count > 1);
                }
            }
        }

        return reach;
    }

    /// <summary>Whether a tonic and all its notes stay where tonics and MIDI notes may lie.</summary>
    public bool IsPossible(int tonic) =>
        tonic >= Tonic.LowestMidi && tonic <= Tonic.HighestMidi && tonic + LowestNote >= 0 && tonic + HighestNote <= 127;

    private PitchSpan With(Section section, ScoreNote note, long height, int tonic, bool isOneOfSeveral)
    {
        var relative = height - (Millicents.Semitone * tonic);
        var semitones = section.PitchOf(note).Midi - tonic;
        var result = this with { LowestNote = Math.Min(LowestNote, semitones), HighestNote = Math.Max(HighestNote, semitones) };
        if (relative < Lowest)
        {
            result = result with { Lowest = relative, LowestPlace = Place() };
        }

        return relative > Highest ? result with { Highest = relative, HighestPlace = Place() } : result;

        string Place()
        {
            var line = string.Create(CultureInfo.InvariantCulture, $"line {note.LineIndex + 1}");
            return isOneOfSeveral ? $"{line} of {section.Title}" : line;
        }
    }
}

namespace Warmup.Takes;

/// <summary>A note of the drill as a take is held against it.</summary>
/// <param name="Index">Its index among all notes of the score, from 0.</param>
/// <param name="Line">The index of its line among all lines of the score, from 0.</param>
/// <param name="Cents">Its pitch in cents above MIDI note 0.</param>
/// <param name="Onset">Its onset in seconds from the score's beginning.</param>
/// <param name="Seconds">How long it sounds, in seconds.</param>
/// <param name="IsFirst">Whether it begins its line.</param>
/// <param name="IsLast">Whether it ends its line.</param>
/// <param name="Section">The index of its section.</param>
/// <param name="Pitch">The index of its pitch in the section.</param>
/// <param name="Syllable">What is sung.</param>
internal readonly record struct DrillNote(
    int Index, int Line, double Cents, double Onset, double Seconds, bool IsFirst, bool IsLast, int Section, int Pitch, string Syllable);

/// <summary>A line of the drill as a take is held against it.</summary>
/// <param name="Number">Its number in its round, from 1.</param>
/// <param name="Round">Its round, from 1, counted through all sections.</param>
/// <param name="First">The index of its first note.</param>
/// <param name="Count">The number of its notes.</param>
internal readonly record struct DrillLine(int Number, int Round, int First, int Count);

/// <summary>A score laid out for a take: its notes and lines one after the other, whatever sections they stand in.</summary>
internal sealed class DrillNotes
{
    public DrillNotes(Score score)
    {
        var (notes, lines) = (new List<DrillNote>(), new List<DrillLine>());
        var starts = score.SectionStarts();
        var rounds = 0;
        for (var s = 0; s < score.Sections.Count; s++)
        {
            var section = score.Sections[s];
            var (start, firstNote, firstLine) = (starts[s].ToDouble(), notes.Count, lines.Count);
            var number = 0;
            for (var l = 0; l < section.Lines.Count; l++)
            {
                var line = section.Lines[l];
                number = l > 0 && section.Lines[l - 1].Round == line.Round ? number + 1 : 1;
                lines.Add(new DrillLine(number, rounds + line.Round + 1, firstNote + line.FirstNote, line.NoteCount));
            }

            rounds += section.Rounds;
            for (var n = 0; n < section.Notes.Count; n++)
            {
                var note = section.Notes[n];
                var line = section.Lines[note.LineIndex];

                // The singer's line comes in the answer, where there is one.
                var shift = line.HasAnswer ? line.AnswerOnset - line.Onset : Rational.Zero;
                var onset = section.SecondsAt(note.Onset + shift).ToDouble();
                notes.Add(new DrillNote(
                    firstNote + n,
                    firstLine + note.LineIndex,
                    Pitches.Cents(section.PitchOf(note).Hz),
                    start + onset,
                    Math.Max(0.02, section.SecondsAt(note.SoundEnd + shift).ToDouble() - onset),
                    n == line.FirstNote,
                    n == line.FirstNote + line.NoteCount - 1,
                    s,
                    note.PitchIndex,
                    section.SyllableOf(note)));
            }
        }

        (Score, Notes, Lines) = (score, [.. notes], [.. lines]);
        Tonic = Notes[0].Cents - score.Sections[0].PitchOf(score.Sections[0].Notes[0]).Cents;
    }

    public Score Score { get; }

    public DrillNote[] Notes { get; }

    public DrillLine[] Lines { get; }

    /// <summary>The tonic of the first section in cents above MIDI note 0.</summary>
    public double Tonic { get; }

    /// <summary>The tone of a note.</summary>
    public ScaleTone ToneOf(DrillNote note) => Score.Sections[note.Section].Pitches[note.Pitch].Tone;

    /// <summary>The tone nearest to a pitch that was heard in place of a note: one of the drill's own where one is as near, else one of the twelve.</summary>
    /// <param name="note">The note.</param>
    /// <param name="cents">How far above the note the pitch is, in cents.</param>
    public ScaleTone ToneBeside(DrillNote note, double cents)
    {
        var section = Score.Sections[note.Section];
        var heard = section.Pitches[note.Pitch].Cents + cents;
        var semitones = (int)Math.Round(heard / 100);
        foreach (var pitch in section.Pitches)
        {
            if (pitch.Tone.Semitones == semitones)
            {
                return pitch.Tone;
            }
        }

        var octave = (int)Math.Floor(semitones / 12.0);
        return new ScaleTone(Twelve[semitones - (12 * octave)], octave);
    }

    /// <summary>The common names of the twelve places (common practice).</summary>
    private static readonly Degree[] Twelve = Array.ConvertAll(
        (string[])["S", "R1", "R2", "G2", "G3", "M1", "M2", "P", "D1", "D2", "N2", "N3"], name => ScaleTone.Parse(name).Degree);
}

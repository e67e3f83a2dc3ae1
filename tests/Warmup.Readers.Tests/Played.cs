using NAudio.Midi;

namespace Warmup.Readers.Tests;

/// <summary>A note that sounds: the keyboard's note, where it begins and how long it lasts, in quarter notes.</summary>
internal readonly record struct SoundingNote(int Midi, double Onset, double Length);

/// <summary>The notes a score asks for, and the ones a MIDI file made by another program has.</summary>
internal static class Played
{
    // A program counts in 480ths of a quarter note and ends a note one count early; fractions are rounded to the nearest count.
    public const double Onset = 1.01 / 480;
    public const double Length = 2.01 / 480;

    /// <summary>The notes of a score in equal steps, in the file's own quarter notes, so many semitones higher.</summary>
    public static List<SoundingNote> Expected(Score score, int semitones = 0)
    {
        var notes = new List<SoundingNote>();
        var begins = Rational.Zero;
        foreach (var section in score.Sections)
        {
            var quarters = 4 * section.Meter.BeatValue;
            foreach (var note in section.Notes)
            {
                var midi = section.Tonic.Midi + section.PitchOf(note).Tone.Semitones + semitones;
                notes.Add(new SoundingNote(midi, (begins + (note.Onset * quarters)).ToDouble(), (note.Length * quarters).ToDouble()));
            }

            begins += section.Length * quarters;
        }

        return notes;
    }

    /// <summary>The notes of a file, a list for each track that has any.</summary>
    public static List<List<SoundingNote>> Tracks(string path)
    {
        var file = new MidiFile(path, strictChecking: false);
        double quarter = file.DeltaTicksPerQuarterNote;
        return
        [
            .. file.Events.Select(t => t.OfType<NoteOnEvent>().Where(n => n.Velocity > 0)
                .Select(n => new SoundingNote(n.NoteNumber, n.AbsoluteTime / quarter, n.NoteLength / quarter)).OrderBy(n => n.Onset).ThenBy(n => n.Midi).ToList())
                .Where(t => t.Count > 0),
        ];
    }

    /// <summary>The first difference between two lists of notes; null where they agree.</summary>
    public static string? Difference(List<SoundingNote> expected, List<SoundingNote> actual)
    {
        for (var i = 0; i < Math.Min(expected.Count, actual.Count); i++)
        {
            var (e, a) = (expected[i], actual[i]);
            if (e.Midi != a.Midi || Math.Abs(e.Onset - a.Onset) > Onset || Math.Abs(e.Length - a.Length) > Length)
            {
                return $"note {i + 1} should be {e} and is {a}";
            }
        }

        return expected.Count == actual.Count ? null : $"there should be {expected.Count} notes and there are {actual.Count}";
    }
}

using System.Globalization;

namespace Warmup;

public sealed partial record Section
{
    /// <summary>
    /// The section as a voice sings it higher or lower at the same time: the tonic and all pitches move, the times stay. By whole octaves the
    /// written names keep their letters; otherwise the new tonic is named for the scale, and the notes by that name.
    /// </summary>
    /// <param name="semitones">How many semitones higher; a negative number lowers.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The tonic would leave C1 to C7, a note would leave the MIDI notes 0 to 127, or a name would need more than three accidentals.
    /// </exception>
    public Section Transposed(int semitones)
    {
        if (semitones == 0)
        {
            return this;
        }

        var tonic = Tonic.Transposed(semitones);
        var (octaves, rest) = Math.DivRem(semitones, 12);
        var tonicName = rest == 0 ? Raised(TonicName, octaves) : Spelling.ChooseTonic(tonic, Scale, out _);
        var hz = tonic.Hz;
        var pitches = Pitches.ConvertAll(pitch =>
        {
            var midi = pitch.Midi + semitones;
            if (midi is < 0 or > 127)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(semitones),
                    semitones,
                    string.Create(CultureInfo.InvariantCulture, $"{pitch.Tone} would be MIDI note {midi}; it must lie from 0 to 127"));
            }

            var name = rest == 0 ? Raised(pitch.Name, octaves) : Spelling.Name(pitch.Tone, tonicName);
            return pitch.MovedTo(name, Tuning.Hz(pitch.Tone, hz));
        });
        return this with { Tonic = tonic, TonicName = tonicName, Pitches = pitches };
    }

    private static NoteName Raised(NoteName name, int octaves) => new(name.Letter, name.Alteration, name.Octave + octaves);
}

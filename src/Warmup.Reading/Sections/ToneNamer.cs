namespace Warmup.Reading;

/// <summary>Names the tones of a scale that pitches are.</summary>
internal sealed class ToneNamer(Scale scale, Tonic tonic, NoteName? tonicName)
{
    private readonly ValueList<Degree> _degrees = scale.Degrees;

    /// <summary>The tone of a note, and whether the scale has it.</summary>
    public ScaleTone Of(in RawNote note, out bool isInScale)
    {
        var semitones = note.Midi - tonic.Midi;
        var written = note.Name is { } name && tonicName is { } from ? Written(name, from, semitones) : null;
        Degree? first = null;
        foreach (var degree in _degrees)
        {
            if ((semitones - degree.Semitones) % 12 != 0)
            {
                continue;
            }

            if (written == degree)
            {
                first = degree;
                break;
            }

            first ??= degree;
        }

        isInScale = first is not null;
        var chosen = first ?? written ?? Usual(((semitones % 12) + 12) % 12);
        return new ScaleTone(chosen, Math.Clamp((semitones - chosen.Semitones) / 12, -ScaleTone.HighestOctave, ScaleTone.HighestOctave));
    }

    /// <summary>The degree that a note's letter makes it, if its alteration is one that degrees have.</summary>
    private static Degree? Written(NoteName name, NoteName tonic, int semitones)
    {
        var letters = (name.LetterIndex - tonic.LetterIndex + 7) % 7;
        var octaves = ((7 * name.Octave) + name.LetterIndex - (7 * tonic.Octave) - tonic.LetterIndex - letters) / 7;
        var alteration = semitones - (12 * octaves) - new Degree(letters + 1).Semitones;
        return alteration is >= -2 and <= 2 ? new Degree(letters + 1, alteration) : null;
    }

    /// <summary>The degree that a semitone usually is: S R1 R2 G2 G3 M1 M2 P D1 D2 N2 N3.</summary>
    private static Degree Usual(int semitone) => semitone switch
    {
        0 => new Degree(1),
        1 => new Degree(2, -1),
        2 => new Degree(2),
        3 => new Degree(3, -1),
        4 => new Degree(3),
        5 => new Degree(4),
        6 => new Degree(4, 1),
        7 => new Degree(5),
        8 => new Degree(6, -1),
        9 => new Degree(6),
        10 => new Degree(7, -1),
        _ => new Degree(7),
    };
}

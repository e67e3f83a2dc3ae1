namespace Warmup.Reading;

/// <summary>How well a scale fits the notes and moves of a melody, from a tonic. Less is better, in this order.</summary>
/// <param name="Outside">Pitch classes that are sung and that the scale lacks.</param>
/// <param name="Unused">Pitch classes of the scale that are not sung.</param>
/// <param name="Unlike">Moves to a neighbour that are sung and in neither list, and moves of the lists that are not sung.</param>
internal readonly record struct ScaleFit(int Outside, int Unused, int Unlike) : IComparable<ScaleFit>
{
    public int CompareTo(ScaleFit other) => (Outside, Unused, Unlike).CompareTo((other.Outside, other.Unused, other.Unlike));
}

/// <summary>The pitch classes of a scale over its tonic, and the moves from note to note of its two lists.</summary>
internal sealed class ScaleShape
{
    private readonly int _notes;
    private readonly PitchMoves _moves = new();

    public ScaleShape(Scale scale)
    {
        Scale = scale;
        _notes = scale.Degrees.Aggregate(0, (mask, d) => mask | (1 << ((d.Semitones + 12) % 12)));
        foreach (var list in (ValueList<ScaleTone>[])[scale.Ascent, scale.Descent])
        {
            for (var t = 1; t < list.Count; t++)
            {
                _moves.Add(list[t - 1].Semitones, list[t].Semitones);
            }
        }
    }

    public Scale Scale { get; }

    public ScaleFit Of(PitchMoves melody, int tonic)
    {
        var all = PitchMoves.Rotate(melody.Notes, tonic);
        return new ScaleFit(int.PopCount(all & ~_notes), int.PopCount(_notes & ~all), _moves.Unlike(melody, tonic));
    }
}

/// <summary>The pitch classes of a melody, and which of them follow each other at a small interval.</summary>
internal sealed class PitchMoves
{
    // A step of a five-note scale is at most a fourth; what is wider leaps over notes (the project's own setting).
    private const int Widest = 5;

    private readonly int[] _up = new int[12];
    private readonly int[] _down = new int[12];

    public int Notes { get; private set; }

    public static PitchMoves Of(RawNote[] notes)
    {
        var moves = new PitchMoves { Notes = notes.Length == 0 ? 0 : 1 << (notes[0].Midi % 12) };
        for (var n = 1; n < notes.Length; n++)
        {
            moves.Add(notes[n - 1].Midi, notes[n].Midi);
        }

        return moves;
    }

    public void Add(int from, int to)
    {
        var (a, b) = (Class(from), Class(to));
        Notes |= (1 << a) | (1 << b);
        if (to != from && Math.Abs(to - from) <= Widest)
        {
            (to > from ? _up : _down)[a] |= 1 << b;
        }
    }

    /// <summary>How many moves are in one of two melodies only, the other one from a tonic.</summary>
    public int Unlike(PitchMoves other, int tonic)
    {
        var unlike = 0;
        for (var pc = 0; pc < 12; pc++)
        {
            var there = (pc + tonic) % 12;
            unlike += int.PopCount(_up[pc] ^ Rotate(other._up[there], tonic)) + int.PopCount(_down[pc] ^ Rotate(other._down[there], tonic));
        }

        return unlike;
    }

    /// <summary>A set of pitch classes, counted from another one.</summary>
    public static int Rotate(int set, int from) => ((set >> from) | (set << (12 - from))) & 0xFFF;

    private static int Class(int semitones) => ((semitones % 12) + 12) % 12;
}

using System.Globalization;

namespace Warmup.Voices;

/// <summary>How often each kind of interval stands between neighbouring notes of the same line, by its semitones, rising or falling.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record IntervalCounts
{
    private IntervalCounts()
    {
    }

    /// <summary>0 semitones.</summary>
    public int Unisons { get; private init; }

    /// <summary>1 or 2 semitones.</summary>
    public int Steps { get; private init; }

    /// <summary>3 or 4 semitones.</summary>
    public int Thirds { get; private init; }

    /// <summary>5 semitones.</summary>
    public int Fourths { get; private init; }

    /// <summary>6 semitones.</summary>
    public int Tritones { get; private init; }

    /// <summary>7 semitones.</summary>
    public int Fifths { get; private init; }

    /// <summary>8 or 9 semitones.</summary>
    public int Sixths { get; private init; }

    /// <summary>10 or 11 semitones.</summary>
    public int Sevenths { get; private init; }

    /// <summary>12 semitones.</summary>
    public int Octaves { get; private init; }

    /// <summary>13 semitones and more.</summary>
    public int BeyondOctave { get; private init; }

    /// <summary>All intervals: the notes less the lines.</summary>
    public int All => Unisons + Steps + Thirds + Fourths + Tritones + Fifths + Sixths + Sevenths + Octaves + BeyondOctave;

    /// <summary>Counts the intervals of some lines.</summary>
    /// <param name="lines">The lines.</param>
    public static IntervalCounts Of(ValueList<Line> lines)
    {
        // By semitones; the last place stands for all that is wider than an octave.
        Span<int> counts = stackalloc int[14];
        foreach (var line in lines)
        {
            var notes = line.Notes.AsSpan();
            for (var i = 1; i < notes.Length; i++)
            {
                counts[Math.Min(Math.Abs(notes[i].Tone.Semitones - notes[i - 1].Tone.Semitones), counts.Length - 1)]++;
            }
        }

        return new IntervalCounts
        {
            Unisons = counts[0],
            Steps = counts[1] + counts[2],
            Thirds = counts[3] + counts[4],
            Fourths = counts[5],
            Tritones = counts[6],
            Fifths = counts[7],
            Sixths = counts[8] + counts[9],
            Sevenths = counts[10] + counts[11],
            Octaves = counts[12],
            BeyondOctave = counts[13],
        };
    }

    /// <summary>The counts in one line.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Unisons} unisons, {Steps} steps, {Thirds} thirds, {Fourths} fourths, {Tritones} tritones, {Fifths} fifths, {Sixths} sixths, {Sevenths} sevenths, {Octaves} octaves, {BeyondOctave} wider");
}

namespace Warmup;

public sealed partial record Section
{
    // More octaves on either side of the middle one than any voice has.
    private const int FarthestOctave = 3;

    /// <summary>The written name of each degree of the scale in the middle octave, in the order of <see cref="Scale.Degrees"/>.</summary>
    public ValueList<NoteName> DegreeNames() => Scale.Degrees.ConvertAll(degree => Spelling.Name(new ScaleTone(degree), TonicName));

    /// <summary>
    /// The tones of the scale that lie between two heights as they are tuned, and all tones that are sung in the section, from the lowest to
    /// the highest; each with its cents above the middle tonic.
    /// </summary>
    /// <param name="lowestCents">The lower height in cents above the middle tonic.</param>
    /// <param name="highestCents">The upper height in cents above the middle tonic.</param>
    public ValueList<(ScaleTone Tone, double Cents)> TonesBetween(double lowestCents, double highestCents)
    {
        var tones = new List<(ScaleTone Tone, double Cents)>();
        for (var octave = -FarthestOctave; octave <= FarthestOctave; octave++)
        {
            foreach (var degree in Scale.Degrees)
            {
                var tone = new ScaleTone(degree, octave);
                if (Tuning.Cents(tone) is var cents && cents >= lowestCents && cents <= highestCents)
                {
                    tones.Add((tone, cents));
                }
            }
        }

        // A pattern's own letters may lie outside the scale.
        foreach (var pitch in Pitches)
        {
            if (!tones.Exists(t => t.Tone == pitch.Tone))
            {
                tones.Add((pitch.Tone, pitch.Cents));
            }
        }

        tones.Sort((a, b) => (a.Cents, a.Tone).CompareTo((b.Cents, b.Tone)));
        return tones.ToValueList();
    }

    /// <summary>How far a note of a keyboard that is tuned to the tonic's A4 lies above the middle tonic, in cents.</summary>
    /// <param name="note">The note of the keyboard.</param>
    public double CentsOf(NoteName note) => ((note.Midi - Tonic.Midi) * 100) - Tonic.OffsetCents;
}

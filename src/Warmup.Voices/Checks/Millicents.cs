namespace Warmup.Voices;

/// <summary>
/// The sounding height of a pitch as a whole number: thousandths of a cent above MIDI note 0 of a keyboard at A4 = 440 Hz.
/// </summary>
/// <remarks>Cents of just intervals are rounded once, here. After that only whole numbers are compared, so that no result depends on the last bit.</remarks>
internal static class Millicents
{
    /// <summary>A semitone.</summary>
    public const long Semitone = 100_000;

    /// <summary>How far a note may lie beyond the range's last note and still count as that note: just thirds lie 14, a just D 18 cents off.</summary>
    public const long Tolerance = Semitone / 2;

    public static long Of(ScorePitch pitch) => (Semitone * pitch.Midi) + (long)Math.Round(1000 * pitch.OffsetCents, MidpointRounding.ToEven);

    public static long Of(NoteName name) => Semitone * name.Midi;

    public static Rational Semitones(long height) => new(height, Semitone);

    /// <summary>The heights of a section's pitches, by their index.</summary>
    public static long[] Of(Section section)
    {
        var heights = new long[section.Pitches.Count];
        for (var i = 0; i < heights.Length; i++)
        {
            heights[i] = Of(section.Pitches[i]);
        }

        return heights;
    }

    /// <summary>How much of an excess counts: nothing within the tolerance, all of it beyond.</summary>
    public static long Excess(long beyond) => beyond > Tolerance ? beyond : 0;
}

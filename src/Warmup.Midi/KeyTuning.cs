namespace Warmup.Midi;

/// <summary>How MIDI plays a pitch: the key, and its bend or the pitch to which it is retuned.</summary>
/// <param name="Key">The MIDI note, 0 to 127.</param>
/// <param name="Bend">The pitch bend, 0 to 16383; 8192 is no bend.</param>
/// <param name="Retuned">The pitch of the key in the MIDI Tuning Standard: semitones times 16384, or -1 where it is not retuned.</param>
internal readonly record struct KeyTuning(int Key, int Bend, int Retuned)
{
    /// <summary>The range of the bend, in whole semitones: two, since some players ignore the cents of a range.</summary>
    public const int BendSemitones = 2;

    /// <summary>No bend.</summary>
    public const int NoBend = 8192;

    private const int MostBend = 16383;

    // 7F 7F 7F means "no change", not a pitch.
    private const int HighestRetuned = (128 << 14) - 2;

    /// <summary>How MIDI plays a pitch.</summary>
    /// <param name="pitch">The pitch.</param>
    /// <param name="tuning">How the file tunes.</param>
    /// <param name="bendSemitones">The range of the bend.</param>
    /// <returns>The key and its tuning, or <see langword="null"/> where MIDI has no such note.</returns>
    public static KeyTuning? Of(ScorePitch pitch, MidiTuning tuning, int bendSemitones = BendSemitones)
    {
        var key = pitch.Midi;
        if (!double.IsFinite(pitch.OffsetCents) || Math.Abs(pitch.OffsetCents) > 12_800)
        {
            return null;
        }

        switch (tuning)
        {
            case MidiTuning.EqualOnly:
                return InKeys(key) ? new KeyTuning(key, NoBend, -1) : null;
            case MidiTuning.TuningStandard:
                var retuned = Round((key + (pitch.OffsetCents / 100)) * (1 << 14));
                return InKeys(key) && retuned is >= 0 and <= HighestRetuned ? new KeyTuning(key, NoBend, retuned) : null;
            default:
                var shift = 0;
                if (!InKeys(key) || NoBend + BendOf(pitch.OffsetCents, BendSemitones) is < 0 or > MostBend)
                {
                    // Beyond the usual range of the bend, the key nearest to the sound replaces the written one.
                    shift = Round(pitch.OffsetCents / 100);
                    key += shift;
                }

                return InKeys(key) ? new KeyTuning(key, NoBend + BendOf(pitch.OffsetCents - (100.0 * shift), bendSemitones), -1) : null;
        }
    }

    /// <summary>The bend that raises a key by a number of cents, counted from no bend.</summary>
    public static int BendOf(double cents, int bendSemitones) => cents == 0 ? 0 : Round(cents / (100.0 * bendSemitones / NoBend));

    private static bool InKeys(int key) => key is >= 0 and <= 127;

    private static int Round(double value) => (int)Math.Round(value, MidpointRounding.AwayFromZero);
}

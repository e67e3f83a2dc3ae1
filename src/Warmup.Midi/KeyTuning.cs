namespace Warmup.Midi;

/// <summary>How a pitch is played: the key, the bend on top of it, or the pitch it is retuned to.</summary>
/// <param name="Key">The MIDI note, 0 to 127.</param>
/// <param name="Bend">The pitch bend, 0 to 16383; 8192 bends nothing.</param>
/// <param name="Retuned">The pitch of the key in the MIDI Tuning Standard: semitones times 16384, or -1 where it is not retuned.</param>
internal readonly record struct KeyTuning(int Key, int Bend, int Retuned)
{
    /// <summary>The range to which the bend is set, in whole semitones: two, since some players ignore a range's cents.</summary>
    public const int BendSemitones = 2;

    /// <summary>The bend that bends nothing.</summary>
    public const int NoBend = 8192;

    private const int MostBend = 16383;
    private const double CentsPerBend = 100.0 * BendSemitones / NoBend;

    // 7F 7F 7F means "no change" and is no pitch.
    private const int HighestRetuned = (128 << 14) - 2;

    /// <summary>How to play a pitch.</summary>
    /// <param name="pitch">The pitch.</param>
    /// <param name="tuning">How the file tunes.</param>
    /// <returns>How, or <see langword="null"/> where MIDI has no such note.</returns>
    public static KeyTuning? Of(ScorePitch pitch, MidiTuning tuning)
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
                var bend = NoBend + Round(pitch.OffsetCents / CentsPerBend);
                if (!InKeys(key) || bend is < 0 or > MostBend)
                {
                    // Beyond the range the key nearest the sound is taken instead of the written one.
                    var shift = Round(pitch.OffsetCents / 100);
                    key += shift;
                    bend = NoBend + Round((pitch.OffsetCents - (100.0 * shift)) / CentsPerBend);
                }

                return InKeys(key) ? new KeyTuning(key, bend, -1) : null;
        }
    }

    private static bool InKeys(int key) => key is >= 0 and <= 127;

    private static int Round(double value) => (int)Math.Round(value, MidpointRounding.AwayFromZero);
}

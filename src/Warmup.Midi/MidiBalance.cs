namespace Warmup.Midi;

/// <summary>The velocities and volumes with which the usual instruments lie as <see cref="SoundBalance"/> says.</summary>
/// <remarks>
/// Measured: ladders on five tonics from 110 to 233 Hz, rendered by FluidSynth 2.3.1 without reverb and chorus with the sound fonts TimGM6mb and
/// MuseScore_General_Lite, each part alone, in LKFS (ITU-R BS.1770-5). With these velocities and the volume 100, sound 105 lay 7.7 and 8.2 dB below
/// sound 54, and sound 21 lay 2.2 and 0.8 dB below it.
/// </remarks>
internal static class MidiBalance
{
    public const int VoiceVelocity = 90;
    public const int DroneVelocity = 62;

    /// <summary>The volume that General MIDI gives a channel by itself.</summary>
    public const int UsualVolume = 100;

    private const double PluckedBelowVoice = 8;
    private const double HeldBelowVoice = 1.5;

    public static int DroneVolume { get; } = VolumeFor(PluckedBelowVoice);

    public static int HeldDroneVolume { get; } = VolumeFor(HeldBelowVoice);

    /// <summary>The volume of what lies some decibels below the voice at the usual one, by the curve that General MIDI 2 recommends (from memory): 40 lg.</summary>
    private static int VolumeFor(double below) =>
        Math.Clamp((int)Math.Round(UsualVolume * Math.Pow(10, (below - SoundBalance.DroneBelowVoice) / 40)), 1, 127);
}

using System.Globalization;

namespace Warmup.Audio;

/// <summary>The channels of a sound file.</summary>
public enum WavChannels
{
    /// <summary>
    /// Two channels: the voice on the left, the drone and the beat on the right, so that a singer can turn the guide off and keep what
    /// accompanies it.
    /// </summary>
    Stereo,

    /// <summary>One channel with everything.</summary>
    Mono,
}

/// <summary>How the drone sounds.</summary>
public enum DroneSound
{
    /// <summary>A tanpura: the score's strings, plucked in the score's order, ringing until they are plucked again.</summary>
    Plucked,

    /// <summary>A sruti box: every pitch of the strings held from the beginning to the end.</summary>
    Held,
}

/// <summary>What a sound file holds and how it sounds. Immutable, value equality.</summary>
public sealed record WavOptions
{
    /// <summary>The most beats of a count-in (the project's own bound: the longest avartana).</summary>
    public static int MostCountInBeats => Meter.MostBeats;

    /// <summary>The lowest level of a part, in decibels (the project's own bound); to silence a part, leave it out.</summary>
    public const double LowestDecibels = -60;

    private readonly int _sampleRate = 44_100;
    private readonly int _countInBeats = 4;
    private readonly double _voiceDecibels;
    private readonly double _droneDecibels;
    private readonly double _beatDecibels;

    /// <summary>The options unless others are given.</summary>
    public static WavOptions Default { get; } = new();

    /// <summary>The channels; <see cref="WavChannels.Stereo"/> by default.</summary>
    public WavChannels Channels { get; init; }

    /// <summary>Frames a second: 44,100 (the default) or 48,000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is neither.</exception>
    public int SampleRate
    {
        get => _sampleRate;
        init => _sampleRate = value is 44_100 or 48_000
            ? value
            : throw new ArgumentOutOfRangeException(
                nameof(SampleRate), value, string.Create(CultureInfo.InvariantCulture, $"SampleRate must be 44100 or 48000, not {value}"));
    }

    /// <summary>Whether the guide tone sounds; true by default.</summary>
    public bool HasVoice { get; init; } = true;

    /// <summary>Whether the drone sounds, where the score has one; true by default.</summary>
    public bool HasDrone { get; init; } = true;

    /// <summary>
    /// How the drone sounds; <see cref="DroneSound.Plucked"/> by default. A drone that the score holds (a sruti box) is always held.
    /// </summary>
    public DroneSound DroneSound { get; init; }

    /// <summary>
    /// Whether every akshara has a soft click, true by default: one stronger at the beginning of each anga and one stronger still at the
    /// beginning of each avartana. In free rhythm all are alike.
    /// </summary>
    public bool HasBeat { get; init; } = true;

    /// <summary>
    /// The clicks before the score begins, at its first tempo and also without a beat: 0 to 64; 4 by default (the project's own
    /// setting), and none where the score counts itself in. They are counted so that the first avartana follows the last of them; the drone sounds from the first.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int CountInBeats
    {
        get => _countInBeats;
        init => _countInBeats = value >= 0 && value <= MostCountInBeats
            ? value
            : throw new ArgumentOutOfRangeException(
                nameof(CountInBeats),
                value,
                string.Create(CultureInfo.InvariantCulture, $"CountInBeats must be between 0 and {MostCountInBeats}, not {value}"));
    }

    /// <summary>Whether a marker stands at the beginning of each line, and of each answer; true by default.</summary>
    public bool HasMarkers { get; init; } = true;

    /// <summary>The level of the guide tone below its usual one, in decibels: -60 to 0; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public double VoiceDecibels
    {
        get => _voiceDecibels;
        init => _voiceDecibels = Level(value, nameof(VoiceDecibels));
    }

    /// <summary>The level of the drone below its usual one, in decibels: -60 to 0; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public double DroneDecibels
    {
        get => _droneDecibels;
        init => _droneDecibels = Level(value, nameof(DroneDecibels));
    }

    /// <summary>The level of the beat below its usual one, in decibels: -60 to 0; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public double BeatDecibels
    {
        get => _beatDecibels;
        init => _beatDecibels = Level(value, nameof(BeatDecibels));
    }

    /// <summary>The form of the file and the levels.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Channels} at {SampleRate} Hz, voice {VoiceDecibels} dB, drone {DroneDecibels} dB, beat {BeatDecibels} dB");

    // Only downwards: the usual levels are what the peak allows.
    private static double Level(double value, string name) => value is >= LowestDecibels and <= 0
        ? value
        : throw new ArgumentOutOfRangeException(
            name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be between {LowestDecibels} and 0, not {value}"));
}

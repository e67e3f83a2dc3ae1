using System.Globalization;

namespace Warmup.Audio;

/// <summary>The channels of a sound file.</summary>
public enum WavChannels
{
    /// <summary>
    /// Two channels: the voice on the left, the drone and the beat on the right, so that a singer can turn off the guide and keep what
    /// accompanies it.
    /// </summary>
    Stereo,

    /// <summary>One channel with everything.</summary>
    Mono,
}

/// <summary>How the drone sounds.</summary>
public enum DroneSound
{
    /// <summary>A tanpura: the score's strings, plucked in the score's order; each rings until it is plucked again.</summary>
    Plucked,

    /// <summary>A sruti box: every pitch of the strings held from the beginning to the end.</summary>
    Held,
}

/// <summary>What a sound file holds and how it sounds. Immutable, value equality.</summary>
public sealed record WavOptions
{
    // The project's own bounds. Levels only go down: the usual ones are what the peak allows.
    private const int MostCountInBeats = 64;
    private const double LowestDecibels = -60;

    private readonly WavChannels _channels;
    private readonly DroneSound _droneSound;
    private readonly int _sampleRate = 44_100;
    private readonly int _countInBeats = 4;
    private readonly double _voiceDecibels;
    private readonly double _droneDecibels;
    private readonly double _beatDecibels;

    /// <summary>The options unless others are given.</summary>
    public static WavOptions Default { get; } = new();

    /// <summary>The channels; <see cref="WavChannels.Stereo"/> by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public WavChannels Channels
    {
        get => _channels;
        init => _channels = Require.Defined(value, nameof(Channels));
    }

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
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public DroneSound DroneSound
    {
        get => _droneSound;
        init => _droneSound = Require.Defined(value, nameof(DroneSound));
    }

    /// <summary>
    /// Whether every akshara has a soft click; true by default. The click is stronger at the beginning of each anga, and stronger still at the
    /// beginning of each avartana. In free rhythm all are alike.
    /// </summary>
    public bool HasBeat { get; init; } = true;

    /// <summary>
    /// The clicks before the score begins, at its first tempo: 0 to 64; 4 by default (the project's own setting). There are none where the score
    /// counts itself in. <see cref="HasBeat"/> does not matter to them. The first avartana follows the last click; the drone sounds from the
    /// first.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int CountInBeats
    {
        get => _countInBeats;
        init => _countInBeats = Require.InRange(value, 0, MostCountInBeats, nameof(CountInBeats));
    }

    /// <summary>Whether a marker stands at the beginning of each line, and of each answer; true by default.</summary>
    public bool HasMarkers { get; init; } = true;

    /// <summary>The level of the guide tone below its usual one, in decibels: -60 to 0; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public double VoiceDecibels
    {
        get => _voiceDecibels;
        init => _voiceDecibels = Require.InRange(value, LowestDecibels, 0.0, nameof(VoiceDecibels));
    }

    /// <summary>The level of the drone below its usual one, in decibels: -60 to 0; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public double DroneDecibels
    {
        get => _droneDecibels;
        init => _droneDecibels = Require.InRange(value, LowestDecibels, 0.0, nameof(DroneDecibels));
    }

    /// <summary>The level of the beat below its usual one, in decibels: -60 to 0; 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public double BeatDecibels
    {
        get => _beatDecibels;
        init => _beatDecibels = Require.InRange(value, LowestDecibels, 0.0, nameof(BeatDecibels));
    }

    /// <summary>The form of the file and the levels.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Channels} at {SampleRate} Hz, voice {VoiceDecibels} dB, drone {DroneDecibels} dB, beat {BeatDecibels} dB");
}

namespace Warmup.Midi;

/// <summary>How a file makes its notes sound in tune.</summary>
public enum MidiTuning
{
    /// <summary>
    /// A pitch bend before each note whose bend differs from the one before; 0.0244 cents a step, so at most 0.0123 cents off. Nearly
    /// everything that plays MIDI honours it.
    /// </summary>
    PitchBend,

    /// <summary>
    /// Single-note changes of the MIDI Tuning Standard, and the selection of the tuning program; 0.0061 cents a step. Few programs honour
    /// it; the others play equal steps.
    /// </summary>
    TuningStandard,

    /// <summary>
    /// The written notes alone, in equal steps at the player's own pitch. A tuning, a tonic between the keys and another A4 are lost.
    /// </summary>
    EqualOnly,
}

/// <summary>How lyrics, names and markers are written as bytes.</summary>
public enum MidiTextEncoding
{
    /// <summary>
    /// ASCII, as the standard asks: letters with marks lose them (<c>ā</c> becomes <c>a</c>). Other characters become <c>?</c> in names
    /// and are refused in lyrics.
    /// </summary>
    Ascii,

    /// <summary>UTF-8 without a byte-order mark. Many programs show it right; the standard does not know it.</summary>
    Utf8,
}

/// <summary>Where the beat is clicked: on each akshara, with an accent on the first of each anga and a stronger one on the first of the avartana.</summary>
public enum MidiClick
{
    /// <summary>Only in the count-in.</summary>
    CountIn,

    /// <summary>From the beginning to the end. Free rhythm has no beat.</summary>
    Throughout,

    /// <summary>Nowhere: a count-in is silent.</summary>
    None,
}

/// <summary>What a Standard MIDI File holds and how it sounds. Immutable, value equality.</summary>
public sealed record MidiOptions
{
    private readonly MidiTuning _tuning;
    private readonly MidiTextEncoding _text;
    private readonly MidiClick _click;
    private readonly int _voiceProgram = 54;
    private readonly int _droneProgram = 105;
    private readonly int _heldDroneProgram = 21;
    private readonly int _voiceVelocity = MidiBalance.VoiceVelocity;
    private readonly int _droneVelocity = MidiBalance.DroneVelocity;
    private readonly int _voiceVolume = MidiBalance.UsualVolume;
    private readonly int _droneVolume = MidiBalance.DroneVolume;
    private readonly int _heldDroneVolume = MidiBalance.HeldDroneVolume;
    private readonly int _avartanaAccent = 12;
    private readonly int _angaAccent = 8;
    private readonly int _aksharaAccent = 4;

    /// <summary>The options unless others are given.</summary>
    public static MidiOptions Default { get; } = new();

    /// <summary>How notes sound in tune; <see cref="MidiTuning.PitchBend"/> by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MidiTuning Tuning
    {
        get => _tuning;
        init => _tuning = Require.Defined(value, nameof(Tuning));
    }

    /// <summary>How text is written; <see cref="MidiTextEncoding.Ascii"/> by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MidiTextEncoding Text
    {
        get => _text;
        init => _text = Require.Defined(value, nameof(Text));
    }

    /// <summary>Whether all events are in one track (format 0) and not in one track for each part (format 1); false by default.</summary>
    public bool IsSingleTrack { get; init; }

    /// <summary>
    /// Whether a status byte that repeats is left out; false by default. A note then ends with a note-on of velocity 0, so that the status
    /// repeats.
    /// </summary>
    public bool HasRunningStatus { get; init; }

    /// <summary>Whether the voice is written; true by default.</summary>
    public bool HasVoice { get; init; } = true;

    /// <summary>Whether the drone is written, where the score has one; true by default.</summary>
    public bool HasDrone { get; init; } = true;

    /// <summary>Where the beat is clicked, on the channel of percussion; only in the count-in by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MidiClick Click
    {
        get => _click;
        init => _click = Require.Defined(value, nameof(Click));
    }

    /// <summary>Whether the syllables are written with the voice; true by default.</summary>
    public bool HasLyrics { get; init; } = true;

    /// <summary>Whether a marker stands at the beginning of each line and each answer; true by default.</summary>
    public bool HasMarkers { get; init; } = true;

    /// <summary>The voice's General MIDI program, 1 to 128; 54, voice oohs, by default (53 is choir aahs).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int VoiceProgram
    {
        get => _voiceProgram;
        init => _voiceProgram = Require.InRange(value, 1, 128, nameof(VoiceProgram));
    }

    /// <summary>The General MIDI program of a plucked drone, 1 to 128; 105, sitar, by default: there is no tanpura.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int DroneProgram
    {
        get => _droneProgram;
        init => _droneProgram = Require.InRange(value, 1, 128, nameof(DroneProgram));
    }

    /// <summary>The General MIDI program of a held drone, 1 to 128; 21, reed organ, by default: of its sounds the nearest to a sruti box.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int HeldDroneProgram
    {
        get => _heldDroneProgram;
        init => _heldDroneProgram = Require.InRange(value, 1, 128, nameof(HeldDroneProgram));
    }

    /// <summary>The velocity of the voice's notes without an accent, 1 to 127; 90 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int VoiceVelocity
    {
        get => _voiceVelocity;
        init => _voiceVelocity = Require.InRange(value, 1, 127, nameof(VoiceVelocity));
    }

    /// <summary>
    /// How much louder a note on the first akshara of an avartana is than one between the aksharas, in velocity: 0 to 126; 12 by default
    /// (the project's own setting). No velocity goes above 127, and free rhythm has no accents.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int AvartanaAccent
    {
        get => _avartanaAccent;
        init => _avartanaAccent = Require.InRange(value, 0, 126, nameof(AvartanaAccent));
    }

    /// <summary>The same for the first akshara of another anga: 0 to 126; 8 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int AngaAccent
    {
        get => _angaAccent;
        init => _angaAccent = Require.InRange(value, 0, 126, nameof(AngaAccent));
    }

    /// <summary>The same for any other akshara: 0 to 126; 4 by default (the project's own setting).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int AksharaAccent
    {
        get => _aksharaAccent;
        init => _aksharaAccent = Require.InRange(value, 0, 126, nameof(AksharaAccent));
    }

    /// <summary>
    /// The velocity of the drone's strokes, 1 to 127; 62 by default: with the usual instruments and volumes the drone lies below the voice as
    /// <see cref="SoundBalance"/> says (measured with two sound fonts).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int DroneVelocity
    {
        get => _droneVelocity;
        init => _droneVelocity = Require.InRange(value, 1, 127, nameof(DroneVelocity));
    }

    /// <summary>The volume of the voice's channel (controller 7), 0 to 127; 100 by default, which General MIDI gives a channel by itself.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int VoiceVolume
    {
        get => _voiceVolume;
        init => _voiceVolume = Require.InRange(value, 0, 127, nameof(VoiceVolume));
    }

    /// <summary>The volume of a plucked drone's channels (controller 7), 0 to 127; 100 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int DroneVolume
    {
        get => _droneVolume;
        init => _droneVolume = Require.InRange(value, 0, 127, nameof(DroneVolume));
    }

    /// <summary>The volume of a held drone's channels (controller 7), 0 to 127; 69 by default: a reed organ is louder than a sitar (measured).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int HeldDroneVolume
    {
        get => _heldDroneVolume;
        init => _heldDroneVolume = Require.InRange(value, 0, 127, nameof(HeldDroneVolume));
    }

    /// <summary>How notes are tuned, how text is written, the tracks, and what they hold.</summary>
    public override string ToString() => string.Concat(
        $"{Tuning}, {Text}, {(IsSingleTrack ? "one track" : "a track for each part")}, ",
        $"{(HasVoice ? "voice, " : string.Empty)}{(HasDrone ? "drone, " : string.Empty)}click {Click}");
}

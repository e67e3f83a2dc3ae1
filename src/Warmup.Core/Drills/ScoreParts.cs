using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A pitch of a section: the tone, how it is written, and how it sounds.</summary>
/// <param name="Tone">The tone of the scale.</param>
/// <param name="Name">The written name.</param>
/// <param name="Cents">Cents above the middle tonic, in the section's tuning.</param>
/// <param name="Hz">The frequency in Hz.</param>
/// <param name="OffsetCents">
/// How far the pitch sounds above the written note of a keyboard tuned to A4 = 440 Hz, in cents: what a pitch bend has to add.
/// </param>
public sealed record ScorePitch(ScaleTone Tone, NoteName Name, double Cents, double Hz, double OffsetCents)
{
    /// <summary>The MIDI note number of the written name, 0 to 127.</summary>
    public int Midi => Name.Midi;

    /// <summary>The tone, the name, and where it sounds.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Tone} {Name}, {Cents:0.###} cents, {Hz:0.###} Hz");
}

/// <summary>A sung note: when, how long, on which pitch, with which syllable, in which line.</summary>
/// <remarks>Times are in grid steps of the section and, as exact fractions, in aksharas.</remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<ScoreNote>))]
public readonly record struct ScoreNote
{
    internal ScoreNote(int onset, int length, int resolution, int pitch, int line, string syllable, bool held)
    {
        OnsetSteps = onset;
        LengthSteps = length;
        _resolutionLessOne = resolution - 1;
        PitchIndex = pitch;
        LineIndex = line;
        _syllable = syllable;
        IsHeld = held;
    }

    private readonly int _resolutionLessOne;
    private readonly string? _syllable;

    /// <summary>The onset in grid steps from the section's beginning.</summary>
    public int OnsetSteps { get; private init; }

    /// <summary>The sounding length in grid steps; a breath that follows has already been taken off.</summary>
    public int LengthSteps { get; }

    /// <summary>The end in grid steps.</summary>
    public int EndSteps => OnsetSteps + LengthSteps;

    /// <summary>The onset in aksharas from the section's beginning.</summary>
    public Rational Onset => new(OnsetSteps, _resolutionLessOne + 1);

    /// <summary>The sounding length in aksharas.</summary>
    public Rational Length => new(LengthSteps, _resolutionLessOne + 1);

    /// <summary>The end in aksharas from the section's beginning.</summary>
    public Rational End => new(EndSteps, _resolutionLessOne + 1);

    /// <summary>The index of the pitch in <see cref="Section.Pitches"/>.</summary>
    public int PitchIndex { get; }

    /// <summary>The index of the line in <see cref="Section.Lines"/>.</summary>
    public int LineIndex { get; }

    /// <summary>What is sung; never empty in a score the library made.</summary>
    public string Syllable => _syllable ?? string.Empty;

    /// <summary>Whether it is the held last note of a line.</summary>
    public bool IsHeld { get; }

    /// <summary>The same note at another time.</summary>
    internal ScoreNote At(int onset) => this with { OnsetSteps = onset };
}

/// <summary>A line in the score.</summary>
/// <param name="FirstNote">The index of its first note in <see cref="Section.Notes"/>.</param>
/// <param name="NoteCount">The number of its notes, at least 1.</param>
/// <param name="Onset">Its beginning in aksharas from the section's beginning.</param>
/// <param name="Length">Its length in aksharas, with the hold and the breath: the next line begins there.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<ScoreLine>))]
public readonly record struct ScoreLine(int FirstNote, int NoteCount, Rational Onset, Rational Length)
{
    /// <summary>The speed it is sung in.</summary>
    public Speed Speed { get; init; }

    /// <summary>The time through the drill that it belongs to, from 0.</summary>
    public int Round { get; init; }

    /// <summary>
    /// How much of the length, at its end, is silent for the singer to answer in, in aksharas; 0 unless the score was made a call and
    /// response.
    /// </summary>
    public Rational Answer { get; init; }
}

/// <summary>From here on another tempo holds.</summary>
/// <param name="Onset">Where, in aksharas from the section's beginning; a line begins there.</param>
/// <param name="Tempo">Aksharas a minute.</param>
/// <param name="Seconds">
/// The same place in seconds from the section's beginning, on the nearest millionth of a second: sums over many tempi do not fit exact
/// fractions of 64 bits.
/// </param>
[JsonConverter(typeof(UnsupportedJsonConverter<TempoChange>))]
public readonly record struct TempoChange(Rational Onset, Rational Tempo, Rational Seconds);

/// <summary>A breath.</summary>
/// <param name="Onset">Its beginning in aksharas from the section's beginning: the end of the note before.</param>
/// <param name="Length">Its length in aksharas.</param>
/// <param name="AfterNote">The index of the note before it in <see cref="Section.Notes"/>.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<Breath>))]
public readonly record struct Breath(Rational Onset, Rational Length, int AfterNote);

/// <summary>A measure: an avartana, or a bar of free rhythm. The avartanas of a section begin where its measures do.</summary>
/// <param name="Onset">Its beginning in aksharas from the section's beginning.</param>
/// <param name="Length">Its length in aksharas.</param>
/// <param name="BeginsLine">Whether a line begins on its first beat.</param>
[JsonConverter(typeof(UnsupportedJsonConverter<Measure>))]
public readonly record struct Measure(Rational Onset, Rational Length, bool BeginsLine);

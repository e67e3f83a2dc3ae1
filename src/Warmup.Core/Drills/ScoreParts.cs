using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A sung note: when, how long, on which pitch, with which syllable, in which line.</summary>
/// <remarks>
/// Times are in grid steps of the section and, as exact fractions, in aksharas. Pitch, syllable and line are named by their index in the
/// section's lists, so that a note is numbers alone. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(UnsupportedJsonConverter<ScoreNote>))]
public readonly record struct ScoreNote
{
    internal ScoreNote(int onset, int length, int resolution, int pitch, int syllable, int line, bool held)
    {
        OnsetSteps = onset;
        LengthSteps = length;
        SyllableIndex = syllable;
        LineIndex = line;

        _resolutionLessOne = resolution - 1;

        // Not checked here, note after note: there are fewer tones than that.
        _pitch = unchecked((ushort)pitch);
        _manner = held ? Held : (byte)0;
    }

    // Whether it is held in the lowest bit, then the joining in two, then the loudness.
    private const byte Held = 1;
    private const int JoiningAt = 1;
    private const int JoiningMask = 0b110;
    private const int LoudnessAt = 3;

    // The small ones together, since the fields lie in memory as they stand here.
    private readonly int _resolutionLessOne;
    private readonly ushort _pitch;
    private readonly byte _manner;

    /// <summary>The onset in grid steps from the section's beginning.</summary>
    public int OnsetSteps { get; private init; }

    /// <summary>
    /// The length in grid steps; a breath that follows has already been taken off, the silence of a staccato note has not:
    /// <see cref="SoundEndSteps"/>.
    /// </summary>
    public int LengthSteps { get; }

    /// <summary>The end in grid steps.</summary>
    public int EndSteps => OnsetSteps + LengthSteps;

    /// <summary>The onset in aksharas from the section's beginning.</summary>
    public Rational Onset => new(OnsetSteps, _resolutionLessOne + 1);

    /// <summary>The length in aksharas, with the silence of a staccato note.</summary>
    public Rational Length => new(LengthSteps, _resolutionLessOne + 1);

    /// <summary>The end in aksharas from the section's beginning.</summary>
    public Rational End => new(EndSteps, _resolutionLessOne + 1);

    /// <summary>The index of the pitch in <see cref="Section.Pitches"/>.</summary>
    public int PitchIndex => _pitch;

    /// <summary>The index of what is sung in <see cref="Section.SungSyllables"/>.</summary>
    public int SyllableIndex { get; }

    /// <summary>The index of the line in <see cref="Section.Lines"/>.</summary>
    public int LineIndex { get; }

    /// <summary>Whether it is the held last note of a line.</summary>
    public bool IsHeld => (_manner & Held) != 0;

    /// <summary>
    /// How it goes on to the next note. A note that slides has a next one in its line that begins where it ends, on another pitch; a held
    /// note is not staccato.
    /// </summary>
    public Joining Joining
    {
        get => (Joining)((_manner & JoiningMask) >> JoiningAt);
        internal init => _manner = (byte)((_manner & ~JoiningMask) | ((int)value << JoiningAt));
    }

    /// <summary>How loud it is from its beginning to its end.</summary>
    public Loudness Loudness
    {
        get => (Loudness)(_manner >> LoudnessAt);
        internal init => _manner = (byte)((_manner & ((1 << LoudnessAt) - 1)) | ((int)value << LoudnessAt));
    }

    /// <summary>Its middle in grid steps: where a slide begins, a swell is loudest, and a staccato note falls silent.</summary>
    public int MiddleSteps => OnsetSteps + ((LengthSteps + 1) / 2);

    /// <summary>Its middle in aksharas from the section's beginning, as <see cref="MiddleSteps"/>.</summary>
    public Rational Middle => new(MiddleSteps, _resolutionLessOne + 1);

    /// <summary>Where it falls silent, in grid steps: its end, or the middle of a staccato note.</summary>
    public int SoundEndSteps => Joining == Joining.Staccato ? MiddleSteps : EndSteps;

    /// <summary>Where it falls silent, in aksharas from the section's beginning.</summary>
    public Rational SoundEnd => new(SoundEndSteps, _resolutionLessOne + 1);

    /// <summary>The index of the pitch, the onset and the length.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"pitch {PitchIndex} at {Onset} for {Length}");

    /// <summary>The same note at another time.</summary>
    internal ScoreNote At(int onset) => this with { OnsetSteps = onset };
}

/// <summary>A line in the score. Immutable, value equality; <c>default</c> is a line of one note and no length.</summary>
[JsonConverter(typeof(UnsupportedJsonConverter<ScoreLine>))]
public readonly partial record struct ScoreLine
{
    private readonly int _noteCountLessOne;
    private readonly int _resolutionLessOne;

    internal ScoreLine(int firstNote, int noteCount, int onset, int length, int resolution, Speed speed, int round)
    {
        FirstNote = firstNote;
        _noteCountLessOne = noteCount - 1;
        OnsetSteps = onset;
        LengthSteps = length;
        _resolutionLessOne = resolution - 1;
        Speed = speed;
        Round = round;
    }

    /// <summary>The index of its first note in <see cref="Section.Notes"/>.</summary>
    public int FirstNote { get; }

    /// <summary>The number of its notes, at least 1.</summary>
    public int NoteCount => _noteCountLessOne + 1;

    /// <summary>Its beginning in grid steps from the section's beginning.</summary>
    public int OnsetSteps { get; internal init; }

    /// <summary>Its length in grid steps, with the hold and the breath: the next line begins there.</summary>
    public int LengthSteps { get; internal init; }

    /// <summary>Its beginning in aksharas from the section's beginning.</summary>
    public Rational Onset => new(OnsetSteps, _resolutionLessOne + 1);

    /// <summary>Its length in aksharas, with the hold and the breath: the next line begins there.</summary>
    public Rational Length => new(LengthSteps, _resolutionLessOne + 1);

    /// <summary>The speed it is sung in.</summary>
    public Speed Speed { get; }

    /// <summary>The time through the drill that it belongs to, from 0.</summary>
    public int Round { get; }

    /// <summary>
    /// How much of the length, at its end, is silent for the singer to answer in, in grid steps; 0 unless the score was made a call and
    /// response.
    /// </summary>
    public int AnswerSteps { get; internal init; }

    /// <summary>The silence for the singer to answer in, in aksharas, as <see cref="AnswerSteps"/>.</summary>
    public Rational Answer => new(AnswerSteps, _resolutionLessOne + 1);

    /// <summary>Equality of notes, times, speed and round, whatever the grids.</summary>
    /// <param name="other">The other line.</param>
    public bool Equals(ScoreLine other) =>
        (FirstNote, _noteCountLessOne, Speed, Round) == (other.FirstNote, other._noteCountLessOne, other.Speed, other.Round)
        && (Onset, Length, Answer) == (other.Onset, other.Length, other.Answer);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(FirstNote, _noteCountLessOne, Round, Onset, Length);

    /// <summary>The number of notes, the onset and the length.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{NoteCount} note{(NoteCount == 1 ? string.Empty : "s")} at {Onset} for {Length}");

    /// <summary>The same line on a grid that is finer by a whole factor.</summary>
    internal ScoreLine Refined(int factor) => new(FirstNote, NoteCount, OnsetSteps * factor, LengthSteps * factor, (_resolutionLessOne + 1) * factor, Speed, Round)
    {
        AnswerSteps = AnswerSteps * factor,
    };
}

/// <summary>From here on another tempo holds. Immutable, value equality.</summary>
[JsonConverter(typeof(UnsupportedJsonConverter<TempoChange>))]
public readonly record struct TempoChange
{
    internal TempoChange(Rational onset, Rational tempo, Rational seconds) => (Onset, Tempo, Seconds) = (onset, tempo, seconds);

    /// <summary>Where, in aksharas from the section's beginning; a line begins there.</summary>
    public Rational Onset { get; }

    /// <summary>Aksharas a minute.</summary>
    public Rational Tempo { get; }

    /// <summary>
    /// The same place in seconds from the section's beginning, on the nearest millionth of a second: sums over many tempi do not fit exact
    /// fractions of 64 bits.
    /// </summary>
    public Rational Seconds { get; }
}

/// <summary>A breath: the note before it ends where it begins. Immutable, value equality.</summary>
[JsonConverter(typeof(UnsupportedJsonConverter<Breath>))]
public readonly record struct Breath
{
    /// <summary>Places a breath.</summary>
    /// <param name="onset">Its beginning in aksharas from the section's beginning, 0 or more.</param>
    /// <param name="length">Its length in aksharas, above 0.</param>
    /// <param name="afterNote">The index of the note before it in <see cref="Section.Notes"/>, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    /// <remarks>Whether it fits the notes of a section shows when the section takes it: <see cref="Score.WithBreaths"/>.</remarks>
    public Breath(Rational onset, Rational length, int afterNote)
    {
        Onset = onset.Sign >= 0 ? onset : throw new ArgumentOutOfRangeException(nameof(onset), onset, $"onset must be 0 or more, not {onset}");
        Length = length.Sign > 0 ? length : throw new ArgumentOutOfRangeException(nameof(length), length, $"length must be above 0, not {length}");
        AfterNote = Require.InRange(afterNote, 0, int.MaxValue);
    }

    /// <summary>Its beginning in aksharas from the section's beginning: the end of the note before.</summary>
    public Rational Onset { get; internal init; }

    /// <summary>Its length in aksharas.</summary>
    public Rational Length { get; }

    /// <summary>The index of the note before it in <see cref="Section.Notes"/>.</summary>
    public int AfterNote { get; }
}

/// <summary>
/// A measure: an avartana, or a bar of free rhythm; an anga where the score was divided so. Immutable, value equality.
/// </summary>
[JsonConverter(typeof(UnsupportedJsonConverter<Measure>))]
public readonly record struct Measure
{
    private readonly int _resolutionLessOne;

    internal Measure(int onset, int length, int resolution, bool isLineStart) =>
        (OnsetSteps, LengthSteps, _resolutionLessOne, IsLineStart) = (onset, length, resolution - 1, isLineStart);

    /// <summary>Its beginning in grid steps from the section's beginning.</summary>
    public int OnsetSteps { get; }

    /// <summary>Its length in grid steps.</summary>
    public int LengthSteps { get; }

    /// <summary>Its beginning in aksharas from the section's beginning.</summary>
    public Rational Onset => new(OnsetSteps, _resolutionLessOne + 1);

    /// <summary>Its length in aksharas.</summary>
    public Rational Length => new(LengthSteps, _resolutionLessOne + 1);

    /// <summary>Whether a line begins on its first beat.</summary>
    public bool IsLineStart { get; internal init; }

    /// <summary>Equality of times and of what begins, whatever the grids.</summary>
    /// <param name="other">The other measure.</param>
    public bool Equals(Measure other) => IsLineStart == other.IsLineStart && Onset == other.Onset && Length == other.Length;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Onset, Length, IsLineStart);

    /// <summary>The same measure on a grid that is finer by a whole factor.</summary>
    internal Measure Refined(int factor) => new(OnsetSteps * factor, LengthSteps * factor, (_resolutionLessOne + 1) * factor, IsLineStart);
}

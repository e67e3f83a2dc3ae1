using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>Which key signature is written.</summary>
public enum MusicXmlKey
{
    /// <summary>
    /// The traditional signature where the scale on its tonic is one (seven degrees, such as the church modes); no signature and
    /// accidentals at the notes otherwise.
    /// </summary>
    TraditionalWhereExact,

    /// <summary>Never a signature: accidentals at the notes.</summary>
    Accidentals,

    /// <summary>
    /// The traditional signature where the scale is one, otherwise one that alters each letter as the scale does, where no letter has two
    /// forms. Many readers ignore such a signature and then show every altered note wrongly.
    /// </summary>
    NonTraditional,
}

/// <summary>Which clef is written.</summary>
public enum MusicXmlClef
{
    /// <summary>
    /// By the mean pitch of each section: treble from middle C (MIDI note 60) on, the treble clef an octave down from D3 (50) on, bass
    /// below it (the project's own setting).
    /// </summary>
    ByPitch,

    /// <summary>The treble clef.</summary>
    Treble,

    /// <summary>The treble clef with an 8 below: written as a treble voice, sounding an octave lower.</summary>
    TrebleOctaveDown,

    /// <summary>The bass clef.</summary>
    Bass,
}

/// <summary>What a measure is.</summary>
public enum MusicXmlMeasure
{
    /// <summary>An avartana.</summary>
    Avartana,

    /// <summary>An anga, with a double bar behind the avartana: easier to read in long talas, but the time signature changes often.</summary>
    Anga,
}

/// <summary>Whether a second part shows the beat.</summary>
public enum MusicXmlBeat
{
    /// <summary>No second part.</summary>
    None,

    /// <summary>A stroke an akshara, with an accent on the first of each anga.</summary>
    Strokes,

    /// <summary>The strokes, and under each what the hand does: clap, a finger, wave. Time signatures have the beat's number instead.</summary>
    Gestures,
}

/// <summary>The paper that the file asks for.</summary>
public enum MusicXmlPaper
{
    /// <summary>A4, 210 by 297 mm.</summary>
    A4,

    /// <summary>Letter, 8.5 by 11 inches.</summary>
    Letter,

    /// <summary>None: the reader's own page and staff size.</summary>
    Unspecified,
}

/// <summary>How a score is written as MusicXML. Immutable, value equality.</summary>
public sealed record MusicXmlOptions
{
    /// <summary>The smallest height of a staff in millimetres (the project's own bound).</summary>
    public const int SmallestStaff = 4;

    /// <summary>The largest height of a staff in millimetres (the project's own bound).</summary>
    public const int LargestStaff = 15;

    /// <summary>The most verses behind the first (the project's own bound).</summary>
    public const int MostFurtherVerses = 2;

    /// <summary>The farthest second voice, in semitones: two octaves (the project's own bound).</summary>
    public const int FarthestSecondVoice = 24;

    private readonly int _staffMillimetres = 7;
    private readonly int _secondVoice;
    private readonly ValueList<MusicXmlVerse> _furtherVerses;

    /// <summary>All defaults.</summary>
    public static MusicXmlOptions Default { get; } = new();

    /// <summary>The key signature; by default the traditional one where the scale is one.</summary>
    public MusicXmlKey Key { get; init; }

    /// <summary>What a measure is; an avartana by default. Bars of free rhythm are not divided.</summary>
    public MusicXmlMeasure Measure { get; init; }

    /// <summary>The hidden time signatures of free rhythm; by default each bar's own.</summary>
    public MusicXmlFreeBars FreeBars { get; init; }

    /// <summary>
    /// How many semitones above the score a second voice part sings, -24 to 24; 0, no second part, by default. -12 is a class version for
    /// high and low voices an octave apart; for a tonic of its own give its MIDI note less the score's.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    /// <remarks>A second voice whose tonic or a note leaves the range of <see cref="Tonic"/> or of MIDI is refused when it is written.</remarks>
    public int SecondVoiceSemitones
    {
        get => _secondVoice;
        init => _secondVoice = InRange(value, -FarthestSecondVoice, FarthestSecondVoice, nameof(SecondVoiceSemitones));
    }

    /// <summary>
    /// Whether the drone is written as a part of held notes, where the score has one; it is not by default. It sounds the pitches of the
    /// strings; the strokes keep a time of their own that no measure has.
    /// </summary>
    public bool HasDrone { get; init; }

    /// <summary>How the beginning of a line is marked; with its number by default.</summary>
    public MusicXmlLineMarks LineMarks { get; init; }

    /// <summary>How loud each section begins; nothing is said by default.</summary>
    public MusicXmlDynamics Dynamics { get; init; }

    /// <summary>
    /// Whether only the first note of a line, and the first behind a silence in it, has its syllable, and a slur goes over the others: a
    /// line on one vowel. Not by default. A note of the score without a syllable is always slurred to the one before.
    /// </summary>
    public bool OneSyllableALine { get; init; }

    /// <summary>The verses below the score's own syllables, at most two; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are more than two.</exception>
    public ValueList<MusicXmlVerse> FurtherVerses
    {
        get => _furtherVerses;
        init
        {
            InRange(value.Count, 0, MostFurtherVerses, "the number of further verses");
            _furtherVerses = value;
        }
    }

    /// <summary>The date of the file; none by default, so that equal scores give equal bytes on any day.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Whether a part below the others shows the beat; it does not by default.</summary>
    public MusicXmlBeat Beat { get; init; }

    /// <summary>The clef; by default chosen by the mean pitch of each section.</summary>
    public MusicXmlClef Clef { get; init; }

    /// <summary>The paper; A4 by default.</summary>
    public MusicXmlPaper Paper { get; init; }

    /// <summary>The height of a staff in millimetres, 4 to 15; 7 by default. Not written where the paper is unspecified.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int StaffMillimetres
    {
        get => _staffMillimetres;
        init => _staffMillimetres = InRange(value, SmallestStaff, LargestStaff, nameof(StaffMillimetres));
    }

    /// <summary>Whether a new system is asked for where a line begins a measure; it is by default.</summary>
    public bool NewSystems { get; init; } = true;

    /// <summary>
    /// Whether a tuning's deviation from equal steps is written as a decimal alteration with the nearest named accidental; not by
    /// default, since notation editors play such notes unreliably, and one cuts the fraction off and shows a sharp as a natural.
    /// </summary>
    public bool Microtones { get; init; }

    /// <summary>How the notes are written, and the date; empty where there is none.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"clef {Clef}, key {Key}, measure {Measure}, beat {Beat}, paper {Paper}, date {Date:yyyy-MM-dd}");

    private static int InRange(int value, int low, int high, string name) => value >= low && value <= high
        ? value
        : throw new ArgumentOutOfRangeException(
            name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be between {low} and {high}, not {value}"));
}

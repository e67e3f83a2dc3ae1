using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>Which key signature is written.</summary>
public enum MusicXmlKey
{
    /// <summary>
    /// The traditional signature where the scale on its tonic has one (seven degrees, such as the church modes); otherwise none, with
    /// accidentals at the notes.
    /// </summary>
    TraditionalWhereExact,

    /// <summary>Never a signature: accidentals at the notes.</summary>
    Accidentals,

    /// <summary>
    /// The traditional signature where the scale has one; otherwise, if no letter has two forms, a signature that alters each letter as the scale
    /// does. Many readers ignore such a signature and then show every altered note wrongly.
    /// </summary>
    NonTraditional,
}

/// <summary>Which clef is written.</summary>
public enum MusicXmlClef
{
    /// <summary>
    /// By the voice that takes the tonic, one clef for the whole part: treble from F3 (MIDI note 53) up, as women and children choose theirs, treble
    /// an octave down from A2 (45) to E3, as men do (common practice), the bass clef below. Of several tonics their mean counts.
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

    /// <summary>An anga, with a double bar after the avartana: easier to read in long talas, but the time signature changes often.</summary>
    Anga,
}

/// <summary>Whether a further part shows the beat, and how.</summary>
public enum MusicXmlBeat
{
    /// <summary>No such part.</summary>
    None,

    /// <summary>A stroke for each akshara, with an accent on the first of each anga.</summary>
    Strokes,

    /// <summary>The strokes, and under each what the hand does: clap, a finger, wave. Under a time signature stands the beat's number.</summary>
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
    private readonly MusicXmlKey _key;
    private readonly MusicXmlMeasure _measure;
    private readonly MusicXmlFreeBars _freeBars;
    private readonly MusicXmlLineMarks _lineMarks;
    private readonly MusicXmlDynamics _dynamics;
    private readonly MusicXmlBeat _beat;
    private readonly MusicXmlClef _clef;
    private readonly MusicXmlPaper _paper;
    private readonly int _staffMillimetres = 7;
    private readonly int _secondVoice;
    private readonly ValueList<MusicXmlVerse> _furtherVerses;

    /// <summary>All defaults.</summary>
    public static MusicXmlOptions Default { get; } = new();

    /// <summary>The smallest height of a staff in millimetres: 4 (the project's own bound).</summary>
    public static int SmallestStaff => 4;

    /// <summary>The largest height of a staff in millimetres: 15 (the project's own bound).</summary>
    public static int LargestStaff => 15;

    /// <summary>The most verses after the first: 2 (the project's own bound).</summary>
    public static int MostFurtherVerses => 2;

    /// <summary>The farthest second voice, in semitones: 24, two octaves (the project's own bound).</summary>
    public static int FarthestSecondVoice => 24;

    /// <summary>The key signature; by default the traditional one where the scale has one.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlKey Key
    {
        get => _key;
        init => _key = Require.Defined(value, nameof(Key));
    }

    /// <summary>What a measure is; an avartana by default. Bars of free rhythm are not divided.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlMeasure Measure
    {
        get => _measure;
        init => _measure = Require.Defined(value, nameof(Measure));
    }

    /// <summary>The hidden time signatures of free rhythm; by default each bar's own.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlFreeBars FreeBars
    {
        get => _freeBars;
        init => _freeBars = Require.Defined(value, nameof(FreeBars));
    }

    /// <summary>
    /// How many semitones above the score a second voice part sings: -24 to 24; 0, no second part, by default. -12 is a class version for high
    /// and low voices an octave apart. For a second part on its own tonic, give that tonic's MIDI note less the score's.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    /// <remarks>A second voice whose tonic leaves the range of <see cref="Tonic"/>, or one of whose notes leaves MIDI's, is refused when it is written.</remarks>
    public int SecondVoiceSemitones
    {
        get => _secondVoice;
        init => _secondVoice = Require.InRange(value, -FarthestSecondVoice, FarthestSecondVoice, nameof(SecondVoiceSemitones));
    }

    /// <summary>
    /// Whether the score's drone is written as a part of held notes; false by default. The part holds the pitches of the strings; the strokes
    /// keep a time of their own, which no measure has.
    /// </summary>
    public bool HasDrone { get; init; }

    /// <summary>How the beginning of a line is marked; with its number by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlLineMarks LineMarks
    {
        get => _lineMarks;
        init => _lineMarks = Require.Defined(value, nameof(LineMarks));
    }

    /// <summary>How loud each section begins; not written by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlDynamics Dynamics
    {
        get => _dynamics;
        init => _dynamics = Require.Defined(value, nameof(Dynamics));
    }

    /// <summary>
    /// Whether only the first note of a line has its syllable, and the first after a silence in the line, with a slur over the others: a line on
    /// one vowel. False by default. A note of the score without a syllable is always slurred to the one before.
    /// </summary>
    public bool HasOneSyllableALine { get; init; }

    /// <summary>The verses below the score's own syllables, at most two; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are more than two.</exception>
    /// <exception cref="ArgumentNullException">A verse is missing.</exception>
    public ValueList<MusicXmlVerse> FurtherVerses
    {
        get => _furtherVerses;
        init
        {
            Require.InRange(value.Count, 0, MostFurtherVerses, "the number of further verses");
            foreach (var verse in value)
            {
                Require.NotNull(verse, nameof(FurtherVerses));
            }

            _furtherVerses = value;
        }
    }

    /// <summary>The date that the file says it was written on; none by default, so that equal scores give equal bytes on any day.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Whether a part below the others shows the beat; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlBeat Beat
    {
        get => _beat;
        init => _beat = Require.Defined(value, nameof(Beat));
    }

    /// <summary>The clef; by default chosen by the tonic, one for each part.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlClef Clef
    {
        get => _clef;
        init => _clef = Require.Defined(value, nameof(Clef));
    }

    /// <summary>The paper; A4 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the enumeration.</exception>
    public MusicXmlPaper Paper
    {
        get => _paper;
        init => _paper = Require.Defined(value, nameof(Paper));
    }

    /// <summary>The height of a staff in millimetres, 4 to 15; 7 by default. Not written where the paper is unspecified.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int StaffMillimetres
    {
        get => _staffMillimetres;
        init => _staffMillimetres = Require.InRange(value, SmallestStaff, LargestStaff, nameof(StaffMillimetres));
    }

    /// <summary>Whether the file asks for a new system where a line begins a measure; true by default.</summary>
    public bool HasNewSystems { get; init; } = true;

    /// <summary>
    /// Whether a tuning's deviation from equal steps is written as a decimal alteration with the nearest named accidental; false by default:
    /// notation editors play such notes unreliably, and one cuts off the fraction and shows a sharp as a natural.
    /// </summary>
    public bool HasMicrotones { get; init; }

    /// <summary>How the notes are written, and the date, which may be missing.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"clef {Clef}, key {Key}, measure {Measure}, beat {Beat}, paper {Paper}, date {Date:yyyy-MM-dd}");
}

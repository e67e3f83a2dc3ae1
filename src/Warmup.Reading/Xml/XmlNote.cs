namespace Warmup.Reading;

/// <summary>One note element. The same object is filled anew for each: files have many.</summary>
internal sealed class XmlNote
{
    private static ReadOnlySpan<byte> Naturals => [9, 11, 0, 2, 4, 5, 7];

    private int _step;
    private decimal _alter;
    private int _octave;
    private string? _lyric;
    private bool _firstVerse;
    private bool _joinsNext;
    private string? _type;
    private int _dots;
    private bool _isMeasure;
    private int _actual;
    private int _normal;

    public bool IsChord { get; private set; }

    public bool IsGrace { get; private set; }

    public bool IsCue { get; private set; }

    public bool IsRest { get; private set; }

    public bool HasPitch { get; private set; }

    public bool BeginsTie { get; private set; }

    public bool EndsTie { get; private set; }

    public bool BeginsSlur { get; private set; }

    public bool EndsSlur { get; private set; }

    public bool BeginsSlide { get; private set; }

    public bool EndsSlide { get; private set; }

    public bool HasBreath { get; private set; }

    public bool HasFermata { get; private set; }

    public bool IsShort { get; private set; }

    public long? Duration { get; private set; }

    public string Voice { get; private set; } = "1";

    public int Staff { get; private set; }

    public string? Ornament { get; private set; }

    public string? Syllable => _lyric is null ? null : _joinsNext ? _lyric + "-" : _lyric;

    public bool HasFraction => decimal.Truncate(_alter) != _alter;

    private int Alter => (int)Math.Round(_alter, MidpointRounding.AwayFromZero);

    public int Midi => (12 * (_octave + 1)) + Naturals[_step] + Alter;

    public NoteName? Name => Math.Abs(Alter) <= 3 && _octave <= NoteName.HighestOctave ? new NoteName((char)('A' + _step), Alter, _octave) : null;

    /// <summary>How long the note is by its written value; of a rest that fills its measure as long as that; 0 where nothing tells.</summary>
    /// <param name="measure">The length of a measure, in quarter notes.</param>
    public Rational Quarters(Rational measure)
    {
        if (_isMeasure)
        {
            return measure;
        }

        var value = _type is null ? default : NoteValues.Quarters(_type);
        return _dots > 8 ? default : value * (2 - new Rational(1, 1 << _dots)) * new Rational(_normal, _actual);
    }

    public void Read(XmlCursor xml)
    {
        (_type, _dots, _isMeasure, _actual, _normal) = (null, 0, false, 1, 1);
        IsChord = IsGrace = IsCue = IsRest = HasPitch = BeginsTie = EndsTie = BeginsSlur = EndsSlur = BeginsSlide = EndsSlide = HasBreath = HasFermata = IsShort = false;
        (Duration, Voice, Staff, Ornament, _lyric, _firstVerse, _joinsNext, _alter) = (null, "1", 1, null, null, true, false, 0);
        xml.Children(this, static (x, n) => n.Child(x));
    }

    private void Child(XmlCursor xml)
    {
        switch (xml.Name)
        {
            case "pitch":
                HasPitch = true;
                (_step, _octave) = (-1, 4);
                xml.Children(this, static (x, n) => n.Pitch(x));
                if (_step < 0)
                {
                    throw xml.Error("a pitch before this place has no <step>");
                }

                break;
            case "duration":
                Duration = xml.Integer(0, int.MaxValue);
                break;
            case "voice":
                Voice = xml.Text();
                break;
            case "staff":
                Staff = xml.Integer(0, 1_000);
                break;
            case "rest":
                IsRest = true;
                _isMeasure = xml.Attribute("measure") == "yes";
                break;
            case "type":
                _type = xml.Text();
                break;
            case "dot":
                _dots++;
                break;
            case "time-modification":
                xml.Children(this, static (x, n) => n.Modification(x));
                break;
            case "chord":
                IsChord = true;
                break;
            case "grace":
                IsGrace = true;
                break;
            case "cue":
                IsCue = true;
                break;
            case "tie":
                Tie(xml.Attribute("type"));
                break;
            case "lyric":
                if (_firstVerse)
                {
                    _firstVerse = false;
                    xml.Children(this, static (x, n) => n.Lyric(x));
                }

                break;
            case "notations":
                xml.Children(this, static (x, n) => n.Notation(x));
                break;
            default:
                break;
        }
    }

    private void Modification(XmlCursor xml)
    {
        if (xml.Name == "actual-notes")
        {
            _actual = xml.Integer(1, 1_000);
        }
        else if (xml.Name == "normal-notes")
        {
            _normal = xml.Integer(1, 1_000);
        }
    }

    private void Tie(string? type)
    {
        BeginsTie |= type == "start";
        EndsTie |= type == "stop";
        if (type is "continue" or "let-ring")
        {
            EndsTie |= type == "continue";
            BeginsTie |= type == "continue";
        }
    }

    private void Pitch(XmlCursor xml)
    {
        switch (xml.Name)
        {
            case "step":
                _step = xml.Text().Trim() is [>= 'A' and <= 'G' and var letter] ? letter - 'A' : throw xml.Error("a <step> before this place is none of A to G");
                break;
            case "alter":
                _alter = xml.Number(-6, 6);
                break;
            case "octave":
                _octave = xml.Integer(0, 9);
                break;
            default:
                break;
        }
    }

    private void Lyric(XmlCursor xml)
    {
        switch (xml.Name)
        {
            case "text":
                _lyric += xml.Text();
                break;
            case "elision":
                _lyric += " ";
                break;
            case "syllabic":
                _joinsNext = xml.Text() is "begin" or "middle";
                break;
            default:
                break;
        }
    }

    private void Notation(XmlCursor xml)
    {
        switch (xml.Name)
        {
            case "tied":
                Tie(xml.Attribute("type"));
                break;
            case "slur":
                BeginsSlur |= xml.Attribute("type") == "start";
                EndsSlur |= xml.Attribute("type") == "stop";
                break;
            case "slide" or "glissando":
                BeginsSlide |= xml.Attribute("type") == "start";
                EndsSlide |= xml.Attribute("type") == "stop";
                break;
            case "fermata":
                HasFermata = true;
                break;
            case "articulations":
                xml.Children(this, static (x, n) =>
                {
                    n.HasBreath |= x.Name is "breath-mark" or "caesura";
                    n.IsShort |= x.Name is "staccato" or "staccatissimo";
                });
                break;
            case "ornaments":
                xml.Children(this, static (x, n) => n.Ornament ??= x.Name);
                break;
            case "arpeggiate" or "non-arpeggiate":
                Ornament ??= xml.Name == "arpeggiate" ? "arpeggiate" : "non-arpeggiate";
                break;
            default:
                break;
        }
    }
}

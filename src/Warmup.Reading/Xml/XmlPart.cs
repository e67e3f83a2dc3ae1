using System.Globalization;

namespace Warmup.Reading;

/// <summary>Gathers what the measures of a part hold.</summary>
internal sealed class XmlPart(RawPiece piece)
{
    // Voices by their number and staff, in the order in which they first sing.
    private readonly List<XmlVoice> _voices = [];
    private readonly XmlNote _note = new();
    private readonly List<Rational> _crescendos = [];
    private readonly List<Rational> _diminuendos = [];
    private readonly Rational[] _units = new Rational[64];
    private readonly XmlRepeats _repeats = new();
    private int _divisions = 1;
    private bool _hasDivisions;
    private int _chromatic;
    private Rational _start;
    private Rational _at;
    private Rational _furthest;
    private Rational _expected = 4;
    private bool _isHidden;
    private XmlVoice? _last;
    private PiecePlace _measure;
    private int _added;

    public RawPart Part { get; } = new();

    public RawPiece Piece => piece;

    public Rational Now => _start + _at;

    public void BeginMeasure(XmlCursor xml)
    {
        if (Part.Measures.Count >= ReadingLimits.Measures)
        {
            throw xml.Error(string.Create(CultureInfo.InvariantCulture, $"a part has more than {ReadingLimits.Measures} measures"));
        }

        _start += _furthest;
        (_at, _furthest, _added) = (default, default, 0);
        Part.Measures.Add(_start);
        _measure = new PiecePlace(PlaceKind.Measure, Part.Measures.Count, default, Part.Name);
        _last = null;
        _repeats.BeginMeasure();
    }

    /// <summary>Ends a measure; gives the number of its notes.</summary>
    public int EndMeasure(bool isImplicit)
    {
        if (_furthest.Sign == 0)
        {
            _furthest = _expected;
        }
        else if (_furthest > _expected && !_isHidden)
        {
            Remark(RemarkKind.Mended, $"the measure holds {_furthest} quarter notes and its time signature {_expected}: it was read as long as it is", default);
        }

        _ = isImplicit;
        return _added;
    }

    public void Child(XmlCursor xml)
    {
        switch (xml.Name)
        {
            case "note":
                _note.Read(xml);
                Add(xml);
                break;
            case "backup" or "forward":
                var forward = xml.Name == "forward";
                xml.Children((Part: this, Forward: forward), static (x, s) => s.Part.Move(x, s.Forward));
                break;
            case "attributes":
                xml.Children(this, static (x, p) => XmlAttributes.Read(x, p));
                break;
            case "direction":
                XmlDirection.Read(xml, this);
                break;
            case "sound":
                XmlDirection.Sound(xml, this, Now);
                break;
            case "print":
                if (xml.Attribute("new-system") == "yes" || xml.Attribute("new-page") == "yes")
                {
                    Part.Marks.Add(new RawMark(Now, MarkKind.System));
                }

                break;
            case "barline":
                var location = xml.Attribute("location") ?? "right";
                xml.Children((Part: this, Location: location), static (x, s) => s.Part.BarLine(x, s.Location));
                break;
            default:
                break;
        }
    }

    public void SetDivisions(int divisions)
    {
        (_divisions, _hasDivisions) = (divisions, true);
        Array.Clear(_units);
    }

    public void SetTranspose(int chromatic) => _chromatic = chromatic;

    public void SetMeter(RawMeter meter)
    {
        (_expected, _isHidden) = (meter.Quarters, meter.IsHidden);
        piece.AddMeter(meter);
    }

    public void SetKey(int fifths, bool? isMinor) => piece.AddKey(Now, fifths, isMinor);

    public void AddTempo(Rational onset, Rational quarters) => piece.AddTempo(onset, quarters);

    public void Hairpin(string type) => (type == "crescendo" ? _crescendos : _diminuendos).Add(Now);

    public void Remark(RemarkKind kind, string message, Rational within) => piece.Remarks.Add(kind, message, _measure with { Within = within });

    public RawPart Finish()
    {
        _start += _furthest;
        _furthest = default;
        Part.End = _start;
        Part.Marks.AddRange(_repeats.Edges.Select(m => new RawMark(Part.Measures[m], MarkKind.Repeat)));
        Part.SortMarks();
        Part.NumberLines();
        var best = _voices.MaxBy(v => v.Notes.Count);
        if (best is null)
        {
            return Part;
        }

        best.Close();
        foreach (var other in _voices)
        {
            if (other != best && other.Notes.Count > 0)
            {
                piece.Remarks.Add(
                    RemarkKind.FurtherVoice,
                    string.Create(CultureInfo.InvariantCulture, $"{other.Notes.Count} notes of a further voice were left out"),
                    Part.Place(other.Notes[0].Onset));
            }
        }

        Part.Notes = best.Notes;
        Swell();
        Repeat(_repeats.Order());
        return Part;
    }

    /// <summary>Repeats the whole where signs stand around it, and writes other repeats out.</summary>
    private void Repeat(List<int>? order)
    {
        if (order is { Count: 0 })
        {
            return;
        }

        var measures = Part.Measures.Count;
        order ??= [];
        var times = order.Count / measures;
        if (order.Count == times * measures && times > 0 && times <= Drill.MostRepetitions && Part.Notes is [{ Onset.Sign: 0 }, ..] && order.Select((m, i) => m == i % measures).All(isNext => isNext))
        {
            Part.Repetitions = times;
            return;
        }

        var words = order.Count > 0 && order.Distinct().Count() < measures ? "repeats and endings do not lead through all measures, and were read once, as they are written"
            : order.Count > 0 && Part.Unroll(order) ? "what is repeated was written out"
            : "repeats were read once, as they are written: with them the part would be too long";
        piece.Remarks.Add(RemarkKind.Repeat, words, Part.Place(Part.Stretches is [_, var second, ..] ? second.At : default));
    }

    private void Swell()
    {
        _crescendos.Sort();
        _diminuendos.Sort();
        var (crescendo, diminuendo) = (0, 0);
        for (var n = 0; n < Part.Notes.Count && crescendo < _crescendos.Count; n++)
        {
            var note = Part.Notes[n];
            while (crescendo < _crescendos.Count && _crescendos[crescendo] < note.Onset)
            {
                crescendo++;
            }

            while (diminuendo < _diminuendos.Count && _diminuendos[diminuendo] <= note.Onset)
            {
                diminuendo++;
            }

            if (crescendo < _crescendos.Count && _crescendos[crescendo] == note.Onset && diminuendo < _diminuendos.Count && _diminuendos[diminuendo] < note.End)
            {
                Part.Notes[n] = note with { Loudness = Loudness.SwellAndFade };
            }
        }
    }

    private Rational Quarters(long duration)
    {
        if (duration is < 0 or >= 64)
        {
            return new Rational(duration, _divisions);
        }

        // The same few durations come again and again.
        ref var unit = ref _units[duration];
        if (unit.Sign == 0)
        {
            unit = new Rational(duration, _divisions);
        }

        return unit;
    }

    private void Move(XmlCursor xml, bool forward)
    {
        if (xml.Name != "duration")
        {
            return;
        }

        var by = Quarters(xml.Integer(0, int.MaxValue));
        _at = forward ? _at + by : _at - by;
        if (_at.Sign < 0)
        {
            Remark(RemarkKind.Mended, "the file goes back over the measure's beginning: read from its beginning", Rational.One);
            _at = default;
        }

        _furthest = Rational.Max(_furthest, _at);
        _last = null;
    }

    private void BarLine(XmlCursor xml, string location)
    {
        if (xml.Name == "bar-style")
        {
            var style = xml.Text();
            if (location == "right" && style is "light-light" or "light-heavy")
            {
                Part.Marks.Add(new RawMark(Now, MarkKind.DoubleBar));
            }
        }
        else if (xml.Name == "repeat" && location != "middle")
        {
            var isBackward = xml.Attribute("direction") == "backward";
            if (isBackward)
            {
                _repeats.Back(xml.Attribute("times"), location == "left");
            }
            else
            {
                _repeats.Begin(location == "right");
            }
        }
        else if (xml.Name == "repeat")
        {
            Remark(RemarkKind.Repeat, "a repeat sign within a measure was passed over", default);
        }
        else if (xml.Name == "ending")
        {
            _repeats.Ending(xml.Attribute("number"), xml.Attribute("type") == "start");
        }
    }

    private void Add(XmlCursor xml)
    {
        if (_note.IsGrace || _note.IsCue)
        {
            Remark(RemarkKind.GraceNote, _note.IsGrace ? "grace notes were left out" : "cue notes were left out", _at + 1);
            if (_note.IsGrace)
            {
                return;
            }
        }

        if (_note.Duration is not { } duration)
        {
            throw xml.Error("the note before this place has no <duration>");
        }

        // Some programs write no divisions where measures have no numbers; the note's own value tells them.
        if (!_hasDivisions && _note.Quarters(_expected) is { Sign: > 0 } quarters && duration / quarters is { IsInteger: true, Sign: > 0 } divisions && divisions <= XmlAttributes.MostDivisions)
        {
            SetDivisions((int)divisions.Numerator);
        }

        var length = Quarters(duration);
        if (_note.Ornament is { } ornament)
        {
            Remark(RemarkKind.Ornament, $"ornaments such as <{ornament}> were left out", _at + 1);
        }

        if (_note.IsChord)
        {
            if (_last is { } chord && _note.HasPitch && !_note.IsCue)
            {
                Remark(RemarkKind.Chord, "notes at once: the highest was kept", _at - length + 1);
                chord.Raise(_note, _chromatic);
            }

            return;
        }

        var onset = Now;
        _at += length;
        _furthest = Rational.Max(_furthest, _at);
        if (length.Sign == 0 || _note.IsCue)
        {
            return;
        }

        var voice = Voice();
        _last = voice;
        if (_note.IsRest || !_note.HasPitch)
        {
            voice.Rest();
            if (!_note.IsRest)
            {
                Remark(RemarkKind.FurtherPart, "notes without a pitch were left out", _at - length + 1);
            }

            return;
        }

        if (_note.HasFraction)
        {
            Remark(RemarkKind.Microtone, "pitches between two keys were taken to the nearest", _at - length + 1);
        }

        _added++;
        if (voice.Sing(_note, onset, length, _chromatic) is { } fault)
        {
            Remark(RemarkKind.Mended, fault, _at - length + 1);
        }
    }

    private XmlVoice Voice()
    {
        foreach (var voice in _voices)
        {
            if (voice.Number == _note.Voice && voice.Staff == _note.Staff)
            {
                return voice;
            }
        }

        if (_voices.Count >= ReadingLimits.Parts)
        {
            return _voices[^1];
        }

        var added = new XmlVoice(_note.Voice, _note.Staff);
        _voices.Add(added);
        return added;
    }
}

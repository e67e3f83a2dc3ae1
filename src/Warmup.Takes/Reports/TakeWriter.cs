using MathNet.Numerics.Statistics;

namespace Warmup.Takes;

/// <summary>Makes the report of a take from its alignment.</summary>
internal sealed class TakeWriter
{
    private const double LeastBreath = 0.15;

    // What lies so far from the line of drift, in cents, or so many times as far as the median note, does not count for it.
    private const double FarFromDrift = 45;
    private const double FarFromUsual = 5;
    private const double LongForVibrato = 0.55;

    // Two notes of one pitch are parted by a dip in the level, in dB; or by lengths that are the drill's.
    private const double Touching = 0.03;
    private const double OddLength = 0.65;
    private const float LeastDip = 3;
    private const int Near = 20;

    // A note is the one before it, held, where its pitch is so near to that one's, in cents, and the level dips by less than so many dB between them.
    private const double SameTone = 20;
    private const float LeastHeldDip = 2.5f;

    // What is shorter than this, in seconds, and than this part of its length, is no note.
    private const double LongestTrace = 0.05;
    private const double LeastPart = 0.3;

    private readonly DrillNotes _drill;
    private readonly PitchTrack _track;
    private readonly Voicing _voicing;
    private readonly TonicHypothesis _hypothesis;
    private readonly AlignmentWeights _weights;
    private readonly SungSpan[] _spans;
    private readonly (double Onset, double End)[] _times;
    private readonly NoteContour.Heard[] _heard;
    private readonly int _octave;
    private readonly int _offset;

    public TakeWriter(DrillNotes drill, PitchTrack track, Voicing voicing, TonicHypothesis hypothesis, AlignmentWeights weights)
    {
        _weights = weights;
        (_drill, _track, _voicing, _hypothesis, _spans) = (drill, track, voicing, hypothesis, hypothesis.Alignment.Spans);
        var rough = new Dictionary<SungSpan, NoteContour.Heard>();
        foreach (var span in _spans)
        {
            rough[span] = Measured(span, span.From / (double)PitchTrack.FramesASecond, span.To / (double)PitchTrack.FramesASecond);
        }

        var plain = Array.ConvertAll(_spans, s => (s.From / (double)PitchTrack.FramesASecond, s.To / (double)PitchTrack.FramesASecond));
        var isRinging = TakeDoubts.RingSeconds(track, voicing, _spans, plain) > TakeDoubts.LongRing;
        _times = new NoteTimes(track, voicing, s => rough[s], isRinging).Of(_spans);
        _heard = new NoteContour.Heard[_spans.Length];
        var offs = new List<double>();
        for (var s = 0; s < _spans.Length; s++)
        {
            _heard[s] = Measured(_spans[s], _times[s].Onset, _times[s].End);
        }

        KnowVibrato();
        for (var s = 0; s < _spans.Length; s++)
        {
            if (Math.Abs(_heard[s].Cents - Wanted(_spans[s])) < TakeMarks.Another)
            {
                offs.Add(_heard[s].Cents - Wanted(_spans[s]));
            }
        }

        var shift = hypothesis.Shift + (offs.Count == 0 ? 0 : offs.Median());
        _octave = (int)Math.Round(shift / 1200, MidpointRounding.ToEven);
        _offset = (int)Math.Round(shift - (1200 * _octave));
    }

    public TakeReport Write()
    {
        var passes = TakePasses.Of(_drill, _spans);
        if (TakeJudgement.OfAlignment(Facts(passes)) is { } why)
        {
            return TakeJudgement.NotTheDrill(_track, why);
        }

        var foreign = passes.Foreign;
        bool IsForeign(int span) => foreign.Any(p => span >= p.From && span < p.To);
        List<(double, double)> stretches = [.. foreign.Select(p => (_times[p.From].Onset, _times[p.To - 1].End))];
        bool IsHeld(int span) => !IsForeign(span) && IsHeldOver(span);
        bool IsOut(int span) => IsForeign(span) || IsTrace(span) || IsHeld(span);
        return Enumerable.Range(0, _spans.Length).Any(IsOut)
            ? new TakeWriter(_drill, _track, _voicing, _hypothesis.Without(IsOut, IsHeld), _weights).Write(stretches)
            : Write([]);
    }

    /// <summary>Whether a note is nothing but the one before it, held over its place: it was left out.</summary>
    private bool IsHeldOver(int s) => s > 0 && _spans[s].IsOther && !_spans[s - 1].IsOther && !IsTrace(s - 1) && _spans[s].Note == _spans[s - 1].Note + 1
        && _drill.Notes[_spans[s].Note].Line == _drill.Notes[_spans[s - 1].Note].Line
        && _times[s].Onset - _times[s - 1].End <= Touching && Math.Abs(_heard[s].Cents - _heard[s - 1].Cents) < SameTone && Dip(s) < LeastHeldDip;

    /// <summary>Whether of a note there is nothing but the beginning of the next one: it was left out.</summary>
    private bool IsTrace(int s)
    {
        var seconds = _times[s].End - _times[s].Onset;
        return seconds < LongestTrace && seconds < LeastPart * _drill.Notes[_spans[s].Note].Seconds * _hypothesis.Pace.Whole;
    }

    /// <summary>The report of what is left when foreign singing and traces of notes have been taken out.</summary>
    private TakeReport Write(List<(double From, double To)> foreign)
    {
        var passes = TakePasses.Of(_drill, _spans);
        var late = new int?[_spans.Length];
        var tempi = new List<TakeTempo>();
        foreach (var pass in passes.Passes)
        {
            Beat(pass, late, tempi);
        }

        var notes = passes.Order.ConvertAll(o => o.Span >= 0 ? SungNote(o.Span, late[o.Span]) : LeftOut(o.Note));
        return new TakeReport
        {
            IsDrill = true,
            OffsetCents = _offset,
            Octave = _octave,
            DriftCents = Drift(),
            Seconds = Math.Round(_track.Seconds, 3),
            Notes = notes.ToValueList(),
            Lines = Lines(notes, passes),
            Breaths = Breaths(),
            Events = passes.Events.ConvertAll(e => new TakeEvent(e.Kind, _drill.Lines[e.Line].Number, _drill.Lines[e.Line].Round, Round(e.Span < 0 ? _track.Seconds : _times[e.Span].Onset))).ToValueList(),
            Tempi = tempi.ToValueList(),
            Doubts = TakeDoubts.Of(_track, _voicing, passes, _spans, _times, _hypothesis, foreign),
        };
    }

    internal TakeFacts Facts(TakePasses passes)
    {
        // Strings that sound alone are no singing, but where they are taken for a note they are.
        var strings = DroneAlone.Of(_track, _voicing, _drill.Tonic + _hypothesis.Shift, most: 0);
        var (inNotes, all) = (0.0, 0.0);
        for (var f = 0; f < _voicing.Count; f++)
        {
            all += _voicing[f] * (1 - strings[f]);
        }

        foreach (var span in _spans)
        {
            for (var f = span.From; f < span.To; f++)
            {
                inNotes += span.IsOther ? 0 : _voicing[f];
                all += _voicing[f] * strings[f];
            }
        }

        var foreign = 0.0;
        foreach (var pass in passes.Passes.Where(p => p.IsForeign))
        {
            for (var f = _spans[pass.From].From; f < _spans[pass.To - 1].To; f++)
            {
                foreign += _voicing[f];
            }
        }

        var others = _spans.Count(s => s.IsOther);
        var inside = passes.Order.Count(o => o.Span < 0 && o.IsInside);
        var jumps = passes.Events.Count(e => e.Kind != TakeEventKind.EarlyStop);
        var (heard, sung) = (_spans.Length - others, Math.Max(1, _spans.Length));
        return new TakeFacts(
            heard,
            sung,
            all > 0 ? inNotes / all : 0,
            all > 0 ? foreign / all : 0,
            (others + inside + (2 * jumps)) / (double)sung,
            _hypothesis.Evidence,
            TonicHypotheses.IsOwnTonic(_hypothesis.Shift));
    }

    private double Wanted(SungSpan span) => _drill.Notes[span.Note].Cents + _hypothesis.Shift;

    private NoteContour.Heard Measured(SungSpan span, double onset, double end, double rate = 0) =>
        NoteContour.Measure(_track, onset, end, Wanted(span), span.IsOther ? 700 : TakeMarks.Another - 1, rate);

    /// <summary>Measures short notes again with the rate of vibrato that the longer ones have: less than two cycles cannot tell it.</summary>
    private void KnowVibrato()
    {
        var rates = Enumerable.Range(0, _spans.Length).Where(s => _heard[s].Rate > 0 && _times[s].End - _times[s].Onset >= LongForVibrato).Select(s => _heard[s].Rate).Order().ToList();
        if (rates.Count < 3)
        {
            return;
        }

        for (var s = 0; s < _spans.Length; s++)
        {
            if (_times[s].End - _times[s].Onset < LongForVibrato)
            {
                _heard[s] = Measured(_spans[s], _times[s].Onset, _times[s].End, rates[rates.Count / 2]);
            }
        }
    }

    private TakeNote SungNote(int s, int? late)
    {
        var (span, heard) = (_spans[s], _heard[s]);
        var note = _drill.Notes[span.Note];
        var line = _drill.Lines[note.Line];
        var cents = (int)Math.Round(heard.Cents - note.Cents - (1200 * _octave) - _offset);
        var isOther = Math.Abs(cents) >= TakeMarks.Another;
        var why = Doubt(s);
        return new TakeNote
        {
            Index = note.Index,
            Line = line.Number,
            Round = line.Round,
            Status = why is not null ? NoteStatus.Unsure : isOther ? NoteStatus.OtherNote : NoteStatus.Sung,
            Tone = _drill.ToneOf(note),
            Onset = Round(_times[s].Onset),
            End = Round(_times[s].End),
            Cents = cents,
            Spread = (int)Math.Round(heard.Spread),
            Vibrato = (int)Math.Round(heard.Vibrato),
            Late = late,
            Course = NoteContour.Course(_track, _times[s].Onset, _times[s].End, heard.Cents)
                .Select(c => new TakePoint(Round(c.Seconds), (int)Math.Round(c.Cents - note.Cents - (1200 * _octave) - _offset))).ToValueList(),
            SungTone = isOther ? _drill.ToneBeside(note, cents) : null,
            Why = why,
        };
    }

    private string? Doubt(int s) => _heard[s].Found < 0.4 ? "its pitch could not be followed"
        : _hypothesis.Alignment.Margins[s] < _weights.Sure ? "the notes around it fit the drill in another way almost as well"
        : IsDividedByLength(s) || IsDividedByLength(s + 1) ? "two notes of its pitch could not be told apart"
        : null;

    /// <summary>Whether a note and the one before it have one pitch, nothing between them that parts them, and odd lengths: they may be one.</summary>
    private bool IsDividedByLength(int s)
    {
        if (s == 0 || s == _spans.Length || _spans[s].Note != _spans[s - 1].Note + 1 || _spans[s].IsOther || _spans[s - 1].IsOther
            || _drill.Notes[_spans[s].Note].Cents != _drill.Notes[_spans[s - 1].Note].Cents || _times[s].Onset - _times[s - 1].End > Touching)
        {
            return false;
        }

        double Length(int span) => (_times[span].End - _times[span].Onset) / (_drill.Notes[_spans[span].Note].Seconds * _hypothesis.Pace.Whole);
        return Math.Min(Length(s), Length(s - 1)) < OddLength && Dip(s) < LeastDip;
    }

    /// <summary>How far the level dips where a note begins, in dB.</summary>
    private float Dip(int s)
    {
        var at = (int)(_times[s].Onset * PitchTrack.LowASecond);
        float Loudest(int from, int to) => Enumerable.Range(from, to - from).Max(_track.Low);
        return Math.Min(Loudest(at - Near, at), Loudest(at, at + Near)) - Enumerable.Range(at - (Near / 4), Near / 2).Min(_track.Low);
    }

    private TakeNote LeftOut(int index)
    {
        var note = _drill.Notes[index];
        var line = _drill.Lines[note.Line];
        return new TakeNote { Index = index, Line = line.Number, Round = line.Round, Status = NoteStatus.LeftOut, Tone = _drill.ToneOf(note) };
    }

    /// <summary>How late each note of a line began against the line's own even beat, and the line's tempo.</summary>
    private void Beat(TakePasses.Pass pass, int?[] late, List<TakeTempo> tempi)
    {
        var count = pass.To - pass.From;
        var (x, y) = (new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            (x[i], y[i]) = (_drill.Notes[_spans[pass.From + i].Note].Onset, _times[pass.From + i].Onset);
        }

        // One or two notes have no beat of their own; they are held against the take's.
        var (intercept, slope) = count < 3 ? (0, _hypothesis.Pace.At(y[0])) : MathNet.Numerics.Fit.Line(x, y);
        intercept = count < 3 ? y.Average() - (slope * x.Average()) : intercept;
        for (var i = 0; i < count; i++)
        {
            late[pass.From + i] = (int)Math.Round(1000 * (y[i] - intercept - (slope * x[i])));
        }

        var note = _drill.Notes[_spans[pass.From].Note];
        var section = _drill.Score.Sections[note.Section];
        var tempo = section.TempoAt(section.AksharasAt(Rational.FromDecimal(Math.Max(0, Math.Round((decimal)(note.Onset - _drill.Score.SectionStarts()[note.Section].ToDouble()), 4)))));
        if (slope > 0)
        {
            tempi.Add(new TakeTempo(Round(y[0]), Math.Round(tempo.ToDouble() / slope, 1)));
        }
    }

    private int Drift()
    {
        var (at, off) = (new List<double>(), new List<double>());
        for (var s = 0; s < _spans.Length; s++)
        {
            var cents = _heard[s].Cents - Wanted(_spans[s]);
            if (Math.Abs(cents) < TakeMarks.Another && _heard[s].Found > 0.5)
            {
                at.Add(_times[s].Onset);
                off.Add(cents);
            }
        }

        if (at.Count < 4)
        {
            return 0;
        }

        // A straight line through the notes, then once more without those far from it: one wrong note does not turn it. An uneven singer's lie far from it too.
        var (first, slope) = MathNet.Numerics.Fit.Line([.. at], [.. off]);
        var beside = Enumerable.Range(0, at.Count).Select(i => Math.Abs(off[i] - first - (slope * at[i]))).ToList();
        var far = Math.Max(FarFromDrift, FarFromUsual * beside.Median());
        var kept = Enumerable.Range(0, at.Count).Where(i => beside[i] < far).ToList();
        if (kept.Count >= 4)
        {
            (_, slope) = MathNet.Numerics.Fit.Line([.. kept.Select(i => at[i])], [.. kept.Select(i => off[i])]);
        }

        return (int)Math.Round(slope * (at[^1] - at[0]));
    }

    private ValueList<TakeLine> Lines(List<TakeNote> notes, TakePasses passes)
    {
        var lines = new List<TakeLine>();
        for (var l = 0; l < _drill.Lines.Length; l++)
        {
            var line = _drill.Lines[l];
            var sung = notes.Where(n => n.Index >= line.First && n.Index < line.First + line.Count && (n.Status is NoteStatus.Sung or NoteStatus.OtherNote)).ToList();
            var cents = sung.Where(n => n.Status == NoteStatus.Sung).Select(n => Math.Abs(n.Cents!.Value)).Order().ToList();
            lines.Add(new TakeLine
            {
                Line = line.Number,
                Round = line.Round,
                Times = passes.Passes.Count(p => p.Line == l && p.IsWhole),
                BrokenOff = passes.Passes.Count(p => p.Line == l && !p.IsWhole),
                Heard = sung.Count,
                InTune = cents.Count(c => c <= TakeMarks.InTune),
                Cents = cents.Count == 0 ? null : cents[cents.Count / 2],
            });
        }

        return lines.ToValueList();
    }

    private ValueList<TakeBreath> Breaths()
    {
        var breaths = new List<TakeBreath>();
        for (var s = 1; s < _spans.Length; s++)
        {
            var (from, to) = (_times[s - 1].End, _times[s].Onset);
            if (to - from < LeastBreath)
            {
                continue;
            }

            var before = _drill.Notes[_spans[s - 1].Note];
            var planned = before.Index + 1 < _drill.Notes.Length && _drill.Notes[before.Index + 1].Onset - (before.Onset + before.Seconds) > 0.05;
            breaths.Add(new TakeBreath(Round(from), Round(to - from), before.Index, planned));
        }

        return breaths.ToValueList();
    }

    private static double Round(double seconds) => Math.Round(seconds, 3);
}

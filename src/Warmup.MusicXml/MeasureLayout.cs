using System.Runtime.InteropServices;

namespace Warmup.MusicXml;

/// <summary>Turns a section, measure by measure, into written notes and rests. It uses its lists again for each measure.</summary>
internal sealed class MeasureLayout
{
    // The rests and cut notes of most measures.
    private const int FurtherPieces = 3;

    private readonly List<MeasureEvent> _events;
    private readonly List<NotatedNote> _pieces;
    private readonly TupletPlan _plan;
    private readonly Section _section;
    private readonly long[] _angaEnds;
    private readonly long _akshara;
    private long _cycle;
    private readonly bool _isHeld;
    private int _note;
    private int _event;

    /// <summary>A layout of a section's notes, or of one note held from its beginning to its end.</summary>
    public MeasureLayout(Section section, bool isHeld = false)
    {
        _section = section;
        _isHeld = isHeld;

        // So that the lists seldom grow.
        var usual = FurtherPieces + (section.Notes.Count / Math.Max(1, section.Measures.Count));
        _events = new List<MeasureEvent>(usual);
        _pieces = new List<NotatedNote>(usual);
        _plan = new TupletPlan(usual);
        Grid = TickGrid.Of(section);
        _akshara = Grid.Akshara;
        var ends = new List<long>();
        for (var beat = 1; beat <= section.Meter.Beats; beat++)
        {
            if (section.Meter.AccentOf(beat) != BeatAccent.None)
            {
                ends.Add(beat * Grid.Akshara);
            }
        }

        _angaEnds = [.. ends];
    }

    public TickGrid Grid { get; }

    /// <summary>The length of the measure that was last laid out, in ticks.</summary>
    public long Length { get; private set; }

    /// <summary>
    /// The notes and rests of the next measure, which they fill exactly. Call it for each measure in order; the result is valid until the next
    /// call.
    /// </summary>
    public ReadOnlySpan<NotatedNote> Next(Measure measure)
    {
        var onset = Grid.Ticks(measure.OnsetSteps);
        Length = Grid.Ticks(measure.LengthSteps);
        _pieces.Clear();
        _event = 0;
        _cycle = 0;
        Gather(onset);
        foreach (var span in _plan.Of(Grid, _events, _cycle))
        {
            Fill(span);
        }

        var pieces = CollectionsMarshal.AsSpan(_pieces);
        Tie(pieces);
        return pieces;
    }

    /// <summary>Gathers the events of a measure: the notes that sound in it, and the silence between them.</summary>
    private void Gather(long onset)
    {
        _events.Clear();
        if (_isHeld)
        {
            var end = Grid.Ticks(_section.LengthSteps);
            _events.Add(new MeasureEvent(0, Length, 0, onset == 0, onset + Length == end));
            return;
        }

        var notes = _section.Notes.AsSpan();
        var lines = _section.Lines.AsSpan();
        var (at, line) = (0L, -1);
        while (_note < notes.Length)
        {
            ref readonly var note = ref notes[_note];
            var start = ((long)note.OnsetSteps * Grid.TicksPerStep) - onset;
            var end = ((long)note.EndSteps * Grid.TicksPerStep) - onset;
            if (start >= Length)
            {
                break;
            }

            if (start > at)
            {
                _events.Add(new MeasureEvent(at, start, -1, true, true));
            }

            Sing(note, onset, start, end);
            if (note.LineIndex != line)
            {
                line = note.LineIndex;
                _cycle = Math.Max(_cycle, Cycle(lines[line].Speed));
            }

            at = Math.Min(end, Length);
            if (end > Length)
            {
                return;
            }

            _note++;
        }

        if (at < Length)
        {
            _events.Add(new MeasureEvent(at, Length, -1, true, true));
        }
    }

    /// <summary>Adds what of a note lies in the measure: in two pieces where a note swells, since readers keep hairpins at written notes only.</summary>
    private void Sing(in ScoreNote note, long onset, long start, long end)
    {
        var (from, to) = (Math.Max(start, 0), Math.Min(end, Length));
        var middle = ((long)note.MiddleSteps * Grid.TicksPerStep) - onset;
        if (note.Loudness == Loudness.SwellAndFade && from < middle && middle < to)
        {
            _events.Add(new MeasureEvent(from, middle, _note, start >= 0, false));
            (from, start) = (middle, -1);
        }

        _events.Add(new MeasureEvent(from, to, _note, start >= 0, end <= Length));
    }

    /// <summary>In a gati other than 4, how long the tuplet is that a reader expects: the aksharas that its units fill.</summary>
    private long Cycle(Speed speed) => speed.Gati == 4 ? 0 : Grid.Akshara * 4 >> (speed.Kalam - 1);

    private void Fill(TupletSpan span)
    {
        var first = _pieces.Count;
        for (; _event < _events.Count && _events[_event].Start < span.End; _event++)
        {
            var e = _events[_event];
            var from = Math.Max(e.Start, span.Start);
            var to = Math.Min(e.End, span.End);
            if (span.Slots == 0)
            {
                Plain(from, to, e.Note);
            }
            else
            {
                InTuplet(span, from, to, e.Note);
            }

            if (e.End > span.End)
            {
                break;
            }
        }

        if (span.Slots > 0)
        {
            var pieces = CollectionsMarshal.AsSpan(_pieces);
            pieces[first].BeginsTuplet = true;
            pieces[^1].EndsTuplet = true;
        }
    }

    private void InTuplet(TupletSpan span, long from, long to, int note)
    {
        var slot = span.Length / span.Slots;
        var written = span.Length / span.NormalSlots;
        Grid.TryGetValue(written, out var slotType, out _);
        while (from < to)
        {
            var slots = TupletPlan.FirstSlots((int)((to - from) / slot));
            Grid.TryGetValue(slots * written, out var type, out var dotted);
            _pieces.Add(new NotatedNote
            {
                Start = from,
                Length = slots * slot,
                Note = note,
                Type = (byte)type,
                IsDotted = dotted,
                Actual = (byte)span.Slots,
                Normal = (byte)span.NormalSlots,
                SlotType = (byte)slotType,
                BeamGroup = span.Length > Grid.Akshara ? span.Start : BeatOf(from),
            });
            from += slots * slot;
        }
    }

    /// <summary>Divides a plain length at the angas of the measure, then at beats, then inside a beat.</summary>
    private void Plain(long from, long to, int note)
    {
        while (from < to)
        {
            var end = Math.Min(to, AngaEnd(from));
            var length = end - from;
            var beat = BeatOf(from);
            if (beat != from || length < _akshara)
            {
                end = Math.Min(end, beat + _akshara);
                InsideBeat(from, end, beat, note);
            }
            else
            {
                length = WholeBeats(from, length, note < 0);
                Grid.TryGetValue(length, out var type, out var dotted);
                Add(from, length, beat, note, type, dotted);
                end = from + length;
            }

            from = end;
        }
    }

    /// <summary>The longest value that may begin on a beat: rests lie on their own grid and take no dots, notes may take one.</summary>
    private long WholeBeats(long from, long length, bool isRest)
    {
        var beat = Grid.Akshara;
        var whole = length / beat * beat;
        if (Grid.Parts > 1)
        {
            return WholeDottedBeats(from, whole, isRest);
        }

        if (!isRest && Grid.TryGetValue(length, out _, out _))
        {
            return length;
        }

        if (!isRest && whole <= Grid.Whole && Grid.TryGetValue(whole, out _, out _))
        {
            return whole;
        }

        var value = Grid.Whole;
        while (value > whole || (isRest && (from - AngaStart(from)) % value != 0))
        {
            value /= 2;
        }

        return value;
    }

    /// <summary>The same where the beat is dotted: one, two or four of them, for rests as well.</summary>
    private long WholeDottedBeats(long from, long whole, bool isRest)
    {
        var value = Grid.Akshara;
        while (2 * value <= whole && Grid.TryGetValue(2 * value, out _, out _) && (!isRest || from % (2 * value) == 0))
        {
            value *= 2;
        }

        return value;
    }

    /// <summary>Writes a length within one beat: as one value where there is one, otherwise cut at the coarsest point inside it.</summary>
    private void InsideBeat(long from, long to, long beat, int note)
    {
        if (Grid.TryGetValue(to - from, out var type, out var dotted))
        {
            Add(from, to - from, beat, note, type, dotted);
            return;
        }

        var grid = Grid.Parts > 1 ? Grid.Part : Grid.Akshara / 2;
        while ((from / grid * grid) + grid >= to)
        {
            grid /= 2;
        }

        var cut = (from / grid * grid) + grid;
        InsideBeat(from, cut, beat, note);
        InsideBeat(cut, to, beat, note);
    }

    private void Add(long from, long length, long beat, int note, int type, bool dotted) => _pieces.Add(new NotatedNote
    {
        Start = from,
        Length = length,
        Note = note,
        Type = (byte)type,
        IsDotted = dotted,
        BeamGroup = beat,
    });

    private void Tie(Span<NotatedNote> pieces)
    {
        var piece = 0;
        foreach (var e in _events)
        {
            var first = piece;
            while (piece < pieces.Length && pieces[piece].Start < e.End)
            {
                piece++;
            }

            pieces[first].IsFirst = e.IsFirst;
            pieces[piece - 1].IsLast = e.IsLast;
        }
    }

    private long BeatOf(long at) => at - (at % _akshara);

    // A measure shorter than the avartana is one of its angas.
    private bool HasAngas => _angaEnds.Length > 0 && Length >= _angaEnds[^1];

    /// <summary>The end of the anga in which a point of the measure lies, in ticks; the measure's end where it is not divided.</summary>
    public long AngaEnd(long at)
    {
        if (!HasAngas)
        {
            return Length;
        }

        foreach (var end in _angaEnds)
        {
            if (end > at && end <= Length)
            {
                return end;
            }
        }

        return Length;
    }

    private long AngaStart(long at)
    {
        if (!HasAngas)
        {
            return 0;
        }

        var start = 0L;
        foreach (var end in _angaEnds)
        {
            if (end > at)
            {
                break;
            }

            start = end;
        }

        return start;
    }
}

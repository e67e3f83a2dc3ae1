using System.Runtime.InteropServices;

namespace Warmup.MusicXml;

/// <summary>Turns a section, measure by measure, into written notes and rests. Its lists are used again for each measure.</summary>
internal sealed class MeasureLayout
{
    private readonly List<MeasureEvent> _events = [];
    private readonly List<NotatedNote> _pieces = [];
    private readonly TupletPlan _plan = new();
    private readonly Section _section;
    private readonly long[] _groupEnds;
    private long _cycle;
    private readonly bool _isHeld;
    private int _note;
    private int _event;

    /// <summary>A layout of a section's notes, or of one note held from its beginning to its end.</summary>
    public MeasureLayout(Section section, bool isHeld = false)
    {
        _section = section;
        _isHeld = isHeld;
        Clock = Clock.Of(section);

        _groupEnds = new long[section.Meter.Groups.Count];
        var end = 0L;
        for (var i = 0; i < _groupEnds.Length; i++)
        {
            end += section.Meter.Groups[i] * Clock.Akshara;
            _groupEnds[i] = end;
        }
    }

    public Clock Clock { get; }

    /// <summary>The length of the measure that was last laid out, in ticks.</summary>
    public long Length { get; private set; }

    /// <summary>
    /// The notes and rests of the next measure; they fill it exactly and hold until the next call. To be called for each measure in order.
    /// </summary>
    public ReadOnlySpan<NotatedNote> Next(Measure measure)
    {
        var onset = Clock.Ticks(measure.Onset);
        Length = Clock.Ticks(measure.Length);
        _pieces.Clear();
        _event = 0;
        _cycle = 0;
        Gather(onset);
        foreach (var span in _plan.Of(Clock, _events, _cycle))
        {
            Fill(span);
        }

        var pieces = CollectionsMarshal.AsSpan(_pieces);
        Tie(pieces);
        return pieces;
    }

    /// <summary>The events of a measure: the notes that sound in it, and the silence between them.</summary>
    private void Gather(long onset)
    {
        _events.Clear();
        if (_isHeld)
        {
            var end = Clock.Ticks(_section.Measures[^1].Onset + _section.Measures[^1].Length);
            _events.Add(new MeasureEvent(0, Length, 0, onset == 0, onset + Length == end));
            return;
        }

        var notes = _section.Notes.AsSpan();
        var at = 0L;
        while (_note < notes.Length)
        {
            ref readonly var note = ref notes[_note];
            var start = ((long)note.OnsetSteps * Clock.TicksPerStep) - onset;
            var end = ((long)note.EndSteps * Clock.TicksPerStep) - onset;
            if (start >= Length)
            {
                break;
            }

            if (start > at)
            {
                _events.Add(new MeasureEvent(at, start, -1, true, true));
            }

            _events.Add(new MeasureEvent(Math.Max(start, 0), Math.Min(end, Length), _note, start >= 0, end <= Length));
            _cycle = Math.Max(_cycle, Cycle(_section.Lines.AsSpan()[note.LineIndex].Speed));
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

    /// <summary>In gatis other than 4 so many units fill this many aksharas: the tuplet a reader expects.</summary>
    private long Cycle(Speed speed) => speed.Gati == 4 ? 0 : Clock.Akshara * 4 >> (speed.Kalam - 1);

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
        Clock.TryGetValue(written, out var slotType, out _);
        while (from < to)
        {
            var slots = TupletPlan.FirstSlots((int)((to - from) / slot));
            Clock.TryGetValue(slots * written, out var type, out var dotted);
            _pieces.Add(new NotatedNote
            {
                Start = from,
                Length = slots * slot,
                Note = note,
                Type = type,
                IsDotted = dotted,
                Actual = span.Slots,
                Normal = span.NormalSlots,
                SlotType = slotType,
                BeamGroup = span.Length > Clock.Akshara ? span.Start : BeatOf(from),
            });
            from += slots * slot;
        }
    }

    /// <summary>Divides a plain length at the groups of the measure, then at beats, then inside a beat.</summary>
    private void Plain(long from, long to, int note)
    {
        var beat = Clock.Akshara;
        while (from < to)
        {
            var end = Math.Min(to, GroupEnd(from));
            var length = end - from;
            if (BeatOf(from) != from || length < beat)
            {
                end = Math.Min(end, BeatOf(from) + beat);
                InsideBeat(from, end, note);
            }
            else
            {
                length = WholeBeats(from, length, note < 0);
                Add(from, length, note);
                end = from + length;
            }

            from = end;
        }
    }

    /// <summary>The longest value that may begin on a beat: rests lie on their own grid and take no dots, notes may take one.</summary>
    private long WholeBeats(long from, long length, bool isRest)
    {
        var beat = Clock.Akshara;
        var whole = length / beat * beat;
        if (Clock.Parts > 1)
        {
            return WholeDottedBeats(from, whole, isRest);
        }

        if (!isRest && Clock.TryGetValue(length, out _, out _))
        {
            return length;
        }

        if (!isRest && whole <= Clock.Whole && Clock.TryGetValue(whole, out _, out _))
        {
            return whole;
        }

        var value = Clock.Whole;
        while (value > whole || (isRest && (from - GroupStart(from)) % value != 0))
        {
            value /= 2;
        }

        return value;
    }

    /// <summary>The same where the beat is dotted: two, four or one of them, rests as well.</summary>
    private long WholeDottedBeats(long from, long whole, bool isRest)
    {
        var value = Clock.Akshara;
        while (2 * value <= whole && Clock.TryGetValue(2 * value, out _, out _) && (!isRest || from % (2 * value) == 0))
        {
            value *= 2;
        }

        return value;
    }

    /// <summary>A length within one beat: one value where it is one, otherwise cut at the coarsest point inside it.</summary>
    private void InsideBeat(long from, long to, int note)
    {
        if (Clock.TryGetValue(to - from, out _, out _))
        {
            Add(from, to - from, note);
            return;
        }

        var grid = Clock.Parts > 1 ? Clock.Part : Clock.Akshara / 2;
        while ((from / grid * grid) + grid >= to)
        {
            grid /= 2;
        }

        var cut = (from / grid * grid) + grid;
        InsideBeat(from, cut, note);
        InsideBeat(cut, to, note);
    }

    private void Add(long from, long length, int note)
    {
        Clock.TryGetValue(length, out var type, out var dotted);
        _pieces.Add(new NotatedNote
        {
            Start = from,
            Length = length,
            Note = note,
            Type = type,
            IsDotted = dotted,
            BeamGroup = BeatOf(from),
        });
    }

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

    private long BeatOf(long at) => at - (at % Clock.Akshara);

    // A measure shorter than the avartana is one of its angas, and has none inside.
    private bool HasGroups => _groupEnds.Length > 0 && Length >= _groupEnds[^1];

    private long GroupEnd(long at)
    {
        if (!HasGroups)
        {
            return Length;
        }

        foreach (var end in _groupEnds)
        {
            if (end > at && end <= Length)
            {
                return end;
            }
        }

        return Length;
    }

    private long GroupStart(long at)
    {
        if (!HasGroups)
        {
            return 0;
        }

        var start = 0L;
        foreach (var end in _groupEnds)
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

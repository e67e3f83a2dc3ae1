using System.Runtime.InteropServices;

namespace Warmup.Takes;

/// <summary>
/// Lays a drill's notes over a take at the least cost: dynamic programming over stretches of sound, in which a line may be repeated, left out,
/// begun falsely or broken off, and a note left out or replaced.
/// </summary>
internal sealed class Aligner
{
    /// <summary>Frames from one place to the next at which a note may begin or end.</summary>
    public const int Step = 3;

    /// <summary>The same where it is enough to see whether a take fits at all.</summary>
    public const int CoarseStep = 6;

    private const int MostSkipped = 3;
    private const int MostSkippedMore = 3;
    private const int MostStarts = 64;
    private const int LeastFrames = 4;
    private const double LeastOther = 70;

    // Frames at a note's edges where a pause belongs to its neighbours.
    private const int Inside = 12;

    // Frames at a note's edges where the voice may glide.
    private const int Glide = 6;

    // Notes touch where fewer frames lie between them.
    private const int Touching = 12;

    private const int LongestNote = 12 * PitchTrack.FramesASecond;

    // A gap of the drill that is long enough to breathe in, in seconds.
    private const double PlannedPause = 0.15;

    private static readonly double[] LogFrames = [.. Enumerable.Range(0, LongestNote + CoarseStep + 1).Select(f => Math.Log(f))];

    private readonly DrillNote[] _notes;
    private readonly DrillLine[] _lines;
    private readonly PitchTrack _track;
    private readonly AlignmentWeights _weights;
    private readonly MatchTable _table;
    private readonly MatchTable _others;
    private readonly int[] _pitchOf;
    private readonly double[] _noteCents;
    private readonly Func<double, double> _pace;
    private readonly Steadiness _steadiness;
    private readonly TakeCues _cues;
    private readonly int _step;
    private readonly int _places;
    private readonly SungWays _ways = new();

    // By note, the one before the first included: how an end of it was reached at this place, a rest after it, and a beginning.
    private readonly Reached[] _ends;
    private readonly Reached[] _rests;
    private readonly Reached[] _begins;
    private readonly (SungWays.Way Best, SungWays.Way Rival)[] _endings;
    private readonly List<int> _ended = [];
    private readonly List<int> _resting = [];
    private readonly List<int> _begun = [];
    private readonly List<Open> _starts = [];
    private double _rest;

    /// <param name="drill">The drill.</param>
    /// <param name="track">The take.</param>
    /// <param name="voicing">Where there is voice.</param>
    /// <param name="shift">What the singer sings above the drill, in cents.</param>
    /// <param name="pace">Sung seconds for a second of the drill, by the time in the take.</param>
    /// <param name="steadiness">How far the singer's notes may be from their pitch and their length.</param>
    /// <param name="weights">The costs.</param>
    /// <param name="frames">How much of the take is looked at, from its beginning.</param>
    /// <param name="step">Frames from one place to the next.</param>
    public Aligner(
        DrillNotes drill, PitchTrack track, Voicing voicing, double shift, Func<double, double> pace, Steadiness steadiness, AlignmentWeights weights, int frames = int.MaxValue, int step = Step)
    {
        (_notes, _lines, _track, _weights, _pace, _steadiness, _step) = (drill.Notes, drill.Lines, track, weights, pace, steadiness, step);
        _noteCents = Array.ConvertAll(_notes, n => n.Cents + shift);
        var pitches = _noteCents.Distinct().Order().ToArray();
        _table = new MatchTable(track, voicing, pitches, frames, weights, drill.Tonic + shift, steadiness.Cents);
        _pitchOf = Array.ConvertAll(_noteCents, c => Array.BinarySearch(pitches, c));
        _others = new MatchTable(track, voicing, OtherPitches(pitches), frames, weights, drill.Tonic + shift, deviation: null);
        var n = _notes.Length + 1;
        (_ends, _rests, _begins) = (new Reached[n], new Reached[n], new Reached[n]);
        _endings = new (SungWays.Way, SungWays.Way)[n];
        foreach (var reached in (Reached[][])[_ends, _rests, _begins])
        {
            Array.Fill(reached, Reached.Never);
        }

        _places = Math.Min(track.Count, frames) / step;
        _cues = new TakeCues(track, voicing, _places, step);
    }

    private record struct Open(int Note, int From, double Cost, int Before, ulong Notes, int Rival, double Behind, int Last, double LogExpected);

    /// <summary>The alignment of least cost.</summary>
    /// <param name="limit">The cost above which an alignment is of no use; without notes and of endless cost where it is passed.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TakeAlignment Align(double limit, CancellationToken cancellation)
    {
        var isPart = _places < _track.Count / _step;
        var n = _notes.Length;
        var open = new List<Open>();
        _rests[0] = Reached.Never with { Cost = 0 };
        _resting.Add(0);
        for (var place = 0; place <= _places; place++)
        {
            // What was unassigned up to here costs all rests alike: they are kept without it.
            _rest = _table.Rest(0, place * _step);
            if (place > 0)
            {
                cancellation.ThrowIfCancellationRequested();
                Rest(_table.Rest(0, (place - 1) * _step));
                if (Math.Min(End(place, open), Best()) > limit)
                {
                    return TakeAlignment.None;
                }
            }

            if (place < _places)
            {
                Begin(place, open);
            }

            if (_ways.IsFull)
            {
                Forget(open);
            }
        }

        var end = Reached.Never;
        foreach (var i in _resting.Concat(_ended))
        {
            end.Offer(_ways, At(i).Plus(i == n || isPart ? 0 : _weights.Jump + (i > 0 && !_notes[i - 1].IsLast ? _weights.BreakOff : 0)));
        }

        return _ways.Trace(end);
    }

    /// <summary>What the take costs more as a melody whose notes are free.</summary>
    /// <param name="alignment">The alignment that it is held against.</param>
    /// <param name="isWithin">Whether only what lies between its first and last note counts: where something sounds all the time, what is around them is no singing.</param>
    public double Evidence(TakeAlignment alignment, bool isWithin)
    {
        var end = _places * _step;
        var (from, to) = isWithin && alignment.Spans.Length > 0 ? (alignment.Spans[0].From, Math.Min(end, alignment.Spans[^1].To)) : (0, end);
        return FreeMelody.Cost(_others, from, to, _weights.FreeNote) - (alignment.Cost - _table.Rest(0, from) - _table.Rest(to, end));
    }

    /// <summary>Drops what led nowhere.</summary>
    private void Forget(List<Open> open)
    {
        var states = (Reached[])[.. _ended.Select(i => _ends[i]), .. _resting.Select(i => _rests[i])];
        var numbers = _ways.Keep([.. open.SelectMany(o => (int[])[o.Before, o.Rival]), .. states.SelectMany(s => (int[])[s.Way, s.Rival])]);
        int Number(int way) => way < 0 ? -1 : numbers[way];
        foreach (ref var one in CollectionsMarshal.AsSpan(open))
        {
            (one.Before, one.Rival) = (Number(one.Before), Number(one.Rival));
        }

        _ended.ForEach(i => _ends[i] = _ends[i] with { Way = Number(_ends[i].Way), Rival = Number(_ends[i].Rival) });
        _resting.ForEach(i => _rests[i] = _rests[i] with { Way = Number(_rests[i].Way), Rival = Number(_rests[i].Rival) });
    }

    /// <summary>Lets the notes that have ended be followed by a rest.</summary>
    /// <param name="before">What was unassigned up to their end.</param>
    private void Rest(double before)
    {
        foreach (var i in _ended)
        {
            if (!_rests[i].IsReached)
            {
                _resting.Add(i);
            }

            _rests[i].Offer(_ways, _ends[i].Plus(-before));
        }
    }

    /// <summary>The least cost to have got to this place after a note, in it or in a rest after it.</summary>
    private Reached At(int i)
    {
        var reached = _ends[i];
        reached.Offer(_ways, _rests[i].Plus(_rest));
        return reached;
    }

    /// <summary>The least cost of all; rests that are dearer by too much are given up.</summary>
    private double Best()
    {
        var best = double.PositiveInfinity;
        foreach (var i in _ended)
        {
            best = Math.Min(best, _ends[i].Cost);
        }

        foreach (var i in _resting)
        {
            best = Math.Min(best, _rests[i].Cost + _rest);
        }

        var kept = 0;
        foreach (var i in CollectionsMarshal.AsSpan(_resting))
        {
            if (_rests[i].Cost + _rest <= best + _weights.Beam)
            {
                _resting[kept++] = i;
            }
            else
            {
                _rests[i] = Reached.Never;
            }
        }

        _resting.RemoveRange(kept, _resting.Count - kept);
        return best;
    }

    /// <summary>Ends at a place the notes that may end there; those that have fallen behind are given up.</summary>
    /// <returns>The least cost of a note that is still going on.</returns>
    private double End(int place, List<Open> open)
    {
        foreach (var i in _ended)
        {
            _ends[i] = Reached.Never;
        }

        _ended.Clear();
        var to = place * _step;
        var bound = Best() + _weights.Beam;
        var (kept, least) = (0, double.PositiveInfinity);
        var (other, second, othersFrom) = (default(MatchTable.Heard), default(MatchTable.Heard), -1);
        foreach (var one in CollectionsMarshal.AsSpan(open))
        {
            if (place > one.Last)
            {
                continue;
            }

            var frames = to - one.From;
            var match = _table.OfNote(_pitchOf[one.Note], one.From, to);
            var isOther = false;
            if (match > _weights.Other)
            {
                if (othersFrom != one.From)
                {
                    (other, second, othersFrom) = (_others.Best(one.From, to), default, one.From);
                }

                var heard = other;
                if (Math.Abs(other.Cents - _noteCents[one.Note]) < LeastOther)
                {
                    second = second.IsThere ? second : _others.Best(one.From, to, other.Cents, 2 * LeastOther);
                    heard = second;
                }

                var otherCost = heard.Cost + _weights.OtherNote(heard.Cents - _noteCents[one.Note]);
                (match, isOther) = otherCost < match ? (otherCost, true) : (match, false);
            }

            var cost = one.Cost + match;
            if (cost > bound)
            {
                continue;
            }

            open[kept++] = one;
            least = Math.Min(least, cost);
            if (frames >= LeastFrames && MayEnd(one, cost))
            {
                cost += LengthCost(one, frames) + (_weights.Breathed * _cues.PausesBetween((one.From + Inside) / _step, place - (Inside / _step)));
                bound = Math.Min(bound, cost + _weights.Beam);
                cost += (_weights.LeftOut * _table.Unheard(one.From, to)) + (_weights.NoDip * GoesOn(one, to));
                End(one, to, isOther, cost);
            }
        }

        open.RemoveRange(kept, open.Count - kept);
        foreach (var i in _ended)
        {
            ref var end = ref _ends[i];
            end.Way = _ways.Add(_endings[i].Best);
            end.RivalCost = end.RivalCost <= end.Cost + SungWays.MostBehind ? end.RivalCost : double.PositiveInfinity;
            end.Rival = double.IsPositiveInfinity(end.RivalCost) ? -1 : _ways.Add(_endings[i].Rival);
        }

        return least;
    }

    /// <summary>
    /// How clearly a note only goes on with the tone before it, 0 to 1: their pitches differ in the drill, but the pitch of one of them explains the other better than
    /// its own does, and no dip parts them. What two notes of one pitch in the drill cost is decided where the second begins.
    /// </summary>
    private double GoesOn(in Open one, int to)
    {
        if (one.Before < 0)
        {
            return 0;
        }

        var before = _ways.SpanOf(one.Before);
        var (here, there) = (_pitchOf[one.Note], _pitchOf[before.Note]);
        if (here == there || one.From - before.To >= Touching)
        {
            return 0;
        }

        var isOne = IsRather(there, here, one.From, to) || IsRather(here, there, before.From, before.To);
        return isOne ? 1 - _cues.Dip(one.From / _step) : 0;
    }

    /// <summary>Whether the middle of a stretch, without the glides at its edges, is explained better by one pitch than by another or by any other note.</summary>
    private bool IsRather(int pitch, int other, int from, int to)
    {
        var edge = Math.Min(Glide, (to - from) / 4);
        return _table.OfNote(pitch, from + edge, to - edge) < Math.Min(_weights.Other, _table.OfNote(other, from + edge, to - edge));
    }

    /// <summary>Whether a note that costs at least so much can still be the cheapest to end here, or its rival.</summary>
    private bool MayEnd(in Open one, double cost)
    {
        ref var end = ref _ends[one.Note + 1];
        return cost < end.Cost || (cost < end.RivalCost && _endings[one.Note + 1].Best.Notes != SungWays.Then(one.Notes, one.Note));
    }

    /// <summary>Ends a note at a cost.</summary>
    private void End(in Open one, int to, bool isOther, double cost)
    {
        ref var end = ref _ends[one.Note + 1];
        ref var ending = ref _endings[one.Note + 1];
        var notes = SungWays.Then(one.Notes, one.Note);
        if (cost < end.Cost)
        {
            if (!end.IsReached)
            {
                _ended.Add(one.Note + 1);
            }
            else if (ending.Best.Notes != notes)
            {
                (end.RivalCost, ending.Rival) = (end.Cost, ending.Best);
            }

            end.Cost = cost;
            ending.Best = new SungWays.Way(new SungSpan(one.Note, one.From, to, isOther), one.Before, notes, one.Rival, one.Behind);
        }
        else if (cost < end.RivalCost && ending.Best.Notes != notes)
        {
            end.RivalCost = cost;
            ending.Rival = new SungWays.Way(new SungSpan(one.Note, one.From, to, isOther), one.Before, notes, one.Rival, one.Behind);
        }
    }

    /// <summary>Begins at a place the notes that may begin there.</summary>
    private void Begin(int place, List<Open> open)
    {
        var best = Best();
        var (jump, jumpLine) = (Reached.Never, 0);
        _begun.Clear();
        foreach (var i in _resting.Concat(_ended.Where(e => !_rests[e].IsReached)))
        {
            var at = At(i);
            if (at.Cost > best + _weights.Beam)
            {
                continue;
            }

            var leftOut = 0.0;
            var unassigned = _rest - _table.Rest(0, at.Way < 0 ? 0 : _ways.SpanOf(at.Way).To);
            for (var j = i; j < Math.Min(i + 1 + MostSkipped, _notes.Length); j++)
            {
                leftOut += j == i ? 0 : LeftOut(_notes[j - 1], unassigned);
                var cost = leftOut + PauseCost(i, j, place);
                if (i > 0 && _pitchOf[j] == _pitchOf[i - 1])
                {
                    Begin(j, _ends[i].Plus(cost + (_weights.NoDip * (1 - _cues.Dip(place)))));
                    Begin(j, _rests[i].Plus(cost + _rest));
                }
                else
                {
                    Begin(j, at.Plus(cost));
                }
            }

            var broken = i > 0 && !_notes[i - 1].IsLast ? _weights.BreakOff : 0;
            var leave = i == 0 ? 0 : _weights.Unpaused * (1 - _cues.Pause(place));
            jumpLine = at.Cost + broken + leave < jump.Cost ? i == 0 ? 0 : _notes[i - 1].Line : jumpLine;
            jump.Offer(_ways, at.Plus(broken + leave));
        }

        for (var l = 0; l < _lines.Length; l++)
        {
            Begin(_lines[l].First, jump.Plus(_weights.Jump + (0.5 * Math.Log(1 + Math.Abs(l - jumpLine))) + (_weights.SkippedMore * Math.Clamp(l - jumpLine - 2, 0, MostSkippedMore))));
        }

        var pace = _pace(place * _step / (double)PitchTrack.FramesASecond) * PitchTrack.FramesASecond;
        _starts.Clear();
        foreach (var j in _begun)
        {
            var begin = _begins[j];
            if (begin.Cost <= best + _weights.Beam)
            {
                var expected = _notes[j].Seconds * pace;
                _starts.Add(new Open(
                    j, place * _step, begin.Cost, begin.Way, _ways.NotesOf(begin.Way), begin.Rival, begin.RivalCost - begin.Cost, place + (LongestFrames(expected) / _step), Math.Log(expected)));
            }

            _begins[j] = Reached.Never;
        }

        if (_starts.Count > MostStarts)
        {
            _starts.Sort((a, b) => a.Cost != b.Cost ? a.Cost.CompareTo(b.Cost) : a.Note.CompareTo(b.Note));
            _starts.RemoveRange(MostStarts, _starts.Count - MostStarts);
        }

        open.AddRange(_starts);
    }

    private void Begin(int note, in Reached reached)
    {
        if (!_begins[note].IsReached && reached.IsReached)
        {
            _begun.Add(note);
        }

        _begins[note].Offer(_ways, reached);
    }

    /// <summary>
    /// What it costs to leave out a note; more at a line's end, but for what is unassigned before the next note: there the note may have been sung and not be heard.
    /// </summary>
    private double LeftOut(DrillNote note, double unassigned) => _weights.LeftOut + (note.IsLast ? Math.Max(0, _weights.BreakOff - unassigned) : 0);

    /// <summary>What a pause costs inside a line, and what it costs to go on with the next line without one, where the drill has one.</summary>
    private double PauseCost(int i, int j, int place)
    {
        if (i == 0)
        {
            return 0;
        }

        var isPlanned = _notes[j].Onset - _notes[j - 1].Onset - _notes[j - 1].Seconds > PlannedPause;
        return _notes[j].IsFirst
            ? isPlanned ? _weights.Unpaused / 2 * (1 - _cues.Pause(place)) : 0
            : isPlanned ? 0 : _weights.Paused * _cues.Pause(place);
    }

    private double LengthCost(in Open one, int frames)
    {
        var off = (LogFrames[frames] - one.LogExpected) / _steadiness.Length;

        // A line's last note may be held, or let go for the breath.
        off = _notes[one.Note].IsLast ? off / 2 : off;
        return Math.Min(off * off / 2, 12);
    }

    private static int LongestFrames(double expected) => (int)Math.Clamp(
        (2.2 * expected) + (0.4 * PitchTrack.FramesASecond), 0.5 * PitchTrack.FramesASecond, LongestNote);

    /// <summary>Every half semitone about the drill's pitches.</summary>
    private static double[] OtherPitches(double[] pitches)
    {
        var (low, high) = (pitches[0] - 700, pitches[^1] + 700);
        return [.. Enumerable.Range(0, (int)((high - low) / 50) + 1).Select(i => low + (50 * i))];
    }
}

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

    private const int MostSkipped = 3;
    private const int MostStarts = 64;
    private const int LeastFrames = 4;
    private const double LeastOther = 70;
    private const int NodesAtFirst = 100_000;

    private readonly DrillNote[] _notes;
    private readonly DrillLine[] _lines;
    private readonly PitchTrack _track;
    private readonly AlignmentWeights _weights;
    private readonly MatchTable _table;
    private readonly MatchTable _others;
    private readonly int[] _pitchOf;
    private readonly double[] _noteCents;
    private readonly Func<double, double> _pace;
    private readonly double _lengthSpread;
    private readonly float[] _dips;
    private readonly int _places;
    private readonly List<Node> _nodes = [];

    // By note, the one before the first included: the least costs to have ended there, in a note and in a rest, and the way there.
    private readonly double[] _ends;
    private readonly int[] _endNodes;
    private readonly Node[] _endings;
    private readonly double[] _rests;
    private readonly int[] _restNodes;
    private readonly double[] _startCosts;
    private readonly int[] _startNodes;
    private readonly List<int> _ended = [];
    private readonly List<int> _resting = [];
    private readonly List<int> _begun = [];
    private readonly List<Open> _starts = [];
    private double _rest;
    private int _mostNodes = NodesAtFirst;

    /// <param name="drill">The drill.</param>
    /// <param name="track">The take.</param>
    /// <param name="voicing">Where there is voice.</param>
    /// <param name="shift">What the singer sings above the drill, in cents.</param>
    /// <param name="pace">Sung seconds for a second of the drill, by the time in the take.</param>
    /// <param name="lengthSpread">How freely lengths may differ.</param>
    /// <param name="weights">The costs.</param>
    /// <param name="frames">How much of the take is looked at, from its beginning.</param>
    public Aligner(DrillNotes drill, PitchTrack track, Voicing voicing, double shift, Func<double, double> pace, double lengthSpread, AlignmentWeights weights, int frames = int.MaxValue)
    {
        (_notes, _lines, _track, _weights, _pace, _lengthSpread) = (drill.Notes, drill.Lines, track, weights, pace, lengthSpread);
        _noteCents = Array.ConvertAll(_notes, n => n.Cents + shift);
        var pitches = _noteCents.Distinct().Order().ToArray();
        _table = new MatchTable(track, voicing, pitches, frames, weights);
        _pitchOf = Array.ConvertAll(_noteCents, c => Array.BinarySearch(pitches, c));
        _others = new MatchTable(track, voicing, OtherPitches(pitches), frames, weights);
        var n = _notes.Length + 1;
        (_ends, _rests, _startCosts) = (new double[n], new double[n], new double[n]);
        (_endNodes, _restNodes, _startNodes, _endings) = (new int[n], new int[n], new int[n], new Node[n]);
        foreach (var costs in (double[][])[_ends, _rests, _startCosts])
        {
            Array.Fill(costs, double.PositiveInfinity);
        }

        _places = Math.Min(track.Count, frames) / Step;
        _dips = Dips(track, _places);
    }

    private readonly record struct Node(int Before, int Note, int From, int To, bool IsOther);

    private record struct Open(int Note, int From, double Cost, int Before, int Last, double Expected);

    /// <summary>The alignment of least cost.</summary>
    /// <param name="limit">The cost above which an alignment is of no use; without notes and of endless cost where it is passed.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TakeAlignment Align(double limit, CancellationToken cancellation)
    {
        var isPart = _places < _track.Count / Step;
        var n = _notes.Length;
        var open = new List<Open>();
        Rest(0, 0, -1);
        for (var place = 0; place <= _places; place++)
        {
            // What was unassigned up to here costs all rests alike: they are kept without it.
            _rest = _table.Rest(0, place * Step);
            if (place > 0)
            {
                cancellation.ThrowIfCancellationRequested();
                var before = _table.Rest(0, (place - 1) * Step);
                foreach (var i in _ended)
                {
                    if (_ends[i] - before < _rests[i])
                    {
                        Rest(i, _ends[i] - before, _endNodes[i]);
                    }
                }

                if (Math.Min(End(place, open), Best()) > limit)
                {
                    return new TakeAlignment([], double.PositiveInfinity);
                }
            }

            if (place < _places)
            {
                Begin(place, open);
            }

            if (_nodes.Count > _mostNodes)
            {
                Forget(open);
            }
        }

        var (best, node) = (double.PositiveInfinity, -1);
        foreach (var i in _resting.Concat(_ended))
        {
            var cost = Cost(i) + (i == n || isPart ? 0 : _weights.EarlyStop);
            if (cost < best)
            {
                (best, node) = (cost, IsNote(i) ? _endNodes[i] : _restNodes[i]);
            }
        }

        var spans = new List<SungSpan>();
        for (; node >= 0; node = _nodes[node].Before)
        {
            spans.Add(new SungSpan(_nodes[node].Note, _nodes[node].From, _nodes[node].To, _nodes[node].IsOther));
        }

        spans.Reverse();
        return new TakeAlignment([.. spans], best);
    }

    /// <summary>Drops the nodes to which no way leads that is still in play, so that memory does not grow with what was given up.</summary>
    private void Forget(List<Open> open)
    {
        var isKept = new bool[_nodes.Count];
        void Keep(int node)
        {
            for (; node >= 0 && !isKept[node]; node = _nodes[node].Before)
            {
                isKept[node] = true;
            }
        }

        foreach (var one in open)
        {
            Keep(one.Before);
        }

        _ended.ForEach(i => Keep(_endNodes[i]));
        _resting.ForEach(i => Keep(_restNodes[i]));
        var places = new int[_nodes.Count];
        var count = 0;
        for (var n = 0; n < places.Length; n++)
        {
            if (isKept[n])
            {
                // A node stands after the one that it leads back to.
                var node = _nodes[n];
                places[n] = count;
                _nodes[count++] = node with { Before = node.Before < 0 ? -1 : places[node.Before] };
            }
        }

        _nodes.RemoveRange(count, _nodes.Count - count);
        int At(int node) => node < 0 ? -1 : places[node];
        for (var o = 0; o < open.Count; o++)
        {
            open[o] = open[o] with { Before = At(open[o].Before) };
        }

        _ended.ForEach(i => _endNodes[i] = At(_endNodes[i]));
        _resting.ForEach(i => _restNodes[i] = At(_restNodes[i]));
        _mostNodes = Math.Max(NodesAtFirst, 2 * count);
    }

    /// <summary>Lets a note be followed by a rest.</summary>
    private void Rest(int i, double cost, int node)
    {
        if (double.IsPositiveInfinity(_rests[i]))
        {
            _resting.Add(i);
        }

        (_rests[i], _restNodes[i]) = (cost, node);
    }

    /// <summary>The least cost to have got to this place after a note, in it or in a rest after it.</summary>
    private double Cost(int i) => Math.Min(_ends[i], _rests[i] + _rest);

    private bool IsNote(int i) => _ends[i] < _rests[i] + _rest;

    /// <summary>The least cost of all; rests that are dearer by too much are given up.</summary>
    private double Best()
    {
        var best = double.PositiveInfinity;
        foreach (var i in _ended)
        {
            best = Math.Min(best, _ends[i]);
        }

        foreach (var i in _resting)
        {
            best = Math.Min(best, _rests[i] + _rest);
        }

        var kept = 0;
        foreach (var i in CollectionsMarshal.AsSpan(_resting))
        {
            if (_rests[i] + _rest <= best + _weights.Beam)
            {
                _resting[kept++] = i;
            }
            else
            {
                _rests[i] = double.PositiveInfinity;
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
            _ends[i] = double.PositiveInfinity;
        }

        _ended.Clear();
        var to = place * Step;
        var bound = Best() + _weights.Beam;
        var (kept, least) = (0, double.PositiveInfinity);
        var others = default(MatchTable.TwoBest);
        var othersFrom = -1;
        foreach (var one in CollectionsMarshal.AsSpan(open))
        {
            if (place > one.Last)
            {
                continue;
            }

            var frames = to - one.From;
            var match = _table.Of(_pitchOf[one.Note], one.From, to);
            var isOther = false;
            if (match > _weights.Other + (0.3 * _weights.Frame * frames))
            {
                if (othersFrom != one.From)
                {
                    (others, othersFrom) = (_others.Best(one.From, to, 2 * LeastOther), one.From);
                }

                var other = others.Away(_noteCents[one.Note], LeastOther) + _weights.Other;
                (match, isOther) = other < match ? (other, true) : (match, false);
            }

            var cost = one.Cost + match;
            if (cost > bound)
            {
                continue;
            }

            open[kept++] = one;
            least = Math.Min(least, cost);
            if (frames < LeastFrames)
            {
                continue;
            }

            cost += LengthCost(one, frames);
            bound = Math.Min(bound, cost + _weights.Beam);
            var i = one.Note + 1;
            if (cost < _ends[i])
            {
                if (double.IsPositiveInfinity(_ends[i]))
                {
                    _ended.Add(i);
                }

                (_ends[i], _endings[i]) = (cost, new Node(one.Before, one.Note, one.From, to, isOther));
            }
        }

        open.RemoveRange(kept, open.Count - kept);
        foreach (var i in _ended)
        {
            _endNodes[i] = _nodes.Count;
            _nodes.Add(_endings[i]);
        }

        return least;
    }

    /// <summary>Begins at a place the notes that may begin there.</summary>
    private void Begin(int place, List<Open> open)
    {
        var best = Best();
        var (least, leastNode, leastLine) = (double.PositiveInfinity, -1, 0);
        _begun.Clear();
        foreach (var i in _resting.Concat(_ended.Where(e => double.IsPositiveInfinity(_rests[e]))))
        {
            var (isNote, cost) = (IsNote(i), Cost(i));
            if (cost > best + _weights.Beam)
            {
                continue;
            }

            var node = isNote ? _endNodes[i] : _restNodes[i];
            for (var j = i; j < Math.Min(i + 1 + MostSkipped, _notes.Length); j++)
            {
                var leftOut = (j - i) * _weights.LeftOut;
                var isSame = isNote && i > 0 && _pitchOf[j] == _pitchOf[i - 1];
                Start(j, cost + leftOut + (isSame ? _weights.NoDip * (1 - _dips[place]) : 0), node);
                if (isSame)
                {
                    Start(j, _rests[i] + _rest + leftOut, _restNodes[i]);
                }
            }

            var broken = i > 0 && !_notes[i - 1].IsLast ? _weights.BreakOff : 0;
            if (cost + broken < least)
            {
                (least, leastNode, leastLine) = (cost + broken, node, i == 0 ? 0 : _notes[i - 1].Line);
            }
        }

        for (var l = 0; l < _lines.Length; l++)
        {
            Start(_lines[l].First, least + _weights.Jump + (0.5 * Math.Log(1 + Math.Abs(l - leastLine))), leastNode);
        }

        var pace = _pace(place * Step / (double)PitchTrack.FramesASecond) * PitchTrack.FramesASecond;
        _starts.Clear();
        foreach (var j in _begun)
        {
            if (_startCosts[j] <= best + _weights.Beam)
            {
                _starts.Add(new Open(j, place * Step, _startCosts[j], _startNodes[j], place + (LongestFrames(_notes[j].Seconds * pace) / Step), _notes[j].Seconds * pace));
            }

            _startCosts[j] = double.PositiveInfinity;
        }

        if (_starts.Count > MostStarts)
        {
            _starts.Sort((a, b) => a.Cost != b.Cost ? a.Cost.CompareTo(b.Cost) : a.Note.CompareTo(b.Note));
            _starts.RemoveRange(MostStarts, _starts.Count - MostStarts);
        }

        open.AddRange(_starts);
    }

    private void Start(int note, double cost, int node)
    {
        if (cost < _startCosts[note])
        {
            if (double.IsPositiveInfinity(_startCosts[note]))
            {
                _begun.Add(note);
            }

            (_startCosts[note], _startNodes[note]) = (cost, node);
        }
    }

    private double LengthCost(in Open one, int frames)
    {
        var off = Math.Log(frames / one.Expected) / _lengthSpread;

        // A line's last note may be held, or let go for the breath.
        off = _notes[one.Note].IsLast ? off / 2 : off;
        return Math.Min(off * off / 2, 12);
    }

    private static int LongestFrames(double expected) => (int)Math.Clamp(
        (2.2 * expected) + (0.4 * PitchTrack.FramesASecond), 0.5 * PitchTrack.FramesASecond, 12.0 * PitchTrack.FramesASecond);

    /// <summary>Every half semitone about the drill's pitches.</summary>
    private static double[] OtherPitches(double[] pitches)
    {
        var (low, high) = (pitches[0] - 700, pitches[^1] + 700);
        return [.. Enumerable.Range(0, (int)((high - low) / 50) + 1).Select(i => low + (50 * i))];
    }

    /// <summary>How clearly the level dips at each place, 0 to 1.</summary>
    private static float[] Dips(PitchTrack track, int places)
    {
        var dips = new float[places + 1];
        for (var p = 0; p < dips.Length; p++)
        {
            for (var i = (2 * p * Step) - 4; i <= (2 * p * Step) + 4; i++)
            {
                var (before, after) = (float.MinValue, float.MinValue);
                for (var k = 3; k <= 24; k++)
                {
                    before = Math.Max(before, track.Low(i - k));
                    after = Math.Max(after, track.Low(i + k));
                }

                dips[p] = Math.Max(dips[p], Math.Clamp((Math.Min(before, after) - track.Low(i) - 1.5f) / 5, 0, 1));
            }
        }

        return dips;
    }
}

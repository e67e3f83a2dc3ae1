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
    private readonly Node[] _ended;

    /// <param name="drill">The drill.</param>
    /// <param name="track">The take.</param>
    /// <param name="voicing">Where there is voice.</param>
    /// <param name="shift">What the singer sings above the drill, in cents.</param>
    /// <param name="pace">Sung seconds for a second of the drill, by the time in the take.</param>
    /// <param name="lengthSpread">How freely lengths may differ.</param>
    /// <param name="weights">The costs.</param>
    public Aligner(DrillNotes drill, PitchTrack track, Voicing voicing, double shift, Func<double, double> pace, double lengthSpread, AlignmentWeights weights)
    {
        (_notes, _lines, _track, _weights, _pace, _lengthSpread) = (drill.Notes, drill.Lines, track, weights, pace, lengthSpread);
        _noteCents = Array.ConvertAll(_notes, n => n.Cents + shift);
        var pitches = _noteCents.Distinct().Order().ToArray();
        _table = new MatchTable(track, voicing, pitches, weights);
        _pitchOf = Array.ConvertAll(_noteCents, c => Array.BinarySearch(pitches, c));
        _others = new MatchTable(track, voicing, OtherPitches(pitches), weights);
        _ended = new Node[_notes.Length + 1];
        _places = track.Count / Step;
        _dips = Dips(track, _places);
    }

    private readonly record struct Node(int Before, int Note, int From, int To, bool IsOther);

    private record struct Open(int Note, int From, double Cost, int Before, int Last);

    /// <summary>The alignment of least cost.</summary>
    /// <param name="limit">The cost above which an alignment is of no use; without notes and of endless cost where it is passed.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TakeAlignment Align(double limit, CancellationToken cancellation)
    {
        var n = _notes.Length;

        // By note, the one before the first included: the cheapest ways to have ended there, in a note and in a rest.
        var (ends, endNodes) = (new double[n + 1], new int[n + 1]);
        var (rests, restNodes) = (new double[n + 1], new int[n + 1]);
        Array.Fill(ends, double.PositiveInfinity);
        Array.Fill(rests, double.PositiveInfinity);
        (rests[0], restNodes[0]) = (0, -1);
        var open = new List<Open>();
        var starts = new List<Open>();
        var (startCosts, startFrom) = (new double[n], new int[n]);
        for (var place = 0; place <= _places; place++)
        {
            if (place > 0)
            {
                cancellation.ThrowIfCancellationRequested();
                var rest = _table.Rest((place - 1) * Step, place * Step);
                for (var i = 0; i <= n; i++)
                {
                    if (ends[i] < rests[i])
                    {
                        (rests[i], restNodes[i]) = (ends[i], endNodes[i]);
                    }

                    rests[i] += rest;
                }

                var least = Math.Min(End(place, open, ends, endNodes, rests), Math.Min(ends.Min(), rests.Min()));
                if (least > limit)
                {
                    return new TakeAlignment([], double.PositiveInfinity);
                }
            }

            if (place < _places)
            {
                Begin(place, ends, endNodes, rests, restNodes, startCosts, startFrom, starts);
                open.AddRange(starts);
            }
        }

        var (best, node) = (double.PositiveInfinity, -1);
        for (var i = 0; i <= n; i++)
        {
            var stop = i == n ? 0 : _weights.EarlyStop;
            if (Math.Min(ends[i], rests[i]) + stop < best)
            {
                best = Math.Min(ends[i], rests[i]) + stop;
                node = ends[i] < rests[i] ? endNodes[i] : restNodes[i];
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

    /// <summary>Ends at a place the notes that may end there; those that have fallen behind are given up.</summary>
    /// <returns>The least cost of a note that is still going on.</returns>
    private double End(int place, List<Open> open, double[] ends, int[] endNodes, double[] rests)
    {
        Array.Fill(ends, double.PositiveInfinity);
        var to = place * Step;
        var bound = double.PositiveInfinity;
        foreach (var rest in rests)
        {
            bound = Math.Min(bound, rest + _weights.Beam);
        }

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

            cost += LengthCost(one.Note, one.From, frames);
            bound = Math.Min(bound, cost + _weights.Beam);
            if (cost < ends[one.Note + 1])
            {
                ends[one.Note + 1] = cost;
                _ended[one.Note + 1] = new Node(one.Before, one.Note, one.From, to, isOther);
            }
        }

        open.RemoveRange(kept, open.Count - kept);
        for (var i = 1; i < ends.Length; i++)
        {
            if (!double.IsPositiveInfinity(ends[i]))
            {
                endNodes[i] = _nodes.Count;
                _nodes.Add(_ended[i]);
            }
        }

        return least;
    }

    /// <summary>Begins at a place the notes that may begin there.</summary>
    private void Begin(int place, double[] ends, int[] endNodes, double[] rests, int[] restNodes, double[] startCosts, int[] startFrom, List<Open> starts)
    {
        starts.Clear();
        Array.Fill(startCosts, double.PositiveInfinity);
        var (least, leastNode, leastLine) = (double.PositiveInfinity, -1, 0);
        var best = double.PositiveInfinity;
        for (var i = 0; i < ends.Length; i++)
        {
            best = Math.Min(best, Math.Min(ends[i], rests[i]));
        }

        for (var i = 0; i < ends.Length; i++)
        {
            var isNote = ends[i] < rests[i];
            var cost = isNote ? ends[i] : rests[i];
            if (cost > best + _weights.Beam)
            {
                continue;
            }

            var node = isNote ? endNodes[i] : restNodes[i];
            for (var j = i; j < Math.Min(i + 1 + MostSkipped, _notes.Length); j++)
            {
                var leftOut = (j - i) * _weights.LeftOut;
                var isSame = isNote && i > 0 && _pitchOf[j] == _pitchOf[i - 1];
                var to = cost + leftOut + (isSame ? _weights.NoDip * (1 - _dips[place]) : 0);
                if (to < startCosts[j])
                {
                    (startCosts[j], startFrom[j]) = (to, node);
                }

                if (isSame && rests[i] + leftOut < startCosts[j])
                {
                    (startCosts[j], startFrom[j]) = (rests[i] + leftOut, restNodes[i]);
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
            var to = least + _weights.Jump + (0.5 * Math.Log(1 + Math.Abs(l - leastLine)));
            if (to < startCosts[_lines[l].First])
            {
                (startCosts[_lines[l].First], startFrom[_lines[l].First]) = (to, leastNode);
            }
        }

        for (var j = 0; j < startCosts.Length; j++)
        {
            if (startCosts[j] <= best + _weights.Beam)
            {
                var longest = LongestFrames(j, place * Step);
                starts.Add(new Open(j, place * Step, startCosts[j], startFrom[j], place + (longest / Step)));
            }
        }

        if (starts.Count > MostStarts)
        {
            starts.Sort((a, b) => a.Cost != b.Cost ? a.Cost.CompareTo(b.Cost) : a.Note.CompareTo(b.Note));
            starts.RemoveRange(MostStarts, starts.Count - MostStarts);
        }
    }

    private double LengthCost(int note, int from, int frames)
    {
        var expected = _notes[note].Seconds * _pace(from / (double)PitchTrack.FramesASecond) * PitchTrack.FramesASecond;
        var off = Math.Log(frames / expected) / _lengthSpread;

        // A line's last note may be held, or let go for the breath.
        off = _notes[note].IsLast ? off / 2 : off;
        return Math.Min(off * off / 2, 12);
    }

    private int LongestFrames(int note, int from) => (int)(PitchTrack.FramesASecond
        * Math.Clamp((2.2 * _notes[note].Seconds * _pace(from / (double)PitchTrack.FramesASecond)) + 0.4, 0.5, 12));

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

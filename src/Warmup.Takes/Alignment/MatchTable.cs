namespace Warmup.Takes;

/// <summary>What it costs to hear each of some pitches in each stretch of a take: running sums, so that a stretch is two look-ups.</summary>
internal sealed class MatchTable
{
    private const float LeastWeight = 0.01f;

    // Which of a frame's candidates is a note's is told rather by their strength than by how near they are: all of a note's frames may be off alike.
    private const double Nearness = 0.2;

    private readonly double[] _pitches;
    private readonly float[] _sums;
    private readonly double[] _rest;
    private readonly double[] _voice;
    private readonly int _count;
    private readonly double _deviation;

    // Where a note's mean is asked for: the weight of the frames that have its pitch, and what they are off in all, in parts of the cents that cost one half.
    private readonly (float Weight, float Off)[] _offs = [];

    /// <param name="track">The take's pitch track.</param>
    /// <param name="voicing">Where there is voice.</param>
    /// <param name="pitches">The pitches in cents above MIDI note 0, rising.</param>
    /// <param name="frames">The most frames, from the beginning.</param>
    /// <param name="weights">The costs.</param>
    /// <param name="tonic">The tonic in cents above MIDI note 0, on which a drone may sound.</param>
    /// <param name="deviation">The cents by which a note's mean may be off at the cost of one half; none where the pitches are of no notes.</param>
    public MatchTable(PitchTrack track, Voicing voicing, double[] pitches, int frames, AlignmentWeights weights, double tonic, double? deviation)
    {
        frames = Math.Min(frames, track.Count);
        (_pitches, _count) = (pitches, pitches.Length);
        _sums = new float[(frames + 1) * _count];
        (_rest, _voice) = (new double[frames + 1], new double[frames + 1]);
        var costs = new double[_count];
        var offs = new double[_count];
        var choices = new double[_count];
        var sums = new double[_count];
        var (weightSums, offSums) = (new double[_count], new double[_count]);
        if (deviation is { } cents)
        {
            _deviation = weights.Cents / cents * (weights.Cents / cents);
            _offs = new (float, float)[_sums.Length];
        }

        var drone = DroneAlone.Of(track, voicing, tonic, weights.Drone);
        for (var f = 0; f < frames; f++)
        {
            Costs(track.At(f), track.EvenAt(f), pitches, weights, costs, offs, choices);
            var voice = voicing[f];
            _voice[f + 1] = _voice[f] + voice;
            _rest[f + 1] = _rest[f] + (weights.Frame * weights.Unassigned * voice * (1 - drone[f]));
            for (var p = 0; p < _count; p++)
            {
                sums[p] += weights.Frame * ((voice * costs[p]) + ((1 - voice) * weights.Silence));
                _sums[((f + 1) * _count) + p] = (float)sums[p];
                if (deviation is not null)
                {
                    var weight = double.IsNaN(offs[p]) ? 0 : weights.Frame * voice;
                    weightSums[p] += weight;
                    offSums[p] += weight > 0 ? weight * offs[p] : 0;
                    _offs[((f + 1) * _count) + p] = ((float)weightSums[p], (float)offSums[p]);
                }
            }
        }
    }

    /// <summary>How many pitches there are.</summary>
    public int Pitches => _count;

    /// <summary>The cost of a pitch from one frame to before another.</summary>
    public double Of(int pitch, int from, int to) => _sums[(to * _count) + pitch] - _sums[(from * _count) + pitch];

    /// <summary>
    /// The cost of a note from one frame to before another: what its frames lack of each other's pitch, and once, not frame by frame, what their mean
    /// lacks of the note's.
    /// </summary>
    public double OfNote(int pitch, int from, int to)
    {
        var (low, high) = ((from * _count) + pitch, (to * _count) + pitch);
        var cost = _sums[high] - _sums[low];
        var weight = _offs[high].Weight - _offs[low].Weight;
        if (weight < LeastWeight)
        {
            return cost;
        }

        var mean = (_offs[high].Off - _offs[low].Off) / weight;
        return cost + (mean * mean / 2 * Math.Min(0, _deviation - weight));
    }

    /// <summary>The cost of no note from one frame to before another.</summary>
    public double Rest(int from, int to) => _rest[to] - _rest[from];

    /// <summary>How far less than a quarter of a stretch is voice, 0 to 1.</summary>
    public double Unheard(int from, int to) => Math.Max(0, 1 - (4 * (_voice[to] - _voice[from]) / (to - from)));

    /// <summary>The pitch that costs least in a stretch.</summary>
    /// <param name="from">The first frame.</param>
    /// <param name="to">The frame after the last.</param>
    /// <param name="besides">The pitch that it must not be.</param>
    /// <param name="away">How far it must be from that one.</param>
    public Heard Best(int from, int to, double besides = double.NegativeInfinity, double away = 0)
    {
        var (best, least) = (-1, float.MaxValue);
        var low = _sums.AsSpan(from * _count, _count);
        var high = _sums.AsSpan(to * _count, low.Length);
        for (var p = 0; p < low.Length; p++)
        {
            var cost = high[p] - low[p];
            if (cost < least && Math.Abs(_pitches[p] - besides) >= away)
            {
                (best, least) = (p, cost);
            }
        }

        return About(best, low, high);
    }

    /// <summary>
    /// The pitch about one of the table's at which a stretch costs least. The table's pitches lie apart; what is sung between two of them would cost more the longer it
    /// lasts. Near a pitch the cost is a parabola, which it gives with its two neighbours.
    /// </summary>
    private Heard About(int pitch, ReadOnlySpan<float> low, ReadOnlySpan<float> high)
    {
        double least = high[pitch] - low[pitch];
        if (pitch == 0 || pitch == _count - 1)
        {
            return new Heard(true, _pitches[pitch], least);
        }

        double below = high[pitch - 1] - low[pitch - 1];
        double above = high[pitch + 1] - low[pitch + 1];
        var bend = below + above - (2 * least);
        var off = Math.Min(below, above) < least || bend < LeastWeight ? 0 : (below - above) / (2 * bend);
        return new Heard(true, _pitches[pitch] + (off * (_pitches[pitch + 1] - _pitches[pitch])), least - (off * off * bend / 2));
    }

    /// <summary>A pitch and what it costs in a stretch.</summary>
    public readonly record struct Heard(bool IsThere, double Cents, double Cost);

    /// <summary>What a frame's candidates cost for each pitch, and how far the one that is taken for it is off; not a number where there is none.</summary>
    private static void Costs(ReadOnlySpan<PitchCandidate> candidates, ReadOnlySpan<float> even, double[] pitches, AlignmentWeights weights, double[] costs, double[] offs, double[] choices)
    {
        Array.Fill(costs, weights.Unexplained);
        Array.Fill(offs, double.NaN);
        Array.Fill(choices, double.PositiveInfinity);
        var strongest = candidates[0].Strength;
        var reach = weights.Cents * Math.Sqrt(2 * weights.Unexplained);
        for (var k = 0; k < candidates.Length; k++)
        {
            var candidate = candidates[k];
            if (candidate.Strength <= 0)
            {
                break;
            }

            var cents = even[k];
            var weak = weights.Weakness * (1 - (candidate.Strength / strongest));
            var p = Array.BinarySearch(pitches, cents - reach);
            for (p = p < 0 ? ~p : p; p < pitches.Length && pitches[p] <= cents + reach; p++)
            {
                var off = (cents - pitches[p]) / weights.Cents;
                var choice = (Nearness * off * off / 2) + weak;
                if (choice < choices[p])
                {
                    (choices[p], costs[p], offs[p]) = (choice, Math.Min(weights.Unexplained, (off * off / 2) + weak), off);
                }
            }
        }
    }
}

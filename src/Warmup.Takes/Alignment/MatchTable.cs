namespace Warmup.Takes;

/// <summary>What it costs to hear each of some pitches in each stretch of a take: running sums, so that a stretch is two look-ups.</summary>
internal sealed class MatchTable
{
    private readonly double[] _pitches;
    private readonly float[] _sums;
    private readonly double[] _rest;
    private readonly int _count;

    /// <param name="track">The take's pitch track.</param>
    /// <param name="voicing">Where there is voice.</param>
    /// <param name="pitches">The pitches in cents above MIDI note 0, rising.</param>
    /// <param name="weights">The costs.</param>
    public MatchTable(PitchTrack track, Voicing voicing, double[] pitches, AlignmentWeights weights)
    {
        (_pitches, _count) = (pitches, pitches.Length);
        _sums = new float[(track.Count + 1) * _count];
        _rest = new double[track.Count + 1];
        var costs = new double[_count];
        var sums = new double[_count];
        for (var f = 0; f < track.Count; f++)
        {
            Costs(track.At(f), pitches, weights, costs);
            var voice = voicing[f];
            _rest[f + 1] = _rest[f] + (weights.Frame * weights.Unassigned * voice);
            for (var p = 0; p < _count; p++)
            {
                sums[p] += weights.Frame * ((voice * costs[p]) + ((1 - voice) * weights.Silence));
                _sums[((f + 1) * _count) + p] = (float)sums[p];
            }
        }
    }

    /// <summary>The cost of a pitch from one frame to before another.</summary>
    public double Of(int pitch, int from, int to) => _sums[(to * _count) + pitch] - _sums[(from * _count) + pitch];

    /// <summary>The cost of no note from one frame to before another.</summary>
    public double Rest(int from, int to) => _rest[to] - _rest[from];

    /// <summary>The pitch that costs least in a stretch, at least some cents away from another.</summary>
    public (int Pitch, double Cost) Best(int from, int to, double without, double away)
    {
        var (best, least) = (-1, double.MaxValue);
        var (low, high) = (from * _count, to * _count);
        for (var p = 0; p < _count; p++)
        {
            var cost = _sums[high + p] - _sums[low + p];
            if (cost < least && Math.Abs(_pitches[p] - without) >= away)
            {
                (best, least) = (p, cost);
            }
        }

        return (best, least);
    }

    /// <summary>What a frame's candidates cost for each pitch.</summary>
    private static void Costs(ReadOnlySpan<PitchCandidate> candidates, double[] pitches, AlignmentWeights weights, double[] costs)
    {
        Array.Fill(costs, weights.Unexplained);
        var strongest = candidates[0].Strength;
        var reach = weights.Cents * Math.Sqrt(2 * weights.Unexplained);
        foreach (var candidate in candidates)
        {
            if (candidate.Strength <= 0)
            {
                break;
            }

            var weak = weights.Weakness * (1 - (candidate.Strength / strongest));
            var p = Array.BinarySearch(pitches, candidate.Cents - reach);
            for (p = p < 0 ? ~p : p; p < pitches.Length && pitches[p] <= candidate.Cents + reach; p++)
            {
                var off = (candidate.Cents - pitches[p]) / weights.Cents;
                costs[p] = Math.Min(costs[p], (off * off / 2) + weak);
            }
        }
    }
}

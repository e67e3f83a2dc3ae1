namespace Warmup.Voices;

/// <summary>A drill of a class report. What singers have in common is computed once, so that a class may have ten thousand of them.</summary>
internal sealed class ClassColumn
{
    private readonly Drill _drill;
    private readonly ScoreChecks _checks;
    private readonly CarriedDrill _carried;
    private readonly PitchSpan _reach;
    private readonly CancellationToken _cancellation;
    private readonly Dictionary<int, Score> _octaves = [];
    private readonly Dictionary<(int Low, int High, int Octaves), (Rational Top, Rational Bottom)> _ends = [];
    private readonly Dictionary<Rational, Rational> _longestSpans = [];
    private readonly Dictionary<Experience, bool> _tooFast = [];
    private readonly Dictionary<BreathNeed, (BreathPlan? Plan, Finding? Refusal)> _plans = [];

    public ClassColumn(Drill drill, ScoreChecks checks, CancellationToken cancellation)
    {
        _drill = drill;
        _checks = checks;
        _cancellation = cancellation;
        _carried = new CarriedDrill(drill, cancellation);
        Written = _carried.ToScore();
        _reach = PitchSpan.Of([Written]);
        _octaves[0] = Written;
    }

    /// <summary>The drill as written.</summary>
    public Score Written { get; }

    public ClassCell Judge(Singer singer)
    {
        _cancellation.ThrowIfCancellationRequested();
        var place = Placement.Best(_reach, singer, _drill.Tonic.Midi % 12)!.Value;
        var octaves = (place.Tonic - _drill.Tonic.Midi) / 12;
        var (top, bottom) = Ends(singer, octaves);
        var faults = new List<Finding>();
        if (place.IsOut && _checks.Has(ScoreChecks.Range))
        {
            faults.Add(RangeCheck.Check(InOctave(octaves), singer).First());
        }

        if (_checks.Has(ScoreChecks.Agility) && IsTooFast(singer.Experience))
        {
            faults.Add(AgilityCheck.Check(Written, singer).First());
        }

        BreathPlan? plan = null;
        if (_checks.Has(ScoreChecks.Breath) && LongestSpan(singer.ShortestBreathSeconds) > singer.BreathSeconds)
        {
            (plan, var refusal) = Plan(BreathNeed.Of(singer));
            if (refusal is not null)
            {
                faults.Add(refusal);
            }
        }

        faults.AddRange(_checks.FindBeyondStandard(InOctave(octaves), singer).Where(f => f.Severity == Severity.Error));
        return faults.Count > 0
            ? new ClassCell(ClassVerdict.DoesNotFit, octaves, string.Join("; ", faults.Select(Placed)), string.Join("; ", faults.Select(f => f.Fix).Where(f => f.Length > 0).Distinct()), top, bottom)
            : new ClassCell(plan is null ? ClassVerdict.Fits : ClassVerdict.FitsWithBreaths, octaves, plan?.Describe() ?? string.Empty, string.Empty, top, bottom);
    }

    /// <summary>The shares of the sung time in the top and the bottom fifth of a singer's range.</summary>
    private (Rational Top, Rational Bottom) Ends(Singer singer, int octaves)
    {
        if (!_ends.TryGetValue((singer.Low.Midi, singer.High.Midi, octaves), out var ends))
        {
            var use = RangeUse.Of(InOctave(octaves), singer);
            ends = _ends[(singer.Low.Midi, singer.High.Midi, octaves)] = (use.TopSeconds / use.Seconds, use.BottomSeconds / use.Seconds);
        }

        return ends;
    }

    private static string Placed(Finding finding) => finding.Place is { } place ? $"{place}: {finding.Message}" : finding.Message;

    private Score InOctave(int octaves)
    {
        if (!_octaves.TryGetValue(octaves, out var score))
        {
            score = _octaves[octaves] = _carried.On(_drill.Tonic.Transposed(12 * octaves));
        }

        return score;
    }

    private bool IsTooFast(Experience experience)
    {
        if (!_tooFast.TryGetValue(experience, out var tooFast))
        {
            tooFast = _tooFast[experience] = AgilityCheck.All(Written, AgilityLimits.Of(experience)).Any();
        }

        return tooFast;
    }

    private Rational LongestSpan(Rational shortestBreath)
    {
        if (!_longestSpans.TryGetValue(shortestBreath, out var longest))
        {
            longest = _longestSpans[shortestBreath] = BreathSpan.Of(Written, shortestBreath).Select(s => s.Seconds).Max();
        }

        return longest;
    }

    private (BreathPlan? Plan, Finding? Refusal) Plan(BreathNeed need)
    {
        if (!_plans.TryGetValue(need, out var result))
        {
            BreathPlan.TryMake(Written, need, out var plan, out var refusal, _cancellation);
            result = _plans[need] = (plan, refusal);
        }

        return result;
    }
}

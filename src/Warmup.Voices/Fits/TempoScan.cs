using System.Globalization;

namespace Warmup.Voices;

/// <summary>One drill at one speed, tried at every whole tempo against singers who sing together.</summary>
internal sealed class TempoScan
{
    private readonly ValueList<Singer> _shortestWinded;
    private readonly ValueList<Singer> _hurried;
    private readonly ValueList<Singer> _breathing;
    private readonly BreathNeed _together;
    private readonly bool _planned;
    private readonly CancellationToken _cancellation;
    private readonly TempoTimes _times;
    private readonly bool _hasOwnChecks;
    private readonly Closer[] _closers = new Closer[Tempo.Fastest + 1];

    /// <summary>Tries all tempi.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="lines">Its lines, or a part of them.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <param name="checks">The checks; range does not count.</param>
    /// <param name="planned">Whether breaths may be added by a plan that all follow; otherwise the drill's own rests must do.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TempoScan(Drill drill, Expansion lines, ValueList<Singer> singers, ScoreChecks checks, bool planned, CancellationToken cancellation)
    {
        (Drill, Lines, Singers, Checks, _planned, _cancellation) = (drill, lines, singers, checks, planned, cancellation);

        // Of each level only the shortest breath matters: the shortest silence and the throat's limits go by level.
        _shortestWinded = singers.GroupBy(s => s.Experience).Select(g => g.MinBy(s => s.BreathSeconds)!).ToValueList();
        _together = BreathNeed.Of(singers);
        _times = new TempoTimes(drill, lines, cancellation);
        _hasOwnChecks = checks.HasOwn;
        _hurried = checks.Has(ScoreChecks.Agility) ? _shortestWinded : [];
        _breathing = checks.Has(ScoreChecks.Breath) && !planned ? _shortestWinded : [];
        for (var tempo = Tempo.Slowest; tempo <= Tempo.Fastest; tempo++)
        {
            cancellation.ThrowIfCancellationRequested();
            _closers[tempo] = Judge(tempo);
        }

        Intervals = Find().ToValueList();
    }

    /// <summary>What closes a tempo.</summary>
    private enum Closer
    {
        Nothing,
        Breath,
        Throat,
        Other,
    }

    public Drill Drill { get; }

    public Expansion Lines { get; }

    public ValueList<Singer> Singers { get; }

    public ScoreChecks Checks { get; }

    public ValueList<TempoInterval> Intervals { get; }

    public Score Score(int tempo) => (Drill with { Tempo = tempo }).ToScore(Lines, _cancellation);

    /// <summary>For an empty window: the throat above, the breath below the fastest tempo that the throat allows.</summary>
    public ValueList<string> WhatCloses()
    {
        var fastest = Tempo.Fastest;
        while (fastest >= Tempo.Slowest && _closers[fastest] == Closer.Throat)
        {
            fastest--;
        }

        var above = fastest < Tempo.Fastest ? Explain(fastest + 1) : null;
        var below = fastest >= Tempo.Slowest ? Explain(fastest) : null;
        string?[] closers = [below, above];
        return closers.OfType<string>().ToValueList();
    }

    private Closer Judge(int tempo)
    {
        var times = _times.At(tempo, out var refusal) ?? throw new PatternException(refusal!);
        foreach (var singer in _hurried)
        {
            if (times.IsTooFast(singer.Experience, tempo))
            {
                return Closer.Throat;
            }
        }

        var clock = new StepClock(tempo, times.Section.Resolution);
        if (_planned && !BreathReach.IsPossible(times.Section, clock, _together))
        {
            return Closer.Breath;
        }

        foreach (var singer in _breathing)
        {
            if (times.Spans.TooLong(singer.ShortestBreathSeconds, singer.BreathSeconds, clock).Any())
            {
                return Closer.Breath;
            }
        }

        return _hasOwnChecks && OtherFault(Score(tempo)) is not null ? Closer.Other : Closer.Nothing;
    }

    /// <summary>The first error of a check that is not a standard one.</summary>
    private Finding? OtherFault(Score score)
    {
        foreach (var singer in _hasOwnChecks ? Singers : [])
        {
            foreach (var finding in Checks.FindBeyondStandard(score, singer))
            {
                if (finding.Severity == Severity.Error)
                {
                    return finding;
                }
            }
        }

        return null;
    }

    private IEnumerable<TempoInterval> Find()
    {
        for (var tempo = Tempo.Slowest; tempo <= Tempo.Fastest; tempo++)
        {
            if (_closers[tempo] != Closer.Nothing)
            {
                continue;
            }

            var slowest = tempo;
            while (tempo < Tempo.Fastest && _closers[tempo + 1] == Closer.Nothing)
            {
                tempo++;
            }

            yield return new TempoInterval(slowest, tempo, Explain(slowest - 1), Explain(tempo + 1));
        }
    }

    /// <summary>What closes a tempo, in words.</summary>
    private string Explain(int tempo)
    {
        if (tempo < Tempo.Slowest || tempo > Tempo.Fastest)
        {
            return string.Create(CultureInfo.InvariantCulture, $"tempi go from {Tempo.Slowest} to {Tempo.Fastest}");
        }

        var score = Score(tempo);
        var at = string.Create(CultureInfo.InvariantCulture, $"at {tempo}");
        switch (_closers[tempo])
        {
            case Closer.Throat:
                return $"throat {at}: {Throat(score)}";
            case Closer.Breath when _planned:
                BreathPlan.TryMake(score, _together, out _, out var refusal, _cancellation);
                return $"breath {at}: {refusal?.Describe()}";
            case Closer.Breath:
                return $"breath {at}: {Breath(score)}";
            default:
                return $"check {at}: {OtherFault(score)?.Describe()}";
        }
    }

    private string Throat(Score score)
    {
        foreach (var singer in _shortestWinded)
        {
            foreach (var hurry in AgilityCheck.WorstOfEachLine(score, AgilityLimits.Of(singer.Experience)))
            {
                return $"{score.PlaceOf(hurry.Section, hurry.Note)}: {AgilityCheck.Describe(hurry, singer.Experience)}";
            }
        }

        return string.Empty;
    }

    private string Breath(Score score)
    {
        foreach (var singer in _shortestWinded)
        {
            foreach (var span in BreathSpan.Of(score, singer.ShortestBreathSeconds))
            {
                if (span.Seconds > singer.BreathSeconds)
                {
                    return BreathCheck.Describe(span, singer, singer.Alias);
                }
            }
        }

        return string.Empty;
    }
}

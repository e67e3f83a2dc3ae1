using System.Globalization;

namespace Warmup.Voices;

/// <summary>One drill at one speed, tried at every whole tempo against singers who sing together.</summary>
internal sealed class TempoScan
{
    private readonly List<Singer> _shortestWinded;
    private readonly BreathNeed _together;
    private readonly bool _planned;
    private readonly CancellationToken _cancellation;
    private readonly Closer[] _closers = new Closer[Tempo.Fastest + 1];

    /// <summary>Tries all tempi.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="lines">Its lines, or a part of them.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <param name="planned">Whether breaths may be added by a plan that all follow; otherwise the drill's own rests must do.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TempoScan(Drill drill, Expansion lines, ValueList<Singer> singers, bool planned, CancellationToken cancellation)
    {
        (Drill, Lines, Singers, _planned, _cancellation) = (drill, lines, singers, planned, cancellation);

        // Of each level only the shortest breath matters: the shortest silence and the throat's limits go by level.
        _shortestWinded = ((IEnumerable<Singer>)singers).GroupBy(s => s.Experience).Select(g => g.MinBy(s => s.BreathSeconds)!).ToList();
        _together = BreathNeed.Of(singers);
        for (var tempo = Tempo.Slowest; tempo <= Tempo.Fastest; tempo++)
        {
            cancellation.ThrowIfCancellationRequested();
            _closers[tempo] = Judge(Score(tempo));
        }

        Intervals = Find().ToValueList();
    }

    /// <summary>What closes a tempo.</summary>
    private enum Closer
    {
        Nothing,
        Breath,
        Throat,
    }

    public Drill Drill { get; }

    public Expansion Lines { get; }

    public ValueList<Singer> Singers { get; }

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
        return ((IEnumerable<string?>)[below, above]).OfType<string>().ToValueList();
    }

    private Closer Judge(Score score)
    {
        foreach (var singer in _shortestWinded)
        {
            if (AgilityCheck.All(score, AgilityLimits.Of(singer.Experience)).Any())
            {
                return Closer.Throat;
            }
        }

        if (_planned)
        {
            return BreathPlan.TryMake(score, _together, out _, out _, _cancellation) ? Closer.Nothing : Closer.Breath;
        }

        foreach (var singer in _shortestWinded)
        {
            if (BreathSpan.Of(score, singer.ShortestBreathSeconds).Any(s => s.Seconds > singer.BreathSeconds))
            {
                return Closer.Breath;
            }
        }

        return Closer.Nothing;
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
        if (_closers[tempo] == Closer.Throat)
        {
            foreach (var singer in _shortestWinded)
            {
                if (AgilityCheck.WorstOfEachLine(score, AgilityLimits.Of(singer.Experience)).Take(1).ToArray() is [var hurry])
                {
                    return string.Create(CultureInfo.InvariantCulture, $"throat {at}: line {hurry.Line}: {AgilityCheck.Describe(hurry, singer.Experience)}");
                }
            }
        }

        if (_planned)
        {
            BreathPlan.TryMake(score, _together, out _, out var refusal, _cancellation);
            return $"breath {at}: {refusal}";
        }

        foreach (var singer in _shortestWinded)
        {
            foreach (var finding in BreathCheck.Check(score, singer))
            {
                return $"breath {at}: {finding.Message.Replace("this singer", singer.Alias, StringComparison.Ordinal)}";
            }
        }

        return string.Empty;
    }
}

namespace Warmup;

/// <summary>
/// Lines in time: all of a section that neither the tonic nor the tuning changes, nor a tempo at which the breaths last as many aksharas.
/// Scores that differ in these only share it. Immutable.
/// </summary>
internal sealed class TimedLines
{
    private readonly Drill _drill;
    private readonly TimeGrid _grid;
    private readonly RoundPlan _rounds;
    private readonly int? _toFirstBeat;
    private readonly Timeline _timeline;
    private readonly ValueList<string> _sungSyllables;
    private readonly ValueList<Breath> _breaths;
    private readonly ValueList<Measure> _measures;

    private TimedLines(Drill drill, Expansion lines, TimeGrid grid, RoundPlan rounds, Timeline timeline)
    {
        (_drill, Lines, _grid, _rounds, _timeline) = (drill, lines, grid, rounds, timeline);
        _toFirstBeat = rounds.ToFirstBeat(drill, grid, timeline.End);
        _sungSyllables = timeline.SungSyllables;
        _breaths = timeline.Breaths;
        _measures = MeasurePlan.For(drill.Meter, timeline.Lines.AsSpan(), timeline.End, grid.Resolution);
    }

    /// <summary>The lines.</summary>
    public Expansion Lines { get; }

    /// <summary>The different tones in the order in which they first sound.</summary>
    public Palette Palette => _timeline.Palette;

    /// <summary>Puts lines in time as a drill wants them.</summary>
    public static TimedLines Of(Drill drill, Expansion lines, CancellationToken cancellation)
    {
        if (lines.Lines.IsEmpty)
        {
            throw new PatternException(new Finding(
                FindingCode.PatternEmpty, Severity.Error, $"the pattern {OneLine.Cut(drill.Pattern.ToString(), 80)} has no lines", "use a pattern with lines, such as ladder"));
        }

        var survey = new LineSurvey(lines);
        var grid = TimeGrid.For(drill, lines, survey);
        var rounds = RoundPlan.For(drill, lines.Lines.Count, survey.NoteCount, grid, cancellation);
        grid = grid.WithHalves(drill, lines, survey);
        var timeline = new Timeline(grid, rounds, new Palette(drill.Syllables, survey), drill.Delivery.IsLineByLine);
        var pattern = lines.Lines.AsSpan();
        for (var round = 0; round < rounds.Count; round++)
        {
            var breath = grid.Breath(drill.Tempo.At(round));
            for (var s = 0; s < drill.Speeds.Count; s++)
            {
                timeline.Begin(s, drill.Speeds[s], round, breath);
                var note = 0;
                for (var l = 0; l < pattern.Length; l++)
                {
                    cancellation.ThrowIfCancellationRequested();
                    var sung = pattern[l].AsSpan();
                    timeline.Sing(l, sung, survey.TonesOf(note, sung.Length), survey.IsPlain);
                    note += sung.Length;
                }
            }
        }

        return new TimedLines(drill, lines, grid, rounds, timeline);
    }

    /// <summary>Whether another drill puts the lines in time in the same way.</summary>
    public bool Suit(Drill other) =>
        other.Meter == _drill.Meter && other.Speeds == _drill.Speeds && other.Repetitions == _drill.Repetitions && other.IsRepeatedToFirstBeat == _drill.IsRepeatedToFirstBeat
        && other.CountIn == _drill.CountIn && other.Eduppu == _drill.Eduppu && other.Delivery == _drill.Delivery && other.Syllables == _drill.Syllables
        && (other.Tempo == _drill.Tempo || HasSameBreaths(other.Tempo));

    /// <summary>The section of a drill that the lines suit.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="title">Its title.</param>
    /// <param name="heights">Its pitches.</param>
    public Section ToSection(Drill drill, string title, TunedPitches heights) => new(
        title: title,
        scale: drill.Scale,
        tonic: drill.Tonic,
        tonicName: heights.TonicName,
        tuning: drill.Tuning,
        meter: drill.Meter,
        speed: drill.Speeds[0],
        delivery: drill.Delivery,
        tempo: drill.Tempo.Start,
        tempoChanges: Tempi(drill.Tempo),
        countIn: _grid.Aksharas(_grid.CountIn),
        roundsToFirstBeat: _toFirstBeat,
        resolution: _grid.Resolution,
        lengthSteps: _measures[^1].OnsetSteps + _measures[^1].LengthSteps,
        pitches: heights.Pitches,
        sungSyllables: _sungSyllables,
        notes: _timeline.Notes,
        lines: _timeline.Lines,
        breaths: _breaths,
        measures: _measures);

    private bool HasSameBreaths(TempoRamp tempo)
    {
        var rounds = tempo.Rounds;
        for (var round = 0; round < rounds && rounds == _drill.Tempo.Rounds && _drill.Delivery.IsLineByLine; round++)
        {
            if (_drill.Delivery.BreathAksharas(tempo.At(round)) != _drill.Delivery.BreathAksharas(_drill.Tempo.At(round)))
            {
                return false;
            }
        }

        return rounds == _drill.Tempo.Rounds;
    }

    /// <summary>Each time through the drill begins with its first line.</summary>
    private ValueList<TempoChange> Tempi(TempoRamp tempo)
    {
        if (tempo.Step.Sign == 0)
        {
            return default;
        }

        var map = new TempoMap(tempo.Start);
        for (var round = 1; round < _rounds.Count; round++)
        {
            map.ChangeTo(tempo.At(round), _timeline.Lines[round * (_rounds.Lines / _rounds.Count)].Onset);
        }

        return map.Changes;
    }
}

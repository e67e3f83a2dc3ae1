namespace Warmup;

/// <summary>
/// A drill that is carried to other tonics, tempi and tunings: its lines are expanded and put in time once, and its scores share them. What
/// differs is a handful of pitches and the tempo.
/// </summary>
/// <remarks>
/// Every score equals the one that is made anew, also where little can be shared: line by line, a tempo at which the breaths last more or
/// fewer aksharas puts the lines in time anew. Safe to share between threads. It remembers the pitches of one tonic, the last.
/// </remarks>
public sealed class CarriedDrill
{
    private readonly TimedLines _timed;
    private readonly string _title;

    // The pitches that were made last: tempi are often asked for one after the other on one tonic. Any thread may replace them.
    private volatile TunedPitches? _heights;

    /// <summary>Expands the lines of a drill and puts them in time.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">The scale has no such lines, there are none or too many, or they cannot be put in time in this way.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public CarriedDrill(Drill drill, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(drill);
        (Drill, Lines) = (drill, drill.Expand(cancellationToken));
        _timed = TimedLines.Of(drill, Lines, cancellationToken);
        _title = drill.Title;
    }

    /// <summary>The drill.</summary>
    public Drill Drill { get; }

    /// <summary>Its lines.</summary>
    public Expansion Lines { get; }

    /// <summary>The drill's own score.</summary>
    /// <exception cref="PatternException">A note leaves MIDI's range.</exception>
    public Score ToScore() => ScoreBuilder.Build(Drill, _title, _timed, HeightsOf(Drill));

    /// <summary>The score of the drill on another tonic.</summary>
    /// <param name="tonic">The tonic.</param>
    /// <exception cref="PatternException">A note leaves MIDI's range.</exception>
    public Score On(Tonic tonic) => ToScore(Drill with { Tonic = Require.NotNull(tonic) });

    /// <summary>The score of the drill at another tempo, or with another rise.</summary>
    /// <param name="tempo">The tempo of each time through the drill, in aksharas a minute.</param>
    /// <exception cref="PatternException">A note leaves MIDI's range, or the lines cannot be put in time in this way.</exception>
    public Score At(TempoRamp tempo) => ToScore(Drill with { Tempo = Require.NotNull(tempo) });

    /// <summary>The score of the drill in another tuning.</summary>
    /// <param name="tuning">The tuning.</param>
    /// <exception cref="PatternException">A note leaves MIDI's range.</exception>
    public Score In(Tuning tuning) => ToScore(Drill with { Tuning = Require.NotNull(tuning) });

    /// <summary>
    /// The score of another drill with these lines, as <see cref="Drill.ToScore(Expansion, CancellationToken)"/> makes it: the lines in time are
    /// shared where the drill differs in its scale, tonic, tuning, tempo, spelling, drone or title, and the pitches where these are equal.
    /// </summary>
    /// <param name="sibling">The other drill.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="PatternException">A note leaves MIDI's range, or the lines cannot be put in time in this way.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(Drill sibling, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(sibling);
        var timed = _timed.Suit(sibling) ? _timed : TimedLines.Of(sibling, Lines, cancellationToken);
        return ScoreBuilder.Build(sibling, sibling.HasTitleOf(Drill) ? _title : sibling.Title, timed, HeightsOf(sibling));
    }

    private TunedPitches HeightsOf(Drill drill)
    {
        var heights = _heights;
        if (heights?.Suit(drill) != true)
        {
            _heights = heights = new TunedPitches(drill, _timed.Palette);
        }

        return heights;
    }

    /// <summary>The drill.</summary>
    public override string ToString() => Drill.ToString();
}

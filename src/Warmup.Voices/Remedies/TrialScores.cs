namespace Warmup.Voices;

/// <summary>
/// What trials look at, each made once for all changes and all singers that share it: heights depend on the tonic and the lines, times on all
/// but the tonic. Not for several threads at once.
/// </summary>
internal sealed class TrialScores
{
    private readonly Dictionary<OtherTonic, LineHeights?> _onTonics = [];
    private readonly Dictionary<(Remedy?, Remedy?), (Drill Drill, TempoTimes Times)> _atTempi = [];
    private readonly Dictionary<OtherScale, (LineHeights, TrialTimes)?> _inScales = new(ReferenceEqualityComparer.Instance);
    private readonly Lazy<ValueList<(Remedy, int)>> _scales;
    private readonly CarriedDrill _carried;

    /// <summary>Makes the drill's own score.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="PatternException">The drill cannot be made.</exception>
    public TrialScores(Drill drill, CancellationToken cancellation)
    {
        (Given, Cancellation) = (drill, cancellation);
        _carried = new CarriedDrill(drill, cancellation);
        Drill = drill with { Expansion = _carried.Lines };
        Written = _carried.ToScore();
        _scales = new(() => RemedyCandidates.Scales(drill));
    }

    /// <summary>The drill as it was given.</summary>
    public Drill Given { get; }

    /// <summary>The drill with its lines, so that changes do not expand them again.</summary>
    public Drill Drill { get; }

    /// <summary>The score as it is, without planned breaths.</summary>
    public Score Written { get; }

    public CancellationToken Cancellation { get; }

    /// <summary>How many lines the drill has.</summary>
    public int LineCount => Drill.Expansion!.Lines.Count;

    /// <summary>Another scale each, with the size of the change; looked for when they are asked for.</summary>
    public ValueList<(Remedy Remedy, int Size)> Scales => _scales.Value;

    /// <summary>The notes that were looked at so far: what all trials have cost.</summary>
    public long Cost { get; set; }

    /// <summary>The heights of all lines on a tonic, the drill's own where there is none; nothing where a note leaves MIDI's range.</summary>
    public LineHeights? HeightsOn(OtherTonic? tonic)
    {
        tonic ??= new OtherTonic(Drill.Tonic);
        if (!_onTonics.TryGetValue(tonic, out var heights))
        {
            heights = _onTonics[tonic] = HeightsOf(Drill with { Tonic = tonic.Tonic, HasDrone = false }, _carried);
        }

        return heights;
    }

    /// <summary>The heights of the lines of a changed drill; nothing where it cannot be made.</summary>
    public LineHeights? HeightsOf(Drill changed) => HeightsOf(changed, null);

    /// <summary>The times after the changes of time, without planned breaths; nothing where the drill cannot be put in time so.</summary>
    public TrialTimes? TimesAfter(RemedyParts parts)
    {
        if (!_atTempi.TryGetValue((parts.First, parts.Second), out var known))
        {
            var timed = parts.First?.Apply(Drill) ?? Drill;
            timed = parts.Second?.Apply(timed) ?? timed;
            known = _atTempi[(parts.First, parts.Second)] = (timed, new TempoTimes(timed, timed.Expansion!, Cancellation));
        }

        var made = known.Times.NotesMade;
        var times = TrialTimes.InSteps(parts.Tempo?.Apply(known.Drill) ?? known.Drill, known.Times, Cancellation);
        Cost += known.Times.NotesMade - made;
        return times;
    }

    /// <summary>The heights and the times in another scale; nothing where it has no such lines or they cannot be put in time.</summary>
    public (LineHeights Heights, TrialTimes Times)? In(OtherScale scale)
    {
        if (!_inScales.TryGetValue(scale, out var known))
        {
            Cost += Written.NoteCount;
            var changed = scale.Apply(Given);
            if (changed.Pattern.TryExpand(changed.Scale, out var lines, out _, Cancellation)
                && (changed with { Expansion = lines }) is var sung && sung.TryToScore(out var score, out _, Cancellation))
            {
                known = (new LineHeights(score.Sections[0], lines.Lines.Count), TrialTimes.Of(sung, score, Cancellation));
            }

            _inScales[scale] = known;
        }

        return known;
    }

    private LineHeights? HeightsOf(Drill changed, CarriedDrill? carried)
    {
        Cost += Written.NoteCount;
        try
        {
            var score = carried?.ToScore(changed, Cancellation) ?? changed.ToScore(Cancellation);
            return new LineHeights(score.Sections[0], changed.Expansion!.Lines.Count);
        }
        catch (PatternException)
        {
            return null;
        }
    }
}

namespace Warmup.Voices;

/// <summary>The times of a drill at any tempo, steady or rising. Not for several threads at once.</summary>
/// <param name="drill">The drill; its own tempo does not matter.</param>
/// <param name="lines">The lines that are sung.</param>
/// <param name="cancellation">Stops the work.</param>
internal sealed class TempoTimes(Drill drill, Expansion lines, CancellationToken cancellation)
{
    // Of all that is in time only the breath after a line depends on the tempo, which rounds it to the breaths' grid; of a rise each time
    // through the drill has its own.
    private readonly Dictionary<Rational, Known> _steady = [];
    private readonly Dictionary<ValueList<Rational>, Known> _rising = [];

    // Made with the first tempo; the others share its lines and pitches.
    private CarriedDrill? _carried;

    /// <summary>The notes of the scores that were made for it.</summary>
    public long NotesMade { get; private set; }

    /// <summary>The times at a steady tempo, or why there are none.</summary>
    public StepTimes? At(Rational tempo, out Finding? refusal)
    {
        var known = Steady(tempo);
        refusal = known.Refusal;
        return known.Times;
    }

    /// <summary>The times at a tempo that may rise; nothing where the drill cannot be put in time so.</summary>
    public StepTimes? At(TempoRamp tempo) => Of(tempo).Times;

    private Known Of(TempoRamp tempo)
    {
        if (tempo.Rounds == 1)
        {
            return Steady(tempo.Start);
        }

        var breaths = Enumerable.Range(0, tempo.Rounds).Select(r => Breath(tempo.At(r))).ToValueList();
        return _rising.TryGetValue(breaths, out var known) ? known : _rising[breaths] = Make(tempo);
    }

    private Known Steady(Rational tempo)
    {
        var breath = Breath(tempo);
        return _steady.TryGetValue(breath, out var known) ? known : _steady[breath] = Make(tempo);
    }

    private Known Make(TempoRamp tempo)
    {
        try
        {
            _carried ??= new CarriedDrill(drill with { Tempo = tempo, Expansion = lines, HasDrone = false }, cancellation);
            var section = _carried.ToScore(_carried.Drill with { Tempo = tempo }, cancellation).Sections[0];
            NotesMade += section.Notes.Count;
            return new Known(new StepTimes(section, lines.Lines.Count), null);
        }
        catch (PatternException refused)
        {
            NotesMade += lines.NoteCount;
            return new Known(null, refused.Finding);
        }
    }

    private Rational Breath(Rational tempo) => drill.Delivery.IsLineByLine ? drill.Delivery.BreathAksharas(tempo) : Rational.Zero;

    /// <summary>What tempi share, or why there is nothing.</summary>
    private sealed record Known(StepTimes? Times, Finding? Refusal);
}

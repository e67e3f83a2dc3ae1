namespace Warmup.Voices;

/// <summary>The times of a drill at any constant tempo. Not for several threads at once.</summary>
/// <param name="drill">The drill; its own tempo does not matter.</param>
/// <param name="lines">The lines that are sung.</param>
/// <param name="cancellation">Stops the work.</param>
internal sealed class TempoTimes(Drill drill, Expansion lines, CancellationToken cancellation)
{
    // Of all that is in time only the breath after a line depends on the tempo, which rounds it to the breaths' grid.
    private readonly Dictionary<Rational, (StepTimes? Times, Finding? Refusal)> _known = [];

    /// <summary>The notes of the scores that were made for it.</summary>
    public long NotesMade { get; private set; }

    /// <summary>The times at a tempo, or why there are none.</summary>
    public StepTimes? At(Rational tempo, out Finding? refusal)
    {
        var breath = drill.Delivery.IsLineByLine ? drill.Delivery.BreathAksharas(tempo) : Rational.Zero;
        if (!_known.TryGetValue(breath, out var known))
        {
            var made = (drill with { Tempo = tempo, Expansion = lines, HasDrone = false }).TryToScore(out var score, out var refused, cancellation);
            known = _known[breath] = made ? (new StepTimes(score!.Sections[0], lines.Lines.Count), null) : (null, refused);
            NotesMade += score?.NoteCount ?? lines.NoteCount;
        }

        refusal = known.Refusal;
        return known.Times;
    }
}

namespace Warmup;

/// <summary>Gathers the tempo changes of a section.</summary>
internal sealed class TempoMap(Rational start)
{
    private readonly List<TempoChange> _changes = [];
    private Rational _tempo = start;
    private Rational _onset;
    private Rational _seconds;

    public ValueList<TempoChange> Changes => _changes.ToValueList();

    /// <summary>From a point on, in aksharas, a tempo holds.</summary>
    public void ChangeTo(Rational tempo, Rational onset)
    {
        if (tempo == _tempo)
        {
            return;
        }

        _seconds = SecondsSum.Rounded(_seconds + ((onset - _onset) * 60 / _tempo));
        (_onset, _tempo) = (onset, tempo);
        _changes.Add(new TempoChange(onset, tempo, _seconds));
    }
}

namespace Warmup;

/// <summary>Gathers the tempo changes of a section.</summary>
internal sealed class TempoMap(Rational start)
{
    /// <summary>The parts of a second on which a change falls.</summary>
    private const int SecondsGrid = 1_000_000;

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

        var seconds = _seconds + ((onset - _onset) * 60 / _tempo);
        _seconds = new Rational(((seconds * SecondsGrid) + new Rational(1, 2)).Floor(), SecondsGrid);
        (_onset, _tempo) = (onset, tempo);
        _changes.Add(new TempoChange(onset, tempo, _seconds));
    }
}

namespace Warmup.Voices;

/// <summary>The spans that can begin with a note on a full breath, from the shortest; each ends with a breath or with silence.</summary>
internal struct BreathSpans
{
    private readonly BreathPlaces _places;
    private readonly BreathNeed _need;
    private readonly int _from;
    private int _section;
    private int _stretch;
    private long _latest;
    private bool _isDone;

    // When the longest span ends, in seconds; known once the tempo has changed on the way.
    private Rational? _end;

    public BreathSpans(BreathPlaces places, BreathNeed need, int from)
    {
        (_places, _need, _from, To) = (places, need, from, from - 1);
        ref readonly var first = ref places[from];
        (_section, _stretch) = (first.Section, first.Stretch);
        _latest = first.Start + places.SectionOf(first).Capacity(first.Stretch);
    }

    /// <summary>The last note of the span.</summary>
    public int To { get; private set; }

    /// <summary>Where the breath after it begins; <see cref="BreathPlace.None"/> where silence follows.</summary>
    public long Breath { get; private set; }

    /// <summary>Whether a held note is let go earlier than the shortest breath alone needs.</summary>
    public bool IsLetGo { get; private set; }

    /// <summary>Goes on to the next longer span.</summary>
    public bool MoveNext()
    {
        while (!_isDone && To + 1 < _places.Count)
        {
            ref readonly var place = ref _places[To + 1];
            if (place.Section != _section || place.Stretch != _stretch)
            {
                (_section, _stretch) = (place.Section, place.Stretch);
                _latest = place.Start + _places.SectionOf(place).StepsIn(Left(place), place.Stretch);
            }

            if (place.Start > _latest)
            {
                return false;
            }

            To++;
            _isDone = place.EndsSpan;
            if (CanEnd(place))
            {
                return true;
            }
        }

        return false;
    }

    private bool CanEnd(in BreathPlace place)
    {
        (Breath, IsLetGo) = (place.Breath, false);
        if (!place.EndsSpan && place.Breath == BreathPlace.None)
        {
            return false;
        }

        var left = place.IsAcross ? Left(place) : Rational.Zero;
        var end = place.EndsSpan ? place.End : place.Breath;
        if (place.IsAcross ? _places.SectionOf(place).Between(place.Start, end, place.Stretch) <= left : end <= _latest)
        {
            return true;
        }

        (Breath, IsLetGo) = (_places.SectionOf(place).LetGo(place, _latest, left), true);
        return Breath != BreathPlace.None;
    }

    /// <summary>The seconds from the onset of a note to the end of the longest span.</summary>
    private Rational Left(in BreathPlace place)
    {
        if (_end is not { } end)
        {
            ref readonly var first = ref _places[_from];
            _end = end = _places.SectionOf(first).SecondsAt(first.Start, first.Stretch) + _need.CapacitySeconds;
        }

        return end - _places.SectionOf(place).SecondsAt(place.Start, place.Stretch);
    }
}

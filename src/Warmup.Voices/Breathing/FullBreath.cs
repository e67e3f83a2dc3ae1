namespace Warmup.Voices;

/// <summary>How far a full breath lasts that begins with a note.</summary>
internal struct FullBreath
{
    private readonly BreathPlaces _places;
    private readonly BreathNeed _need;
    private readonly int _from;

    // The stretch that was looked at last, and the last of its steps that is sung.
    private int _section;
    private int _stretch;
    private long _latest;

    // When the breath is spent, in seconds; known once the tempo has changed on the way.
    private Rational? _end;

    public FullBreath(BreathPlaces places, BreathNeed need, int from)
    {
        (_places, _need, _from) = (places, need, from);
        ref readonly var first = ref places[from];
        (_section, _stretch) = (first.Section, first.Stretch);
        _latest = first.Start + places.SectionOf(first).Capacity(first.Stretch);
    }

    /// <summary>Whether the breath lasts until a later note begins.</summary>
    public bool Reaches(in BreathPlace place) => place.Start <= Latest(place);

    /// <summary>Whether the breath lasts until the span can end after a later note, held as long as that allows; only until it begins where no span can end there.</summary>
    public bool Lasts(in BreathPlace place)
    {
        if (!place.CanEndSpan)
        {
            return Reaches(place);
        }

        var end = place.EndsSpan ? place.End : place.Breath;
        return place.IsAcross ? _places.SectionOf(place).Between(place.Start, end, place.Stretch) <= Left(place) : end <= Latest(place);
    }

    /// <summary>Where a held note, which the breath reaches, is let go so that the breath lasts; <see cref="BreathPlace.None"/> where it cannot be.</summary>
    public long LetGo(in BreathPlace place) =>
        _places.SectionOf(place).LetGo(place, Latest(place), place.IsAcross ? Left(place) : Rational.Zero);

    /// <summary>The last step that is sung, in steps of a note's stretch.</summary>
    private long Latest(in BreathPlace place)
    {
        if (place.Section != _section || place.Stretch != _stretch)
        {
            (_section, _stretch) = (place.Section, place.Stretch);
            _latest = _places.LatestFrom(_places[_from], place);
        }

        return _latest;
    }

    /// <summary>The seconds that are left from the onset of a note.</summary>
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

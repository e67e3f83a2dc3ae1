namespace Warmup.Voices;

/// <summary>The spans that can begin with a note on a full breath, from the shortest; each ends with a breath or with silence.</summary>
internal struct BreathSpans
{
    private readonly BreathPlaces _places;
    private FullBreath _breath;
    private bool _isDone;

    public BreathSpans(BreathPlaces places, FullBreath breath, int from) => (_places, _breath, To) = (places, breath, from - 1);

    /// <summary>The last note of the span.</summary>
    public int To { get; private set; }

    /// <summary>Goes on to the next longer span.</summary>
    public bool MoveNext()
    {
        while (!_isDone && To + 1 < _places.Count)
        {
            ref readonly var place = ref _places[To + 1];
            if (!_breath.Reaches(place))
            {
                return false;
            }

            To++;
            _isDone = place.EndsSpan;
            if (place.CanEndSpan && (_breath.Lasts(place) || _breath.LetGo(place) != BreathPlace.None))
            {
                return true;
            }
        }

        return false;
    }
}

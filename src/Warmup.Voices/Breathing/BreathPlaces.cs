namespace Warmup.Voices;

/// <summary>
/// Every note of a score, the silence after it, and the shortest breath that could follow it. Made one after the other, when they are asked for.
/// </summary>
internal sealed class BreathPlaces
{
    private readonly BreathNeed _need;
    private readonly BreathSection[] _sections;
    private readonly BreathPlace[] _places;
    private int _made;

    // A full breath that begins in one stretch and is spent in another: the stretches that were asked for last.
    private Crossing _crossing;

    // The section of the next place, the number of its first one, and the tempo that was reached in it.
    private int _section;
    private int _first;
    private int _stretch;

    private BreathPlaces(BreathSection[] sections, BreathNeed need)
    {
        (_sections, _need) = (sections, need);
        _places = new BreathPlace[sections.Sum(s => s.Section.Notes.Count)];
    }

    /// <summary>How many notes there are.</summary>
    public int Count => _places.Length;

    /// <summary>A place by its number.</summary>
    public ref readonly BreathPlace this[int index]
    {
        get
        {
            while (_made <= index)
            {
                Make();
            }

            return ref _places[index];
        }
    }

    /// <summary>The places of a score.</summary>
    public static BreathPlaces Of(Score score, BreathNeed need)
    {
        var starts = score.SectionStarts();
        var sections = new BreathSection[score.Sections.Count];
        for (var s = 0; s < sections.Length; s++)
        {
            sections[s] = new BreathSection(score.Sections[s], StepClock.Of(score.Sections[s]), starts[s], need);
        }

        return new BreathPlaces(sections, need);
    }

    /// <summary>The places of a section that is sung by itself.</summary>
    /// <param name="section">The section; its own tempo does not matter.</param>
    /// <param name="clock">Its tempi.</param>
    /// <param name="need">What breaths must be enough for.</param>
    public static BreathPlaces Of(Section section, StepClock clock, BreathNeed need) => new([new BreathSection(section, clock, Rational.Zero, need)], need);

    /// <summary>The sections.</summary>
    public IReadOnlyList<BreathSection> Sections => _sections;

    /// <summary>The section of a place.</summary>
    public BreathSection SectionOf(in BreathPlace place) => _sections[place.Section];

    /// <summary>A full breath that begins with a note.</summary>
    public FullBreath From(int place) => new(this, _need, place);

    /// <summary>The spans that can begin with a note on a full breath.</summary>
    public BreathSpans SpansFrom(int place) => new(this, From(place), place);

    /// <summary>The last step that is sung on a full breath, in steps of a stretch in which the breath did not begin.</summary>
    /// <param name="first">The note with which the breath begins.</param>
    /// <param name="place">A note of the other stretch.</param>
    public long LatestFrom(in BreathPlace first, in BreathPlace place)
    {
        if (!_crossing.IsOf(first, place))
        {
            // Both stretches are straight lines, so that the last step is one of the first as well.
            var (from, to) = (SectionOf(first), SectionOf(place));
            var (start, next) = (from.Clock.StartOf(first.Stretch), to.Clock.StartOf(place.Stretch));
            var second = to.Clock.PerSecond(place.Stretch);
            var left = from.SecondsAt(start, first.Stretch) + _need.CapacitySeconds - to.SecondsAt(next, place.Stretch);
            _crossing = new Crossing(first.Section, first.Stretch, place.Section, place.Stretch, start, next + (left * second), second / from.Clock.PerSecond(first.Stretch));
        }

        return _crossing.Latest(first.Start);
    }

    private void Make()
    {
        var section = _sections[_section];
        ref var place = ref _places[_made];
        _stretch = section.Clock.StretchAt(section.Onset(_made - _first), _stretch);
        place = section.Place(_made - _first, _stretch) with { Section = _section };
        _made++;
        if (_made == _places.Length)
        {
            place = place with { EndsSpan = true, Breath = BreathPlace.None };
        }
        else if (place.Note + 1 == section.Section.Notes.Count)
        {
            _section++;
            _first = _made;
            var next = _sections[_section];
            _stretch = next.Clock.StretchAt(next.Onset(0));
            var silence = next.SecondsAt(next.Onset(0), _stretch) - section.SecondsAt(place.End, section.Clock.StretchAt(place.End, place.Stretch));
            place = silence >= _need.ShortestBreathSeconds ? place with { EndsSpan = true, Breath = BreathPlace.None } : place;
        }
    }
}

/// <summary>From the step at which a breath begins in one stretch to the step at which it is spent in another.</summary>
/// <param name="Section">The section in which it begins.</param>
/// <param name="Stretch">The stretch in which it begins.</param>
/// <param name="OtherSection">The section in which it is spent.</param>
/// <param name="OtherStretch">The stretch in which it is spent.</param>
/// <param name="Start">A step of the first stretch.</param>
/// <param name="Last">Where a breath is spent that begins there.</param>
/// <param name="Ratio">The steps of the other stretch that last as long as one of the first; 0 where nothing is known yet.</param>
internal readonly record struct Crossing(int Section, int Stretch, int OtherSection, int OtherStretch, long Start, Rational Last, Rational Ratio)
{
    public bool IsOf(in BreathPlace first, in BreathPlace place) =>
        Ratio.Sign > 0 && first.Section == Section && first.Stretch == Stretch && place.Section == OtherSection && place.Stretch == OtherStretch;

    /// <summary>The last whole step that is sung.</summary>
    public long Latest(long start)
    {
        // Last + (start - Start) * Ratio, without lowest terms.
        var denominator = (Int128)Last.Denominator * Ratio.Denominator;
        var numerator = ((Int128)Last.Numerator * Ratio.Denominator) + ((Int128)(start - Start) * Ratio.Numerator * Last.Denominator);
        var whole = numerator / denominator;
        return (long)(whole * denominator > numerator ? whole - 1 : whole);
    }
}

/// <summary>A note in steps, and the breath that could follow it.</summary>
/// <param name="Section">The index of the section.</param>
/// <param name="Note">The index of the note in the section.</param>
/// <param name="Stretch">The stretch of one tempo in which it begins.</param>
/// <param name="Start">Its onset.</param>
/// <param name="End">Its end as written.</param>
/// <param name="Breath">Where the shortest breath after it would begin; <see cref="None"/> where none can or need.</param>
/// <param name="EndsSpan">Whether the silence after it, or the end of the score, ends a span anyway.</param>
/// <param name="IsAcross">Whether the tempo changes before the next note, so that seconds decide.</param>
internal readonly record struct BreathPlace(int Section, int Note, int Stretch, long Start, long End, long Breath, bool EndsSpan, bool IsAcross)
{
    /// <summary>No breath.</summary>
    public const long None = -1;

    /// <summary>Whether a span can end after the note.</summary>
    public bool CanEndSpan => EndsSpan || Breath != None;
}

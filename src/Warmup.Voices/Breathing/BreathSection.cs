namespace Warmup.Voices;

/// <summary>A section in the steps of the finer grid on which planned breaths fall.</summary>
internal sealed class BreathSection
{
    // The finest grid of a section: divisions stay within what notation files hold.
    private const int MostResolution = 16_383;

    private readonly BreathNeed _need;
    private readonly Rational _start;
    private readonly Pace[] _paces;

    /// <summary>Makes the finer grid.</summary>
    /// <param name="section">The section; its own tempo does not matter.</param>
    /// <param name="clock">Its tempi.</param>
    /// <param name="start">When it begins, in seconds.</param>
    /// <param name="need">What breaths must be enough for.</param>
    public BreathSection(Section section, StepClock clock, Rational start, BreathNeed need)
    {
        (Section, _start, _need) = (section, start, need);

        // Breaths fall on 24ths of an akshara unless the section's own grid forbids them.
        var joined = section.Resolution * (int)new Rational(Delivery.FinestBreathGrid, section.Resolution).Numerator;
        (Resolution, Grid) = joined <= MostResolution ? (joined, joined / Delivery.FinestBreathGrid) : (section.Resolution, 1);
        Factor = Resolution / section.Resolution;
        Clock = Factor == 1 ? clock : clock.Finer(Factor);
        _paces = new Pace[clock.Count];
        for (var s = 0; s < _paces.Length; s++)
        {
            var second = Clock.PerSecond(s);
            var breath = need.ShortestBreathSeconds * second;
            _paces[s] = new Pace((need.CapacitySeconds * second).Floor(), breath.Ceiling(), Grid * (breath / Grid).Ceiling(), (BreathCosts.LeastSoundSeconds * second).Ceiling());
        }
    }

    /// <summary>The section.</summary>
    public Section Section { get; }

    /// <summary>Its tempi.</summary>
    public StepClock Clock { get; }

    /// <summary>The steps an akshara.</summary>
    public int Resolution { get; }

    /// <summary>How many of these steps are one of the section's own.</summary>
    public int Factor { get; }

    /// <summary>The steps from one point at which a breath can begin to the next.</summary>
    public long Grid { get; }

    /// <summary>The onset of a note.</summary>
    public long Onset(int note) => (long)Section.Notes[note].OnsetSteps * Factor;

    /// <summary>Where the next note begins, or the section ends.</summary>
    public long Until(int note) => note + 1 < Section.Notes.Count ? Onset(note + 1) : (long)Section.LengthSteps * Factor;

    /// <summary>When a step of a stretch comes, in seconds from the score's beginning.</summary>
    public Rational SecondsAt(long step, int stretch) => _start + Clock.SecondsAt(step, stretch);

    /// <summary>The whole steps of a stretch for which one breath is enough.</summary>
    public long Capacity(int stretch) => _paces[stretch].Capacity;

    /// <summary>The place of a note that begins in a stretch, as if the section were the last one, and its last note not its last.</summary>
    public BreathPlace Place(int n, int stretch)
    {
        var note = Section.Notes[n];
        var isLast = n + 1 == Section.Notes.Count;
        var (start, end, until) = (Onset(n), (long)note.EndSteps * Factor, Until(n));
        var isAcross = until >= Clock.EndOf(stretch);
        var place = new BreathPlace(0, n, stretch, start, end, BreathPlace.None, EndsSpan: false, isAcross);
        if (!isLast && (isAcross ? Between(end, until, stretch) >= _need.ShortestBreathSeconds : until - end >= _paces[stretch].Silence))
        {
            return place with { EndsSpan = true };
        }

        var isSungAsOne = !isLast && Section.Notes[n + 1] is var next && next.LineIndex == note.LineIndex && next.PitchIndex == note.PitchIndex;
        var breath = isAcross ? BreathAcross(start, until, stretch) : until - _paces[stretch].Breath;
        return !isSungAsOne && breath <= end && HasSound(start, breath, stretch, isAcross) ? place with { Breath = breath } : place;
    }

    /// <summary>Where a held note is let go so that it ends within its span; <see cref="BreathPlace.None"/> where it would be too short, or is not held.</summary>
    /// <param name="place">The note.</param>
    /// <param name="latest">The last step of the span, in steps of the stretch in which the note begins.</param>
    /// <param name="left">The seconds from the note's onset to the end of the span; they decide where the tempo changes.</param>
    public long LetGo(in BreathPlace place, long latest, Rational left)
    {
        if (!Section.Notes[place.Note].IsHeld)
        {
            return BreathPlace.None;
        }

        long onset;
        if (place.IsAcross)
        {
            // The point is found by halving.
            var (low, high) = (0L, ((place.End - place.Start) / Grid) + 1);
            while (high - low > 1)
            {
                var middle = low + ((high - low) / 2);
                (low, high) = Between(place.Start, place.Start + (middle * Grid), place.Stretch) > left ? (low, middle) : (middle, high);
            }

            onset = place.Start + (low * Grid);
        }
        else
        {
            onset = place.Start + ((Math.Min(place.End, latest) - place.Start) / Grid * Grid);
        }

        return onset < place.End && HasSound(place.Start, onset, place.Stretch, place.IsAcross) ? onset : BreathPlace.None;
    }

    /// <summary>The seconds from a step of a stretch to a later one.</summary>
    public Rational Between(long first, long last, int stretch) => Clock.Between(first, Clock.StretchAt(first, stretch), last, Clock.StretchAt(last, stretch));

    /// <summary>Where the latest breath begins that lasts long enough until a point; before a note's onset where it would have to.</summary>
    private long BreathAcross(long onset, long until, int stretch)
    {
        // Found by halving, since the tempo changes on the way.
        bool Lasts(long steps) => Between(until - (steps * Grid), until, stretch) >= _need.ShortestBreathSeconds;
        var (low, high) = (0L, (until - onset) / Grid);
        if (high == 0 || !Lasts(high))
        {
            return onset - 1;
        }

        while (high - low > 1)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = Lasts(middle) ? (low, middle) : (middle, high);
        }

        return until - (high * Grid);
    }

    /// <summary>Whether enough is left of a note that ends at a step.</summary>
    private bool HasSound(long start, long end, int stretch, bool isAcross) => isAcross
        ? end > start && Between(start, end, stretch) >= BreathCosts.LeastSoundSeconds
        : end - start >= _paces[stretch].LeastSound;

    /// <summary>
    /// A stretch of one tempo, in its steps: what a breath is enough for, the shortest silence, the shortest breath on its grid and the least
    /// that sounds.
    /// </summary>
    private readonly record struct Pace(long Capacity, long Silence, long Breath, long LeastSound);
}

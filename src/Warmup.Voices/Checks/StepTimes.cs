namespace Warmup.Voices;

/// <summary>
/// The times of a section in whole grid steps, which are the same at all tempi, steady or rising, at which its breaths last as many aksharas:
/// what the checks of breath and agility find at any of these tempi, without a score for each.
/// </summary>
internal sealed class StepTimes
{
    private readonly int _lineCount;
    private readonly List<Run> _runs = [];
    private readonly Dictionary<Experience, Throat> _throats = [];

    /// <summary>Measures a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="lineCount">How many lines the pattern has: they come again in every speed and every time through the drill.</param>
    public StepTimes(Section section, int lineCount)
    {
        (Section, _lineCount) = (section, lineCount);
        var notes = section.Notes.AsSpan();
        for (var n = 0; n < notes.Length; n++)
        {
            var first = n;
            while (n + 1 < notes.Length && notes[n + 1].OnsetSteps == notes[n].EndSteps)
            {
                n++;
            }

            _runs.Add(new Run(notes[first].OnsetSteps, notes[n].EndSteps, notes[first].LineIndex % lineCount));
        }
    }

    /// <summary>The section at one of the tempi.</summary>
    public Section Section { get; }

    /// <summary>Whether notes follow each other too quickly for a level at a steady tempo.</summary>
    public bool IsTooFast(Experience level, Rational tempo) => tempo > Of(level).Fastest;

    /// <summary>Where notes follow each other too quickly for a level, as <see cref="AgilityCheck"/> finds it.</summary>
    public IEnumerable<LineFault> TooFast(Experience level, StepClock clock)
    {
        var throat = Of(level);
        return clock.Fastest > throat.Fastest || !clock.IsSteady ? EachTooFast(throat, clock) : [];
    }

    /// <summary>The spans between breaths that last longer than a capacity, as <see cref="BreathSpan"/> measures them, and their seconds.</summary>
    public IEnumerable<(int Line, Rational Seconds)> TooLong(Rational shortestBreath, Rational capacity, StepClock clock)
    {
        // Within a tempo silence of so many steps ends a span, and more sung steps than these are too many.
        var bounds = new (long Silence, long Most)[clock.Count];
        for (var s = 0; s < bounds.Length; s++)
        {
            bounds[s] = ((shortestBreath * clock.PerSecond(s)).Ceiling(), (capacity * clock.PerSecond(s)).Floor());
        }

        var open = _runs[0];
        var (first, last) = (clock.StretchAt(open.Start), clock.StretchAt(open.End));
        for (var r = 1; r < _runs.Count; r++)
        {
            var run = _runs[r];
            var next = clock.StretchAt(run.Start, last);
            var ends = next == last ? run.Start - open.End >= bounds[next].Silence : clock.Between(open.End, last, run.Start, next) >= shortestBreath;
            if (ends)
            {
                if (IsTooLong())
                {
                    yield return (open.Line, clock.Between(open.Start, first, open.End, last));
                }

                (open, first) = (run, next);
            }

            open = open with { End = run.End };
            last = clock.StretchAt(run.End, next);
        }

        if (IsTooLong())
        {
            yield return (open.Line, clock.Between(open.Start, first, open.End, last));
        }

        bool IsTooLong() => first == last ? open.End - open.Start > bounds[last].Most : clock.Between(open.Start, first, open.End, last) > capacity;
    }

    private static IEnumerable<LineFault> EachTooFast(Throat throat, StepClock clock)
    {
        if (clock.Fastest > throat.Fastest)
        {
            foreach (var change in throat.Worst)
            {
                // The tempo never falls: a change is quickest where it comes last.
                var available = clock.Seconds(change.Change.Steps, clock.StretchAt(change.Onset));
                if (available < change.Change.Needed)
                {
                    yield return change.Change.Fault(available);
                }
            }
        }

        // The time to the first note of another time through the drill is partly of the tempo before.
        var at = 0;
        foreach (var (first, rest) in throat.Rounds)
        {
            var before = clock.StretchAt(first.Onset - first.Change.Steps, at);
            at = clock.StretchAt(first.Onset, before);
            var available = clock.Between(first.Onset - first.Change.Steps, before, first.Onset, at);
            var (needed, left) = rest is { } other ? (other.Needed, clock.Seconds(other.Steps, at)) : (Rational.Zero, Rational.One);
            if (available < first.Change.Needed && first.Change.Needed * left >= needed * available)
            {
                yield return first.Change.Fault(available);
            }
            else if (left < needed)
            {
                yield return rest!.Value.Fault(left);
            }
        }
    }

    private Throat Of(Experience level)
    {
        if (!_throats.TryGetValue(level, out var throat))
        {
            throat = _throats[level] = Measure(AgilityLimits.Of(level));
        }

        return throat;
    }

    /// <summary>The change of each line that needs slowing most: the same one at every tempo, except where another time through the drill begins.</summary>
    private Throat Measure(AgilityLimits limits)
    {
        var notes = Section.Notes.AsSpan();
        var heights = Section.Pitches.ConvertAll(p => p.Midi);
        var needed = new Dictionary<int, Rational>();
        var worst = new Dictionary<Change, int>();
        var rounds = new List<(PlacedChange First, Change? Others)>();
        var round = 0;
        foreach (var line in Section.Lines)
        {
            Change? most = null;
            var first = Math.Max(1, line.FirstNote);
            var beginsRound = line.Round > round;
            if (beginsRound)
            {
                round = line.Round;
                rounds.Add((new PlacedChange(ChangeTo(first, notes), notes[first].OnsetSteps), null));
                first++;
            }

            for (var n = first; n < line.FirstNote + line.NoteCount; n++)
            {
                var change = ChangeTo(n, notes);
                most = most is not { } known || change.NeedsMoreThan(known) ? change : most;
            }

            if (most is not { } found)
            {
                continue;
            }

            if (beginsRound)
            {
                rounds[^1] = rounds[^1] with { Others = found };
            }
            else
            {
                worst[found] = notes[line.FirstNote].OnsetSteps;
            }
        }

        // Quicker than this, one of them has too little time.
        var fastest = new Rational(int.MaxValue);
        foreach (var change in worst.Keys.Concat(rounds.Select(r => r.First.Change)).Concat(rounds.Select(r => r.Others).OfType<Change>()))
        {
            fastest = Rational.Min(fastest, new Rational(change.Steps, Section.Resolution) * 60 / change.Needed);
        }

        return new Throat([.. worst.Select(w => new PlacedChange(w.Key, w.Value))], [.. rounds], fastest);

        Change ChangeTo(int note, ReadOnlySpan<ScoreNote> sung)
        {
            var semitones = heights[sung[note].PitchIndex] - heights[sung[note - 1].PitchIndex];
            if (!needed.TryGetValue(semitones, out var least))
            {
                least = needed[semitones] = limits.LeastSeconds(semitones, out _);
            }

            return new Change(sung[note].LineIndex % _lineCount, sung[note].OnsetSteps - sung[note - 1].OnsetSteps, least);
        }
    }

    /// <summary>Notes that touch each other, and the line of the first.</summary>
    private readonly record struct Run(int Start, int End, int Line);

    /// <summary>The steps from one onset to the next in a line, and the seconds needed.</summary>
    private readonly record struct Change(int Line, int Steps, Rational Needed)
    {
        public bool NeedsMoreThan(Change other) => (Needed > other.Needed || Steps < other.Steps) && Needed * other.Steps > other.Needed * Steps;

        public LineFault Fault(Rational available) => new(Line, Needed.ToDouble() - available.ToDouble());
    }

    /// <summary>A change and a step at its tempo.</summary>
    private readonly record struct PlacedChange(Change Change, int Onset);

    /// <summary>
    /// For a level: the worst change of each line, where it comes last; for the line with which each further time through the drill begins
    /// the change to its first note, and the worst of the rest; and the fastest steady tempo at which none is too quick.
    /// </summary>
    private sealed record Throat(PlacedChange[] Worst, (PlacedChange First, Change? Others)[] Rounds, Rational Fastest);
}

/// <summary>That a line of the pattern has a fault, and by how much, in the unit of its finding.</summary>
internal readonly record struct LineFault(int Line, double Excess);

namespace Warmup.Voices;

/// <summary>
/// The times of a section in whole grid steps, which are the same at every tempo at which its breaths last as many aksharas: what the checks of
/// breath and agility find at any of these tempi, without a score for each. Of a section whose tempo does not change on the way.
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

    /// <summary>Whether notes follow each other too quickly for a level.</summary>
    public bool IsTooFast(Experience level, Rational tempo) => tempo > Of(level).Fastest;

    /// <summary>Where notes follow each other too quickly for a level, as <see cref="AgilityCheck"/> finds it.</summary>
    public IEnumerable<LineFault> TooFast(Experience level, Rational tempo) => IsTooFast(level, tempo) ? EachTooFast(Of(level), tempo) : [];

    /// <summary>The spans between breaths that last longer than a capacity, as <see cref="BreathSpan"/> measures them, and their seconds.</summary>
    public IEnumerable<(int Line, Rational Seconds)> TooLong(Rational shortestBreath, Rational capacity, Rational tempo)
    {
        // Silence of so many steps ends a span; more sung steps than these are too many.
        var (silence, most) = ((shortestBreath * PerSecond(tempo)).Ceiling(), (capacity * PerSecond(tempo)).Floor());
        var open = _runs[0];
        foreach (var run in _runs)
        {
            if (run.Start - open.End < silence)
            {
                open = open with { End = run.End };
                continue;
            }

            if (open.End - open.Start > most)
            {
                yield return (open.Line, Seconds(open.End - open.Start, tempo));
            }

            open = run;
        }

        if (open.End - open.Start > most)
        {
            yield return (open.Line, Seconds(open.End - open.Start, tempo));
        }
    }

    private IEnumerable<LineFault> EachTooFast(Throat throat, Rational tempo)
    {
        foreach (var change in throat.Worst)
        {
            var available = Seconds(change.Steps, tempo);
            if (available < change.Needed)
            {
                yield return new LineFault(change.Line, change.Needed.ToDouble() - available.ToDouble());
            }
        }
    }

    /// <summary>Steps a second.</summary>
    private Rational PerSecond(Rational tempo) => tempo * Section.Resolution / 60;

    private Rational Seconds(int steps, Rational tempo) => new Rational(steps, Section.Resolution) * 60 / tempo;

    private Throat Of(Experience level)
    {
        if (!_throats.TryGetValue(level, out var throat))
        {
            throat = _throats[level] = Measure(AgilityLimits.Of(level));
        }

        return throat;
    }

    /// <summary>The change of each line that needs slowing most: the same one at every tempo.</summary>
    private Throat Measure(AgilityLimits limits)
    {
        var notes = Section.Notes.AsSpan();
        var heights = Section.Pitches.ConvertAll(p => p.Midi);
        var needed = new Dictionary<int, Rational>();
        var worst = new HashSet<Change>();
        foreach (var line in Section.Lines)
        {
            Change? most = null;
            for (var n = Math.Max(1, line.FirstNote); n < line.FirstNote + line.NoteCount; n++)
            {
                var semitones = heights[notes[n].PitchIndex] - heights[notes[n - 1].PitchIndex];
                if (!needed.TryGetValue(semitones, out var least))
                {
                    least = needed[semitones] = limits.LeastSeconds(semitones, out _);
                }

                var change = new Change(notes[n].LineIndex % _lineCount, notes[n].OnsetSteps - notes[n - 1].OnsetSteps, least);
                most = most is not { } known || change.NeedsMoreThan(known) ? change : most;
            }

            if (most is { } found)
            {
                worst.Add(found);
            }
        }

        // Quicker than this, one of them has too little time.
        var fastest = new Rational(int.MaxValue);
        foreach (var change in worst)
        {
            fastest = Rational.Min(fastest, new Rational(change.Steps, Section.Resolution) * 60 / change.Needed);
        }

        return new Throat([.. worst], fastest);
    }

    /// <summary>Notes that touch each other, and the line of the first.</summary>
    private readonly record struct Run(int Start, int End, int Line);

    /// <summary>The steps from one onset to the next in a line, and the seconds needed.</summary>
    private readonly record struct Change(int Line, int Steps, Rational Needed)
    {
        public bool NeedsMoreThan(Change other) => (Needed > other.Needed || Steps < other.Steps) && Needed * other.Steps > other.Needed * Steps;
    }

    /// <summary>For a level the worst change of each line, and the fastest tempo at which none is too quick.</summary>
    private sealed record Throat(Change[] Worst, Rational Fastest);
}

/// <summary>That a line of the pattern has a fault, and by how much, in the unit of its finding.</summary>
internal readonly record struct LineFault(int Line, double Excess);

namespace Warmup.Voices;

/// <summary>What is sung in a section without any silence, in whole grid steps, which are the same at all tempi that share them. Immutable.</summary>
internal sealed class StepSpans
{
    private readonly List<Run> _runs = [];

    /// <summary>Finds the notes that touch each other.</summary>
    /// <param name="section">The section.</param>
    /// <param name="lineCount">How many lines the pattern has.</param>
    /// <param name="finer">How many of the steps are one of the section's.</param>
    /// <param name="breaths">Notes that end early, in order, and the steps at which they do.</param>
    public StepSpans(Section section, int lineCount, int finer = 1, List<(int Note, long End)>? breaths = null)
    {
        var notes = section.Notes.AsSpan();
        var breath = 0;
        var first = 0;
        for (var n = 0; n < notes.Length; n++)
        {
            var end = (long)notes[n].EndSteps * finer;
            if (breaths is not null && breath < breaths.Count && breaths[breath].Note == n)
            {
                end = breaths[breath].End;
                breath++;
            }

            if (n + 1 == notes.Length || (long)notes[n + 1].OnsetSteps * finer != end)
            {
                _runs.Add(new Run((long)notes[first].OnsetSteps * finer, end, notes[first].LineIndex % lineCount));
                first = n + 1;
            }
        }
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

    /// <summary>Notes that touch each other, and the line of the first.</summary>
    private readonly record struct Run(long Start, long End, int Line);
}

namespace Warmup.Voices;

/// <summary>
/// The times of a section in whole grid steps, which are the same at all tempi, steady or rising, at which its breaths last as many aksharas:
/// what the checks of breath and agility find at any of these tempi, without a score for each.
/// </summary>
internal sealed class StepTimes
{
    // The widest interval, in semitones.
    private const int Widest = 127;

    // What changes of pitch need at least, in whole parts of a second, from the widest fall to the widest rise.
    private static readonly long Parts;
    private static readonly Dictionary<Experience, long[]> Least;

    private readonly int _lineCount;
    private readonly Dictionary<Experience, Throat> _throats = [];
    private readonly Lazy<StepSpans> _spans;

    static StepTimes()
    {
        var seconds = Enum.GetValues<Experience>().ToDictionary(
            e => e, e => Enumerable.Range(-Widest, (2 * Widest) + 1).Select(s => AgilityLimits.Of(e).LeastSeconds(s, out _)).ToList());
        Parts = seconds.Values.SelectMany(l => l).Aggregate(1L, (parts, s) => Rational.Lcm(parts, s.Denominator));
        Least = seconds.ToDictionary(l => l.Key, l => l.Value.Select(s => (s * Parts).Numerator).ToArray());
    }

    /// <summary>Measures a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="lineCount">How many lines the pattern has: they come again in every speed and every time through the drill.</param>
    public StepTimes(Section section, int lineCount)
    {
        (Section, _lineCount) = (section, lineCount);
        _spans = new(() => new StepSpans(section, lineCount));
    }

    /// <summary>The section at one of the tempi.</summary>
    public Section Section { get; }

    /// <summary>What is sung without a silence.</summary>
    public StepSpans Spans => _spans.Value;

    /// <summary>Whether notes follow each other too quickly for a level at a steady tempo.</summary>
    public bool IsTooFast(Experience level, Rational tempo) => tempo > Of(level).Fastest;

    /// <summary>Where notes follow each other too quickly for a level, as <see cref="AgilityCheck"/> finds it.</summary>
    public IEnumerable<LineFault> TooFast(Experience level, StepClock clock)
    {
        var throat = Of(level);

        // Where the tempo rises, a change that begins before the rise has only more time.
        return clock.Fastest > throat.Fastest ? EachTooFast(throat, clock) : [];
    }

    private static IEnumerable<LineFault> EachTooFast(Throat throat, StepClock clock)
    {
        foreach (var (change, onset, _) in throat.Worst)
        {
            // The tempo never falls: a change is quickest where it comes last.
            var stretch = clock.StretchAt(onset);
            if (!change.HasTime(clock, stretch))
            {
                yield return change.Fault(clock.Seconds(change.Steps, stretch));
            }
        }

        // The time to the first note of another time through the drill is partly of the tempo before.
        var at = 0;
        foreach (var (first, rest) in throat.Rounds)
        {
            var before = clock.StretchAt(first.Onset - first.Change.Steps, at);
            at = clock.StretchAt(first.Onset, before);
            if (first.Change.HasTime(clock, at))
            {
                if (rest is { } only && !only.HasTime(clock, at))
                {
                    yield return only.Fault(clock.Seconds(only.Steps, at));
                }

                continue;
            }

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
            throat = _throats[level] = Measure(level);
        }

        return throat;
    }

    /// <summary>The change of each line that needs slowing most: the same one at every tempo, except where another time through the drill begins.</summary>
    private Throat Measure(Experience level)
    {
        var notes = Section.Notes.AsSpan();
        var least = Least[level];
        int[] heights = [.. Section.Pitches.Select(p => p.Midi)];
        var worst = new List<PlacedChange>();
        var worstOfLine = new int[_lineCount];
        Array.Fill(worstOfLine, -1);
        var rounds = new List<(PlacedChange First, Change? Others)>();
        var round = 0;
        Change? slowest = null;
        foreach (var line in Section.Lines)
        {
            Change? most = null;
            var first = Math.Max(1, line.FirstNote);
            var beginsRound = line.Round > round;
            if (beginsRound)
            {
                round = line.Round;
                rounds.Add((new PlacedChange(ChangeTo(first, notes), notes[first].OnsetSteps, -1), null));
                slowest = Worse(ChangeTo(first, notes), slowest);
                first++;
            }

            for (var n = first; n < line.FirstNote + line.NoteCount; n++)
            {
                most = Worse(ChangeTo(n, notes), most);
            }

            if (most is not { } found)
            {
                continue;
            }

            slowest = Worse(found, slowest);
            if (beginsRound)
            {
                rounds[^1] = rounds[^1] with { Others = found };
            }
            else
            {
                Keep(found, notes[line.FirstNote].OnsetSteps);
            }
        }

        // Quicker than this, one of them has too little time.
        var fastest = slowest is { } bound ? new Rational(bound.Steps, Section.Resolution) * 60 / bound.Needed : new Rational(int.MaxValue);
        return new Throat([.. worst], [.. rounds], fastest);

        Change ChangeTo(int note, ReadOnlySpan<ScoreNote> sung) => new(
            sung[note].LineIndex % _lineCount, sung[note].OnsetSteps - sung[note - 1].OnsetSteps, least[Widest + heights[sung[note].PitchIndex] - heights[sung[note - 1].PitchIndex]]);

        // The same change of a line comes again in each time through the drill, and counts where it comes last.
        void Keep(Change change, int onset)
        {
            ref var last = ref worstOfLine[change.Line];
            for (var w = last; w >= 0; w = worst[w].Previous)
            {
                if (worst[w].Change == change)
                {
                    worst[w] = worst[w] with { Onset = onset };
                    return;
                }
            }

            worst.Add(new PlacedChange(change, onset, last));
            last = worst.Count - 1;
        }
    }

    /// <summary>The change that needs slowing more; the known one where both need as much.</summary>
    private static Change Worse(Change change, Change? known) => known is { } other && !change.NeedsMoreThan(other) ? other : change;

    /// <summary>The steps from one onset to the next in a line, and what is needed, in parts of a second.</summary>
    private readonly record struct Change(int Line, int Steps, long NeededParts)
    {
        public Rational Needed => new(NeededParts, Parts);

        public bool NeedsMoreThan(Change other) => NeededParts * other.Steps > other.NeededParts * Steps;

        public bool HasTime(StepClock clock, int stretch) => clock.Lasts(Steps, stretch, NeededParts, Parts);

        public LineFault Fault(Rational available) => new(Line, Needed.ToDouble() - available.ToDouble());
    }

    /// <summary>A change, a step at its tempo, and the number of another change of the same line; -1 where there is none.</summary>
    private readonly record struct PlacedChange(Change Change, int Onset, int Previous);

    /// <summary>
    /// For a level: the worst change of each line, where it comes last; for the line with which each further time through the drill begins
    /// the change to its first note, and the worst of the rest; and the fastest steady tempo at which none is too quick.
    /// </summary>
    private sealed record Throat(PlacedChange[] Worst, (PlacedChange First, Change? Others)[] Rounds, Rational Fastest);
}

/// <summary>That a line of the pattern has a fault, and by how much, in the unit of its finding.</summary>
internal readonly record struct LineFault(int Line, double Excess);

namespace Warmup.Voices;

/// <summary>The changes that are worth a trial, each kind from the smallest. Whether one helps is not known here.</summary>
internal sealed class RemedyCandidates(TrialScores scores, IReadOnlyList<ISet<int>> faulty, BreathNeed? need)
{
    private const int FarthestTonic = 24;

    // Breaths after lines are tried in halves of a second.
    private const int HalfSeconds = 20;

    private readonly Drill _drill = scores.Drill;

    /// <summary>All single changes of the drill, the smallest first.</summary>
    public IEnumerable<Remedy> Singles()
    {
        var all = Sized(Deliveries(_drill).Concat(Others(everyTempo: true))).OrderBy(r => r.Size).ToList();
        var at = 0;
        for (; at < all.Count && all[at].Size <= OtherScale.LeastSize; at++)
        {
            yield return all[at].Remedy;
        }

        // Scales are many, and larger changes than most others: they are not looked for before it comes to them.
        foreach (var (remedy, _) in all[at..].Concat(scores.Scales).OrderBy(r => r.Size))
        {
            yield return remedy;
        }
    }

    /// <summary>Two changes, the smallest first; tempi in steps of a twentieth.</summary>
    /// <param name="isUseful">Whether two kinds together can do what neither does alone.</param>
    public IEnumerable<Remedy> Pairs(Func<RemedyKind, RemedyKind, bool> isUseful)
    {
        // What a second change is as large as does not depend on the first, except where both are about the delivery.
        var others = Sized(Others(everyTempo: false)).ToList();
        var pairs = new List<(Remedy First, Remedy Second, int Size)>();
        foreach (var (first, size) in Sized(Deliveries(_drill)))
        {
            var changed = first.Apply(_drill);
            Add(first, size, Deliveries(changed).Select(second => (second, second.Size(changed))));
            Add(first, size, others);
        }

        foreach (var (first, size) in others)
        {
            Add(first, size, others);
        }

        return pairs.OrderBy(p => p.Size).Select(p => new TwoRemedies(p.First, p.Second));

        void Add(Remedy first, int size, IEnumerable<(Remedy Remedy, int Size)> seconds) =>
            pairs.AddRange(seconds.Where(s => s.Remedy.Kind > first.Kind && isUseful(first.Kind, s.Remedy.Kind)).Select(s => (first, s.Remedy, size + s.Size)));
    }

    /// <summary>The scales of the catalogue, each with the size of the change, the smallest first; none for lines that were given.</summary>
    public static ValueList<(Remedy Remedy, int Size)> Scales(Drill drill)
    {
        if (drill.Expansion is not null)
        {
            return [];
        }

        var degrees = drill.Scale.Degrees.ToHashSet();
        return Catalogue.Default.Entries.Select(e => e.Scale)
            .Where(s => (s.Ascent, s.Descent) != (drill.Scale.Ascent, drill.Scale.Descent) && Catalogue.Default.Find(s.Name)?.Scale == s)
            .Select(s => ((Remedy)new OtherScale(s), OtherScale.SizeOf(degrees, s)))
            .OrderBy(r => r.Item2)
            .ToValueList();
    }

    private IEnumerable<(Remedy Remedy, int Size)> Sized(IEnumerable<Remedy> remedies) => remedies.Select(r => (r, r.Size(_drill)));

    private IEnumerable<Remedy> Others(bool everyTempo) =>
        Breaths(need).Concat(Tonics(_drill)).Concat(Speeds(_drill)).Concat(Lines(scores.LineCount, faulty)).Concat(Tempi(_drill.Tempo, everyTempo));

    private static IEnumerable<Remedy> Deliveries(Drill drill)
    {
        var delivery = drill.Delivery;
        if (!delivery.IsLineByLine)
        {
            yield return new OtherDelivery(isLineByLine: true);
        }

        if (!drill.Meter.IsFree)
        {
            foreach (var fill in (Fill[])[Fill.None, Fill.Anga, Fill.Avartana])
            {
                // What fills lines up has no meaning where they are not, so that it would have to be taken away as well.
                if (fill != delivery.Fill && (fill != Fill.None || delivery.FillBy == FillBy.Room))
                {
                    yield return new OtherFill(fill);
                }
            }

            foreach (var fillBy in (FillBy[])[FillBy.Room, FillBy.Rest, FillBy.Hold])
            {
                if (fillBy != delivery.FillBy && delivery.Fill != Fill.None)
                {
                    yield return new OtherFillBy(fillBy);
                }
            }
        }

        for (var halves = 1; halves <= HalfSeconds && delivery.IsLineByLine; halves++)
        {
            if (new Rational(halves, 2) is var seconds && seconds > delivery.BreathSeconds)
            {
                yield return new LongerBreath(seconds);
            }
        }
    }

    private static IEnumerable<Remedy> Breaths(BreathNeed? need)
    {
        if (need is not null)
        {
            yield return new PlannedBreaths(need);
        }
    }

    private static IEnumerable<Remedy> Tonics(Drill drill)
    {
        for (var by = 1; by <= FarthestTonic; by++)
        {
            foreach (var semitones in (int[])[-by, by])
            {
                if (drill.Tonic.Midi + semitones >= Tonic.LowestMidi && drill.Tonic.Midi + semitones <= Tonic.HighestMidi)
                {
                    yield return OtherTonic.Moved(drill, semitones);
                }
            }
        }
    }

    private static IEnumerable<Remedy> Speeds(Drill drill)
    {
        var speeds = drill.Speeds;
        if (speeds.Count == 1)
        {
            for (var kalam = 1; kalam <= 4; kalam++)
            {
                if (kalam != speeds[0].Kalam)
                {
                    yield return new OtherSpeeds([new Speed(kalam, speeds[0].Gati)]);
                }
            }

            yield break;
        }

        // Without the fastest ones, and without the slowest ones.
        foreach (var bound in speeds.Select(s => s.NotesPerAkshara).Distinct().Order())
        {
            foreach (var kept in (ValueList<Speed>[])[Kept(s => s.NotesPerAkshara <= bound), Kept(s => s.NotesPerAkshara >= bound)])
            {
                if (kept.Count < speeds.Count)
                {
                    yield return new OtherSpeeds(kept);
                }
            }
        }

        ValueList<Speed> Kept(Func<Speed, bool> isKept) => speeds.Where(isKept).ToValueList();
    }

    /// <summary>At least half of the lines stay, the project's own setting: with less it is another drill.</summary>
    private static IEnumerable<Remedy> Lines(int count, IEnumerable<ISet<int>> faulty)
    {
        for (var kept = count - 1; 2 * kept >= count && kept > 0; kept--)
        {
            yield return new FewerLines(Enumerable.Range(1, kept).ToValueList());
        }

        foreach (var group in faulty)
        {
            var kept = Enumerable.Range(0, count).Where(l => !group.Contains(l)).Select(l => l + 1).ToValueList();
            if (2 * kept.Count >= count && kept.Count > 0 && kept[^1] != kept.Count)
            {
                yield return new FewerLines(kept);
            }
        }
    }

    private static IEnumerable<Remedy> Tempi(TempoRamp tempo, bool everyTempo)
    {
        // Of equally large changes the nearest one is tried first.
        var every = Enumerable.Range(Tempo.Slowest, Tempo.Fastest - Tempo.Slowest + 1)
            .OrderBy(t => Rational.Max(t, tempo.Start) - Rational.Min(t, tempo.Start));
        var others = (everyTempo ? every : Twentieths(tempo.Start)).ToList();
        foreach (var other in others.Where(t => tempo.Step.Sign != 0 || t != tempo.Start))
        {
            yield return new OtherTempo(other);
        }

        // A rise may also begin later or end earlier.
        var within = others.Where(t => tempo.Step.Sign != 0 && t > tempo.Start && t < tempo.Ceiling).Order().ToList();
        foreach (var later in within)
        {
            yield return new OtherTempo(new TempoRamp(later, tempo.Step, tempo.Ceiling));
        }

        foreach (var earlier in Enumerable.Reverse(within))
        {
            yield return new OtherTempo(new TempoRamp(tempo.Start, tempo.Step, earlier));
        }
    }

    /// <summary>Whole tempi about a twentieth from each other, from a tempo up and down.</summary>
    private static IEnumerable<int> Twentieths(Rational start)
    {
        foreach (var factor in (Rational[])[new(21, 20), new(20, 21)])
        {
            var tempo = start;
            while (true)
            {
                // Rounded away from the start, so that no step stays where it is.
                tempo = factor > 1 ? (tempo * factor).Ceiling() : (tempo * factor).Floor();
                if (tempo < Tempo.Slowest || tempo > Tempo.Fastest)
                {
                    break;
                }

                yield return (int)tempo.Floor();
            }
        }
    }
}

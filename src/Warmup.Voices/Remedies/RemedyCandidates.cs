namespace Warmup.Voices;

/// <summary>The changes that are worth a trial, each kind from the smallest. Whether one helps is not known here.</summary>
internal static class RemedyCandidates
{
    private const int FarthestTonic = 24;

    // Breaths after lines are tried in halves of a second.
    private const int HalfSeconds = 20;

    /// <summary>All single changes of a drill, the smallest first.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="lineCount">How many lines it has.</param>
    /// <param name="faulty">Groups of lines, counted from 0, without which it might fit.</param>
    /// <param name="need">What planned breaths must be enough for; <see langword="null"/> where they are planned already.</param>
    public static IEnumerable<Remedy> Singles(Drill drill, int lineCount, IEnumerable<ISet<int>> faulty, BreathNeed? need) => BySize(
        drill,
        Deliveries(drill)
            .Concat(Breaths(need))
            .Concat(Tonics(drill))
            .Concat(Speeds(drill))
            .Concat(Lines(lineCount, faulty))
            .Concat(Tempi(drill.Tempo, everyTempo: true))
            .Concat(Scales(drill)));

    /// <summary>Two changes, the smallest first; tempi in steps of a twentieth.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="lineCount">How many lines it has.</param>
    /// <param name="faulty">Groups of lines, counted from 0, without which it might fit.</param>
    /// <param name="need">What planned breaths must be enough for; <see langword="null"/> where they are planned already.</param>
    /// <param name="isUseful">Whether two kinds together can do what neither does alone.</param>
    public static IEnumerable<Remedy> Pairs(
        Drill drill, int lineCount, IReadOnlyList<ISet<int>> faulty, BreathNeed? need, Func<RemedyKind, RemedyKind, bool> isUseful)
    {
        var others = Breaths(need).Concat(Tonics(drill)).Concat(Speeds(drill)).Concat(Lines(lineCount, faulty)).Concat(Tempi(drill.Tempo, everyTempo: false)).ToList();
        return BySize(drill, Deliveries(drill).Concat(others).SelectMany(first =>
            Deliveries(first.Apply(drill)).Concat(others)
                .Where(second => second.Kind > first.Kind && isUseful(first.Kind, second.Kind))
                .Select(second => (Remedy)new TwoRemedies(first, second))));
    }

    private static IEnumerable<Remedy> BySize(Drill drill, IEnumerable<Remedy> remedies) =>
        remedies.Select(r => (Remedy: r, Size: r.Size(drill))).OrderBy(r => r.Size).Select(r => r.Remedy);

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
        foreach (var other in everyTempo ? every : Twentieths(tempo.Start))
        {
            if (tempo.Step.Sign == 0)
            {
                if (other != tempo.Start)
                {
                    yield return new OtherTempo(other);
                }

                continue;
            }

            // A rise ends earlier, begins later, or is left out.
            yield return new OtherTempo(other);
            if (other > tempo.Start && other < tempo.Ceiling)
            {
                yield return new OtherTempo(new TempoRamp(tempo.Start, tempo.Step, other));
                yield return new OtherTempo(new TempoRamp(other, tempo.Step, tempo.Ceiling));
            }
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

    private static IEnumerable<Remedy> Scales(Drill drill)
    {
        if (drill.Expansion is not null)
        {
            yield break;
        }

        foreach (var entry in Catalogue.Default.Entries)
        {
            if ((entry.Scale.Ascent, entry.Scale.Descent) != (drill.Scale.Ascent, drill.Scale.Descent) && Catalogue.Default.Find(entry.Scale.Name)?.Scale == entry.Scale)
            {
                yield return new OtherScale(entry.Scale);
            }
        }
    }
}

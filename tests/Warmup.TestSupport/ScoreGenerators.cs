using FsCheck;
using FsCheck.Fluent;

namespace Warmup.TestSupport;

/// <summary>
/// Scores of all kinds, made of the drills that a test hands in. About half have several sections; meters, speeds, ramps, rounds, count-ins,
/// fills and breaths differ from drill to drill. A test holds the shares.
/// </summary>
public static class ScoreGenerators
{
    private static readonly Gen<Speed> Speeds =
        from kalam in Gen.Choose(1, 3)
        from gati in Gen.Frequency((3, Gen.Constant(4)), (1, Gen.Elements(3, 5, 7)))
        select new Speed(kalam, gati);

    private static readonly Gen<Meter> Meters = Gen.OneOf(
        Gen.Constant(Meter.Free),
        Gen.Elements<Meter>([.. Meter.Talas, .. Meter.Chapus]),
        Gen.Elements(Meter.TimeSignature(6, 8), Meter.TimeSignature(5, 4), Meter.Parse("2+2+3/8")));

    /// <summary>Scores of one to three drills, or of a climb by semitones, some with answers.</summary>
    /// <param name="plain">The drills: their scales, patterns, tonics, speeds and tempi. What a scale refuses is left out.</param>
    /// <param name="mostNotes">The most notes of a drill.</param>
    public static Gen<Sung> Of(Gen<Drill> plain, int mostNotes = 600)
    {
        var drill = InTime(plain).Where(d => d.TryToScore(out var score, out _) && score!.NoteCount <= mostNotes);
        var drills = Gen.Frequency((9, drill.ListOf(1)), (5, drill.ListOf(2)), (4, drill.ListOf(3))).Select(d => new Sung(d.ToValueList(), Join(d.Select(x => x.ToScore()))));
        var climb =
            from d in drill
            from semitones in Gen.Choose(1, 2)
            select new Sung([d], new Climb { Drill = d, Semitones = semitones, IsUpAndDown = false }.ToScore());
        return
            from sung in Gen.Frequency((9, drills), (1, climb))
            from answers in Gen.Frequency((7, Gen.Constant(false)), (1, Gen.Constant(true)))
            select answers ? sung with { Score = sung.Score.WithAnswers() } : sung;
    }

    /// <summary>A drill's own time, or another: meter, several speeds, a ramp, rounds, a count-in, a fill.</summary>
    public static Gen<Drill> InTime(Gen<Drill> plain) =>
        from drill in plain
        from meter in Half(drill.Meter, Meters)
        from speeds in Half(drill.Speeds, Gen.Choose(2, 3).SelectMany(n => Speeds.ListOf(n)).Select(s => s.ToValueList()))
        from tempo in Half(drill.Tempo, Ramp(drill.Tempo.Start))
        from repetitions in Gen.Frequency((3, Gen.Constant(1)), (1, Gen.Choose(2, 3)))
        from countIn in Half(0, Gen.Choose(1, 2))
        from fill in Gen.Frequency((3, Gen.Constant(drill.Delivery.Fill)), (1, Gen.Elements(Fill.None, Fill.Anga, Fill.Avartana)))
        from fillBy in Gen.Elements(FillBy.Room, FillBy.Hold, FillBy.Rest)
        select drill with
        {
            Meter = meter,
            Speeds = speeds,
            Tempo = tempo,
            Repetitions = repetitions,
            CountIn = countIn,
            Delivery = drill.Delivery with { Fill = fill, FillBy = fillBy },
        };

    /// <summary>Scores sung one after the other, with the first one's title and drone.</summary>
    public static Score Join(IEnumerable<Score> scores)
    {
        var all = scores.ToList();
        return Score.Join(all[0].Title, all);
    }

    private static Gen<T> Half<T>(T own, Gen<T> other) => Gen.Frequency((1, Gen.Constant(own)), (1, other));

    private static Gen<TempoRamp> Ramp(Rational start) =>
        from step in Gen.Choose(1, 12)
        from rounds in Gen.Choose(1, 2)
        select start + (step * rounds) <= Tempo.Fastest ? new TempoRamp(start, step, start + (step * rounds)) : TempoRamp.Constant(start);
}

/// <summary>Drills and the score that they give; a failing test prints the drills, which are short.</summary>
public sealed record Sung(ValueList<Drill> Drills, Score Score)
{
    public override string ToString() => $"{Score.Sections.Count} sections: {string.Join(" | ", Drills)}";
}

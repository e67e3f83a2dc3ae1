using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Voices.Tests;

/// <summary>A drill of at most a dozen notes and what breathing asks; a failing test prints both.</summary>
public sealed record SmallCase(Drill Drill, BreathNeed Need, Score Score)
{
    public override string ToString() => $"{Drill}, {Need.CapacitySeconds} s, breath {Need.ShortestBreathSeconds} s";
}

/// <summary>A class of one to five singers.</summary>
public sealed record SmallClass(ValueList<Singer> Singers)
{
    public override string ToString() => string.Join("; ", Singers);
}

/// <summary>A drill of at most 400 notes, in time in any way, and other tempi for it, steady and rising.</summary>
public sealed record TimedCase(Drill Drill, ValueList<TempoRamp> Tempi)
{
    public override string ToString() => $"{Drill}, {Drill.Meter}, eduppu {Drill.Eduppu}, count-in {Drill.CountIn}, {Drill.Repetitions} times: {string.Join("; ", Tempi)}";
}

/// <summary>Small drills and classes, small enough for trying everything.</summary>
public static class FitGenerators
{
    private static readonly string[] Scales =
        ["S R2 G3 P D2 S'", "S R2 G3 M1 P D2 N3 S'", "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S", "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S"];

    private static Gen<Pattern> Figures { get; } =
        from count in Gen.Choose(2, 5)
        from steps in Gen.ArrayOf(Gen.Choose(0, 4), count)
        from lines in Gen.Choose(1, 3)
        select Pattern.Figure(steps).Take(lines);

    private static Gen<Pattern> Patterns { get; } = Gen.Frequency(
        (4, Figures),
        (3, from a in Figures from b in Figures select a + b),
        (1, Gen.Elements(Pattern.Ladder.Take(3), Pattern.Ladder.Reversed().Take(3), Pattern.Ladder.Ends())));

    private static Gen<Delivery> Deliveries { get; } = Gen.Frequency(
        (2, Gen.Constant(Delivery.Continuous)),
        (1, from tenths in Gen.Choose(2, 12)
            from quarters in Gen.Choose(1, 6)
            select Delivery.LineByLine with { BreathSeconds = new Rational(tenths, 10), LeastHold = new Rational(quarters, 4) }));

    public static Gen<Drill> Drills { get; } =
        from scale in Gen.Elements(Scales)
        from pattern in Patterns
        from tonic in Gen.Choose(45, 62)
        from just in Gen.Elements(true, false)
        from free in Gen.Elements(true, false)
        from kalam in Gen.Choose(1, 3)
        from gati in Gen.Elements(4, 4, 3, 5)
        from tempo in Gen.Frequency((3, Gen.Choose(20, 80)), (1, Gen.Choose(80, 200)))
        from delivery in Deliveries
        select new Drill
        {
            Scale = Scale.Parse(scale),
            Pattern = pattern,
            Tonic = Tonic.FromMidi(tonic),
            Tuning = just ? Tuning.Just : Tuning.Equal,
            Meter = free ? Meter.Free : Meter.Adi,
            Speeds = [new Speed(kalam, gati)],
            Tempo = tempo,
            Delivery = delivery,
        };

    /// <summary>The capacity goes with the drill's length, so that breaths are often needed and often possible.</summary>
    public static Gen<SmallCase> Cases { get; } =
        from drill in Drills.Where(d => d.TryToScore(out var s, out _) && s!.NoteCount <= 12)
        from percent in Gen.Choose(15, 105)
        from hundredths in Gen.Frequency((3, Gen.Choose(10, 40)), (1, Gen.Choose(40, 120)))
        let score = drill.ToScore()
        let capacity = Rational.Max(new Rational(1, 5), Rational.Min(100, score.Seconds * percent / 100))
        select new SmallCase(drill, new BreathNeed(capacity, new Rational(hundredths, 100)), score);

    public static Gen<TempoRamp> Tempi { get; } = Gen.Frequency(
        (1, Gen.Choose(20, 200).Select(t => TempoRamp.Constant(t))),
        (4, from start in Gen.Choose(20, 120)
            from parts in Gen.Elements(1, 1, 2, 7)
            from step in Gen.Elements(1, 5, 10, 20, 40)
            from times in Gen.Choose(0, 4)
            from less in Gen.Choose(0, 1)
            select new TempoRamp(new Rational(start * parts + 1, parts), new Rational((step * 3) + less, 3), new Rational(start * parts + 1, parts) + (step * times))));

    /// <summary>Deliveries of every kind, filled up in every way.</summary>
    public static Gen<Delivery> AnyDelivery { get; } =
        from delivery in Deliveries
        from fill in Gen.Elements(Fill.None, Fill.Anga, Fill.Avartana)
        from fillBy in Gen.Elements(FillBy.Room, FillBy.Rest, FillBy.Hold)
        select fill == Fill.None ? delivery with { Fill = fill } : delivery with { Fill = fill, FillBy = fillBy };

    public static Gen<TimedCase> Timed { get; } =
        from drill in Drills
        from delivery in AnyDelivery
        from meter in Gen.Elements(Meter.Adi, Meter.TimeSignature(3, 4), Meter.Free)
        from speeds in Gen.Elements<ValueList<Speed>>([Speed.First], [Speed.Second], [Speed.First, Speed.Second], [new Speed(2, 5), new Speed(1, 3)])
        from eduppu in Gen.Elements(0, 0, 1, 2, 4)
        from repetitions in Gen.Elements(1, 1, 2, 5)
        from countIn in Gen.Elements(0, 0, 1)
        from isRepeated in Gen.Elements(false, false, false, true)
        from tempo in Tempi
        from tempi in Tempi.ListOf(4)
        select new TimedCase(
            drill with
            {
                Delivery = meter.IsFree && !delivery.IsLineByLine ? Delivery.Continuous : delivery,
                Meter = meter,
                Speeds = speeds,
                Eduppu = meter.IsFree ? Rational.Zero : new Rational(eduppu, 4),
                CountIn = meter.IsFree ? 0 : countIn,
                Repetitions = repetitions,
                IsRepeatedToFirstBeat = isRepeated && !meter.IsFree,
                Tempo = tempo,
            },
            tempi.ToValueList());

    public static Gen<Singer> Singers { get; } =
        from low in Gen.Choose(38, 64)
        from span in Gen.Choose(0, 26)
        from tenths in Gen.Choose(20, 300)
        from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
        select new Singer("voice", NoteName.FromMidi(low), NoteName.FromMidi(low + span), new Rational(tenths, 10), experience);

    public static Gen<SmallClass> Classes { get; } =
        from singers in Singers.NonEmptyListOf().Where(l => l.Count <= 5)
        select new SmallClass(singers.Select((s, i) => new Singer($"voice {i + 1}", s.Low, s.High, s.SustainedSeconds, s.Experience)).ToValueList());

    /// <summary>The same singer, so many semitones higher.</summary>
    public static Singer Moved(this Singer singer, int semitones) => new(
        singer.Alias, NoteName.FromMidi(singer.Low.Midi + semitones), NoteName.FromMidi(singer.High.Midi + semitones), singer.SustainedSeconds, singer.Experience);
}

/// <summary>What the generators give by type.</summary>
public static class FitArbitraries
{
    public static Arbitrary<Drill> Drills() => FitGenerators.Drills.Where(d => d.TryToScore(out _, out _)).ToArbitrary();

    public static Arbitrary<SmallCase> Cases() => FitGenerators.Cases.ToArbitrary();

    public static Arbitrary<TimedCase> Timed() => FitGenerators.Timed.Where(t => t.Drill.TryToScore(out var score, out _) && score.NoteCount <= 400).ToArbitrary();

    public static Arbitrary<SmallClass> Classes() => FitGenerators.Classes.ToArbitrary();

    public static Arbitrary<Singer> Singers() => FitGenerators.Singers.ToArbitrary();
}

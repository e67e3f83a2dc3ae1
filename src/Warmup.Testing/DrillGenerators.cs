using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Testing;

/// <summary>Generators of drills and scores.</summary>
public static class DrillGenerators
{
    /// <summary>A drill on a tonic from C3 to B4 at 40 to 160 aksharas a minute, whose pattern its scale can refuse.</summary>
    public static Gen<Drill> Drills => from scale in ScaleGenerators.Scales
                                       from pattern in PatternGenerators.OfSize(4)
                                       from tonic in Gen.Choose(48, 71)
                                       from tempo in Gen.Choose(40, 160)
                                       from lineByLine in Gen.Elements(true, false)
                                       select new Drill
                                       {
                                           Scale = scale,
                                           Pattern = pattern,
                                           Tonic = Tonic.FromMidi(tonic),
                                           Tempo = tempo,
                                           Delivery = lineByLine ? Delivery.LineByLine : Delivery.Continuous,
                                       };

    /// <summary>A time: Adi, one of the 35 talas, a chapu, a time signature, or none.</summary>
    public static Gen<Meter> Meters => Gen.Frequency(
        (2, Gen.Constant(Meter.Adi)),
        (4, Gen.Elements(Meter.Talas.AsSpan().ToArray())),
        (1, Gen.Elements(Meter.Chapus.AsSpan().ToArray())),
        (1, Gen.Elements(Meter.TimeSignature(4, 4), Meter.TimeSignature(3, 4), Meter.TimeSignature(6, 8))),
        (2, Gen.Constant(Meter.Free)));

    /// <summary>One to three drills, each in a time of its own and sung in one or two speeds: what a law of scores is tried with.</summary>
    public static Gen<ValueList<Drill>> Sung => from count in Gen.Frequency((3, Gen.Constant(1)), (2, Gen.Constant(2)), (1, Gen.Constant(3)))
                                                from drills in InTime.ListOf(count)
                                                select drills.ToValueList();

    /// <summary>Fewer drills, and simpler ones: smaller patterns, simpler scales, Adi and then no time, one speed, C4, 60 aksharas a minute, line after line.</summary>
    /// <param name="drills">The drills.</param>
    public static IEnumerable<ValueList<Drill>> Shrink(ValueList<Drill> drills)
    {
        for (var i = 0; i < drills.Count; i++)
        {
            if (drills.Count > 1)
            {
                yield return [drills[i]];
            }

            foreach (var simpler in (Drill[])[.. Plainer(drills[i]), .. Shrink(drills[i])])
            {
                yield return [.. drills.Select((d, at) => at == i ? simpler : d)];
            }
        }
    }

    /// <summary>A score with at least one note.</summary>
    public static Gen<Score> Scores => Drills.Select(d => d.TryToScore(out var score, out _) ? score : null).Where(s => s is not null).Select(s => s!);

    /// <summary>Simpler drills than a given one: a smaller pattern, a simpler scale.</summary>
    /// <param name="drill">The drill.</param>
    public static IEnumerable<Drill> Shrink(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return PatternGenerators.Shrink(drill.Pattern).Select(p => drill with { Pattern = p })
            .Concat(ScaleGenerators.Shrink(drill.Scale).Select(s => drill with { Scale = s }));
    }

    private static Gen<Drill> InTime => from drill in Drills
                                        from meter in Meters
                                        from speeds in Gen.Elements<ValueList<Speed>>([Speed.First], [Speed.Second], [Speed.First, Speed.Second])
                                        select drill with { Meter = meter, Speeds = speeds };

    private static IEnumerable<Drill> Plainer(Drill drill)
    {
        Drill[] plainer =
        [
            drill with { Meter = Meter.Free }, drill.Meter.IsFree ? drill : drill with { Meter = Meter.Adi }, drill with { Speeds = [Speed.First] },
            drill with { Delivery = Delivery.Continuous }, drill with { Tonic = Tonic.FromMidi(60), Tempo = TempoRamp.Constant(60) },
        ];
        return plainer.Where(d => d != drill);
    }
}

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
}

using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Testing;

/// <summary>
/// What FsCheck takes for svaras, tones, scales, patterns, singers, drills and scores: register the type, for example with
/// <c>[Properties(Arbitrary = [typeof(WarmupArbitraries)])]</c>.
/// </summary>
public static class WarmupArbitraries
{
    /// <summary>Svaras.</summary>
    public static Arbitrary<Degree> Svaras() => Arb.From(ScaleGenerators.Svara);

    /// <summary>Tones.</summary>
    public static Arbitrary<ScaleTone> Tones() => Arb.From(ScaleGenerators.Tone);

    /// <summary>Scales of all kinds, shrinking to fewer notes.</summary>
    public static Arbitrary<Scale> Scales() => Arb.From(ScaleGenerators.Scales, ScaleGenerators.Shrink);

    /// <summary>Patterns of up to six parts, shrinking to fewer.</summary>
    public static Arbitrary<Pattern> Patterns() => Arb.From(PatternGenerators.Patterns, PatternGenerators.Shrink);

    /// <summary>Singers.</summary>
    public static Arbitrary<Singer> Singers() => Arb.From(SingerGenerators.Singers);

    /// <summary>Drills, shrinking to smaller patterns and simpler scales.</summary>
    public static Arbitrary<Drill> Drills() => Arb.From(DrillGenerators.Drills, DrillGenerators.Shrink);

    /// <summary>Scores.</summary>
    public static Arbitrary<Score> Scores() => Arb.From(DrillGenerators.Scores);
}

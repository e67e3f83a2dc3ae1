using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Midi.Tests;

/// <summary>Drills over scales that are the same both ways, differ, and zigzag; tonics by key and by frequency; several A4.</summary>
public static class Drills
{
    public static Arbitrary<Sung> Arbitrary() => Scores.ToArbitrary();

    public static Gen<Sung> Scores { get; } = ScoreGenerators.Of(Plain(), mostNotes: 300);

    private static Gen<Drill> Plain()
    {
        var a4 = Gen.Elements(440.0, 432.0, 415.3, 446.0, 500.0, 380.0);
        var tonic = Gen.OneOf(
            from midi in Gen.Choose(45, 72) from a in a4 select Tonic.FromMidi(midi, a),
            from hz in Gen.Choose(11_000, 52_300) from a in a4 select Tonic.FromHz(hz / 100.0, a));
        return
            from scale in Gen.Elements(Files.Scales)
            from pattern in Gen.Elements(Files.Patterns)
            from t in tonic
            from tuning in Gen.Elements(Tuning.Equal, Tuning.Just)
            from kalam in Gen.Choose(1, 3)
            from gati in Gen.Frequency((4, Gen.Constant(4)), (1, Gen.Elements(3, 5, 7, 9)))
            from tempo in Gen.Choose(100, 2400)
            from lineByLine in Gen.Elements(true, false)
            from free in Gen.Elements(true, false)
            from vowel in Gen.Elements(true, false)
            select new Drill
            {
                Scale = Scale.Parse(scale),
                Pattern = Pattern.Parse(pattern),
                Tonic = t,
                Tuning = tuning,
                Speeds = [new Speed(kalam, gati)],
                Tempo = new Rational(tempo, 7) is var chosen && chosen < 10 ? 10 : chosen,
                Delivery = lineByLine ? Delivery.LineByLine : Delivery.Continuous,
                Meter = free ? Meter.Free : Meter.Adi,
                Syllables = vowel ? Syllables.Vowel("o") : Syllables.SvaraLetters,
            };
    }
}

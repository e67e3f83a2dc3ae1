using FsCheck;
using FsCheck.Fluent;

namespace Warmup.MusicXml.Tests;

/// <summary>Drills for the tests: named ones, and generated ones over scales, patterns, tonics, speeds, deliveries, breaths and meters.</summary>
internal static class Drills
{
    public const string Major = "S R2 G3 M1 P D2 N3 S'";
    public const string Kanakangi = "S R1 G1 M1 P D1 N1 S'";

    private static readonly string[] Scales =
    [
        Major,
        Kanakangi,
        "S R3 G3 M2 P D3 N3 S'",
        "S R2 G3 P D2 S'",
        "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S",
        "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S",
        "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S",
        "S R2 G2 M1 P D1 N2 S'",
        "1 b2 b3 4 b5 b6 b7 1'",
    ];

    private static readonly string[] Patterns =
        ["ladder", "ladder.reversed", "ladder.ends", "ladder.there-and-back", "ladder.up-down", "figure(1 2 3 4 3 2 1)", "figure(1 1 -1 2).take(3)"];

    public static Drill Of(string scale = Major, string pattern = "ladder", string tonic = "C4") =>
        new() { Scale = Scale.Parse(scale), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse(tonic) };

    /// <summary>Scores that notation can write: where lines run on over the beats, no tuplet writes several gatis one after the other.</summary>
    public static Gen<Score> Scores => Sung.Select(s => s.Score);

    public static Gen<Sung> Sung => ScoreGenerators.Of(Drill, mostNotes: 250).Where(s => CanBeWritten(s.Score));

    public static bool CanBeWritten(Score score)
    {
        try
        {
            new MusicXmlFormat().Write(score, Stream.Null);
            return true;
        }
        catch (ExportException)
        {
            return false;
        }
    }

    public static Gen<Drill> Drill =>
        from scale in Gen.Elements(Scales)
        from pattern in Gen.Elements(Patterns)
        from tonic in Tonics
        from kalam in Gen.Choose(1, 4)
        from gati in Gen.Elements(3, 4, 5, 7, 9)
        from tempo in Gen.Elements<Rational>(10, 45, 60, 72, new Rational(145, 2), 80, new Rational(301, 3), 160, 400)
        from lineByLine in Gen.Elements(true, true, false)
        from breath in Gen.Choose(1, 50)
        from grid in Gen.Elements(1, 2, 3, 24)
        from hold in Gen.Elements(new Rational(1, 4), new Rational(1, 3), new Rational(1, 2), 1, new Rational(3, 2), 5)
        from free in Gen.Elements(true, false)
        from just in Gen.Elements(true, false)
        select Of(scale, pattern) with
        {
            Tonic = tonic,
            Speeds = [new Speed(kalam, gati)],
            Tempo = tempo,
            Delivery = lineByLine
                ? Delivery.LineByLine with { BreathSeconds = new Rational(breath, 5), BreathGrid = grid, LeastHold = hold }
                : Delivery.Continuous,
            Meter = free ? Meter.Free : Meter.Adi,
            Tuning = just ? Tuning.Just : Tuning.Equal,
        };

    private static Gen<Tonic> Tonics => Gen.OneOf(
        Gen.Choose(30, 76).Select(m => Tonic.FromMidi(m)),
        Gen.Elements("C#3", "F#3", "Bb3", "Cb4", "E#3", "Ab2", "G#4").Select(Tonic.Parse),
        Gen.Choose(80, 500).Select(hz => Tonic.FromHz(hz)));

    public static Score Join(IEnumerable<Drill> drills) =>
        Score.Join("A warm-up", drills.Select(d => d.ToScore())) with { Drone = null };
}

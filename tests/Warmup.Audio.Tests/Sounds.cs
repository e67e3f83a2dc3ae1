using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Audio.Tests;

/// <summary>The drills the tests make sound of.</summary>
public static class Sounds
{
    public static readonly WavOptions VoiceOnly = new() { HasDrone = false, HasBeat = false, CountInBeats = 0 };

    public static readonly WavOptions DroneOnly = new() { HasVoice = false, HasBeat = false, CountInBeats = 0 };

    public static readonly WavOptions BeatOnly = new() { HasVoice = false, HasDrone = false, CountInBeats = 0 };

    public static Arbitrary<Sung> Arbitrary() => Scores.ToArbitrary();

    /// <summary>
    /// Scores of at most a minute, since their sound is heard sample by sample, and of notes of at least 0.15 s, since a shorter one is
    /// nearly all edge and its pitch cannot be measured to a cent.
    /// </summary>
    public static Gen<Sung> Scores { get; } = ScoreGenerators.Of(Short(), mostNotes: 40)
        .Where(s => s.Score.Seconds <= 60 && s.Score.Sections.All(x => x.Notes.All(n => x.SecondsAt(n.End) - x.SecondsAt(n.Onset) >= new Rational(3, 20))));

    /// <summary>Short drills: scales that are the same both ways, differ, and zigzag; both tunings; tonics by key and by frequency.</summary>
    private static Gen<Drill> Short() =>
        from scale in Gen.Elements(
            "S R2 G3 M1 P D2 N3 S'",
            "S R1 G1 M2 P D1 N1 S'",
            "S G2 M1 D1 N2 S'",
            "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S",
            "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S")
        from pattern in Gen.Elements("ladder.take(3)", "ladder.reversed.take(3)", "ladder.ends", "ladder.mirrored.take(2)")
        from tonic in Gen.OneOf(
            from midi in Gen.Choose(45, 70) from a4 in Gen.Elements(440.0, 432.0, 446.0) select Tonic.FromMidi(midi, a4),
            from hz in Gen.Choose(11_000, 44_000) select Tonic.FromHz(hz / 100.0))
        from tuning in Gen.Elements(Tuning.Equal, Tuning.Just)
        from tempo in Gen.Choose(350, 900)
        from kalam in Gen.Choose(1, 2)
        from lineByLine in Gen.Elements(true, false)
        from free in Gen.Elements(true, false)
        select new Drill
        {
            Scale = Scale.Parse(scale),
            Pattern = Pattern.Parse(pattern),
            Tonic = tonic,
            Tuning = tuning,
            Tempo = new Rational(tempo, 7),
            Speeds = [new Speed(kalam)],
            Delivery = lineByLine ? Delivery.LineByLine : Delivery.Continuous,
            Meter = free ? Meter.Free : Meter.Adi,
        };

    /// <summary>A drill of 60 aksharas a minute, so that an akshara is a whole number of frames.</summary>
    public static Drill Drill(string pattern = "ladder", string scale = "S R2 G3 P D2 S'") => new()
    {
        Scale = Scale.Parse(scale),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.FromHz(220),
        Title = "A drill",
    };

    /// <summary>One S, held for seven seconds, and a breath of one.</summary>
    public static Score LongTone(Tonic tonic) =>
        (Drill("figure(1).take(1)") with { Tonic = tonic, Delivery = Delivery.LineByLine }).ToScore();

    /// <summary>Drills sung one after the other, with the first one's drone.</summary>
    public static Score Joined(params Drill[] drills)
    {
        var scores = drills.Select(d => d.ToScore()).ToArray();
        return Score.Join(scores[0].Title, scores) with { Drone = scores[0].Drone };
    }

    public static byte[] Bytes(Score score, WavOptions? options = null)
    {
        using var stream = new MemoryStream();
        new WavFormat(options ?? WavOptions.Default).Write(score, stream);
        return stream.ToArray();
    }

    internal static WaveFile File(Score score, WavOptions? options = null) => new(Bytes(score, options));

    /// <summary>The frame nearest a time of aksharas, by whole numbers alone.</summary>
    public static long Frame(Rational aksharas, Rational tempo, int rate)
    {
        var above = (Int128)aksharas.Numerator * 60 * rate * tempo.Denominator;
        var below = (Int128)aksharas.Denominator * tempo.Numerator;
        return (long)(((2 * above) + below) / (2 * below));
    }

    /// <summary>The sections, each with the seconds before it in a sound that counts some beats in; a score that counts itself in needs none.</summary>
    public static IEnumerable<(Section Section, Rational Before)> Placed(Score score, int countInBeats)
    {
        var first = score.Sections[0];
        var before = first.CountIn > 0 ? Rational.Zero : (Rational)countInBeats * 60 / first.Tempo;
        foreach (var section in score.Sections)
        {
            yield return (section, before);
            before += section.Seconds;
        }
    }

    /// <summary>The frame nearest a time in seconds. A tempo that changes does so on a millionth of a second, so that there it can be the next frame as well.</summary>
    public static int Frame(Rational seconds) => (int)(((2 * (Int128)seconds.Numerator * 44_100) + seconds.Denominator) / (2 * (Int128)seconds.Denominator));

    public static int Peak(ReadOnlySpan<short> sound)
    {
        var peak = 0;
        foreach (var sample in sound)
        {
            peak = Math.Max(peak, Math.Abs((int)sample));
        }

        return peak;
    }

    /// <summary>The largest step from one sample to the next.</summary>
    public static int Step(ReadOnlySpan<short> sound)
    {
        var step = 0;
        for (var i = 1; i < sound.Length; i++)
        {
            step = Math.Max(step, Math.Abs(sound[i] - sound[i - 1]));
        }

        return step;
    }

    public static bool IsSilent(ReadOnlySpan<short> sound) => sound.IndexOfAnyExcept((short)0) < 0;
}

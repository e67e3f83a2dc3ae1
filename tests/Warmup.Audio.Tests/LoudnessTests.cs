namespace Warmup.Audio.Tests;

/// <summary>How loud it sounds, by Recommendation ITU-R BS.1770-5 (2023). The bounds are the project's own.</summary>
public class LoudnessTests
{
    private const int Rate = LoudnessMeter.Rate;

    private static readonly double[] Tonics = [98, 131, 156, 208, 247];

    [Fact]
    public void The_meter_reads_what_the_standard_says_of_its_tone()
    {
        // Annex 1: a sine of 997 Hz at full scale in one front channel reads -3.01 LKFS; in both it is twice the power.
        var tone = Enumerable.Range(0, 5 * Rate).Select(n => Math.Sin(2 * Math.PI * 997 * n / Rate)).ToArray();
        Assert.Equal(-3.01, LoudnessMeter.Of(tone), 0.01);
        Assert.Equal(0, LoudnessMeter.Of(tone, tone), 0.01);
        Assert.Equal(-23.01, LoudnessMeter.Of(Array.ConvertAll(tone, t => t / 10)), 0.01);

        // Silence is not counted, nor what lies more than 10 LU below the rest; a plain mean would read 3 LU less.
        double[] halfSilent = [.. tone, .. new double[5 * Rate]];
        Assert.Equal(-3.01, LoudnessMeter.Of(halfSilent), 0.2);
        Assert.Equal(double.NegativeInfinity, LoudnessMeter.Of(new double[Rate]));
    }

    [Fact]
    public void Drills_are_within_1_LU_of_each_other_whatever_their_pitch_scale_and_tempo()
    {
        var drills = Drills().ToList();
        var guides = drills.ConvertAll(d => Read(d, Sounds.VoiceOnly));
        Assert.InRange(guides.Max() - guides.Min(), 0, 1);
        var whole = drills.ConvertAll(d => Read(d, new WavOptions()));
        Assert.InRange(whole.Max() - whole.Min(), 0, 1);

        // EBU R 128 (2020) asks programmes to be at -23 LUFS, streams are commonly at -14: the guide lies between them, softer than what is streamed.
        Assert.All(guides, g => Assert.InRange(g, -23, -18));
    }

    [Theory]
    [InlineData(4, DroneSound.Plucked)]
    [InlineData(5, DroneSound.Plucked)]
    [InlineData(4, DroneSound.Held)]
    public void The_drone_lies_below_the_voice_as_the_balance_says(int strings, DroneSound sound)
    {
        foreach (var hz in WholeCheck.OneIn(4, Tonics))
        {
            var drill = Sounds.Drill("run") with { Tonic = Tonic.FromHz(hz), DroneStyle = DroneStyle.Tanpura with { StringCount = strings }, Repetitions = 2 };
            var below = Read(drill, Sounds.VoiceOnly) - Read(drill, Sounds.DroneOnly with { DroneSound = sound });
            Assert.InRange(below - SoundBalance.DroneBelowVoice, -1, 1);
        }
    }

    private static IEnumerable<Drill> Drills()
    {
        foreach (var hz in WholeCheck.OneIn(4, Tonics))
        {
            foreach (var scale in (string[])["S R2 G3 P D2 S'", "S R1 G1 M2 P D1 N1 S'"])
            {
                yield return Sounds.Drill("ladder", scale) with { Tonic = Tonic.FromHz(hz), Tempo = 75 };
                yield return Sounds.Drill("run.up-down", scale) with { Tonic = Tonic.FromHz(hz), Tempo = 60, Speeds = [Speed.First, Speed.Second, Speed.Third] };
            }
        }
    }

    private static double Read(Drill drill, WavOptions options)
    {
        var file = Sounds.File(drill.ToScore(), options with { SampleRate = Rate });
        return LoudnessMeter.Of([.. file.Samples]);
    }
}

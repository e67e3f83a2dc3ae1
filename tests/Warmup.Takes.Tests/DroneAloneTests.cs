using static Warmup.Takes.Tests.PitchTrackerTests;

namespace Warmup.Takes.Tests;

/// <summary>A drone's strings that are struck while nobody sings, 5 dB below the voice and each dying away: they are no notes, and a voice at their pitch is none of them.</summary>
public class DroneAloneTests
{
    private const int Rate = 16_000;
    private const double Singing = 2;
    private const double Round = 4;

    /// <summary>The voice sings R and S in turn and sways about both by 12 cents either way; the strings are exact.</summary>
    [Fact]
    public void Strings_in_the_pauses_are_a_drone_and_a_voice_at_their_pitch_is_not()
    {
        const double S = 220;
        var sound = Sound(6 * Round, t =>
        {
            // The integral of a sway of 12 cents, once a second.
            var sway = S * 12 / 1731 / (2 * Math.PI) * (1 - Math.Cos(2 * Math.PI * t));
            var at = t % Round;
            return at < Singing / 2 ? Tone(S * 9 / 8, t + (sway / S), 0.2) : at < Singing ? Tone(S, t + (sway / S), 0.2) : String(S * ((int)(2 * at) % 2 == 0 ? 1 : 0.75), at);
        });
        var track = PitchTracker.Track(SoundSource.FromSamples(sound, Rate), TestContext.Current.CancellationToken);
        var alone = DroneAlone.Of(track, Voicing.Of(track), Pitches.Cents(S), most: 0);
        Assert.InRange(Share(alone, Singing, Round), 0.7, 1);
        Assert.InRange(Share(alone, 0, Singing), 0, 0.1);
    }

    /// <summary>A take of call and response in a quiet room: strings sound while the teacher's lines are waited for.</summary>
    [Fact]
    public void Strings_between_the_lines_of_call_and_response_are_no_lines()
    {
        var plan = Corpus.Plain("S R / R G / S G / G P / S P / S R");
        var drill = new DrillNotes(plan.Score);
        var tones = Corpus.Tones(drill, longest: double.PositiveInfinity, rest: Round, off: index => (index % 3 * 15) - 15);
        var sound = VoiceMaker.Sing(plan, tones, new Random(4));
        var voice = Math.Sqrt(sound.Take((int)(VoiceMaker.Rate * 2)).Select(v => v * v).Average());
        var tonic = 440 * Math.Pow(2, (drill.Tonic - 6900) / 1200);
        var noise = new Random(5);
        for (var i = 0; i < sound.Length; i++)
        {
            var t = i / (double)VoiceMaker.Rate;
            var isSung = tones.Exists(n => t > n.Onset - 0.3 && t < n.End + 0.3);
            sound[i] += (float)(voice * ((isSung ? 0 : String(tonic * ((int)(2 * t) % 2 == 0 ? 1 : 1.5), t) / 0.2) + (0.06 * TakeMaker.Gauss(noise))));
        }

        var report = Listener.Hear(plan.Score, SoundSource.FromSamples(sound, VoiceMaker.Rate), TestContext.Current.CancellationToken);
        Assert.Null(report.Reason);
        Assert.Empty(report.Events);
        Assert.Equal(tones.Select(t => t.Index), report.Notes.Where(n => n.Status == NoteStatus.Sung).Select(n => n.Index));
        Assert.All(tones.Zip(report.Notes), x => Assert.Equal(x.First.Onset, x.Second.Onset!.Value, 0.1));
    }

    /// <summary>A string that is struck every half second.</summary>
    private static double String(double hz, double t) => Tone(hz, t, 0.2 * Math.Pow(10, -(5 + (20 * (t % 0.5))) / 20));

    private static double Share(float[] alone, double from, double to) =>
        Enumerable.Range(0, alone.Length).Where(f => f / 100.0 % Round is var at && at > from + 0.1 && at < to - 0.1).Average(f => alone[f] > 0.3 ? 1.0 : 0);
}

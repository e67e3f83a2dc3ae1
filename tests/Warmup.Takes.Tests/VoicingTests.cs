using static Warmup.Takes.Tests.PitchTrackerTests;

namespace Warmup.Takes.Tests;

/// <summary>Where there is voice in made sounds, and which of two pitches it has: soft tones, tones that nobody sings, a room that rings.</summary>
public class VoicingTests
{
    private const int Rate = 16_000;

    // Seconds of a tone, of the softer one after it, and of the rest before the next.
    private const double Long = 1;
    private const double Rest = 0.5;
    private const double Round = (2 * Long) + Rest;
    private const double Struck = (2 * Long) + 0.2;

    /// <summary>A voice that does not pause, with notes that are 9 dB softer than the loud ones: by their level they could be a drone, but they rise above what sounds all the time.</summary>
    [Fact]
    public void The_soft_notes_of_a_voice_that_does_not_pause_are_voice()
    {
        var (track, voicing) = Heard(Round * 6, t => t % Round is var at && at < Rest ? Tone(220, t, 0.2) : Tone(at < Long ? 247 : at < 2 * Long ? 262 : 294, t, 0.07));
        Assert.InRange(Share(track, voicing, 0, Round), 0.7, 1);
    }

    /// <summary>Nobody sings a drill at 1,300 Hz: what begins to sound there in the pauses, 10 dB below the voice, is a string or a bell.</summary>
    [Fact]
    public void A_tone_above_all_voices_is_none()
    {
        var (track, voicing) = Heard(Round * 6, t => Alternating(t, 220, 247, soft: 1) + (t % Round > Struck ? Tone(1_300, t, 0.06) : 0));
        Assert.InRange(Share(track, voicing, 0, 2 * Long), 0.95, 1);
        Assert.InRange(Share(track, voicing, Struck, Round), 0, 0.05);
    }

    /// <summary>A voice that holds the tonic half of the time is what sounds all the time there, and is voice none the less.</summary>
    [Fact]
    public void A_note_that_is_sung_again_and_again_is_voice()
    {
        var (track, voicing) = Heard(Round * 6, t => Alternating(t, 220, 220, soft: 1));
        Assert.InRange(Share(track, voicing, 0, 2 * Long), 0.95, 1);
    }

    /// <summary>In a room that rings for 1.2 s a note is still as loud as a softer one a fifth of a second after it has ended: the strongest pitch is the one that is sung.</summary>
    [Fact]
    public void What_is_sung_is_stronger_than_what_rings()
    {
        var (track, _) = Heard(Round * 6, t => Alternating(t, 220, 247, soft: 0.35) + Ringing(t));
        var right = Enumerable.Range(0, track.Count).Where(f => Within(f, Long + 0.1, Long + 0.25)).Select(f => Math.Abs(track.At(f)[0].Cents - Pitches.Cents(247)) < 50 ? 1.0 : 0).Average();
        Assert.InRange(right, 0.9, 1);
    }

    /// <summary>Some lines end in a note that falls as a voice falls, by 30 dB a second, in a room that falls by 50: it is sung to its end, not only to where it begins to fall.</summary>
    [Fact]
    public void A_note_that_dies_away_in_a_room_is_heard_to_its_end()
    {
        var plan = Corpus.Plain("S R G / R G P / G P D / P D S'");
        var drill = new DrillNotes(plan.Score);
        var tones = Corpus.Tones(drill, longest: Long, rest: 0.8, off: _ => 0);
        var sung = VoiceMaker.Sing(plan, tones, new Random(4));
        foreach (var tone in tones.Where(t => drill.Notes[t.Index] is { IsLast: true, Line: 1 or 3 }))
        {
            for (var i = (int)((tone.Onset + 0.25) * VoiceMaker.Rate); i < (int)(tone.End * VoiceMaker.Rate); i++)
            {
                sung[i] *= (float)Math.Pow(10, -30 * ((i / (double)VoiceMaker.Rate) - tone.Onset - 0.25) / 20);
            }
        }

        var report = Listener.Hear(plan.Score, SoundSource.FromSamples(Array.ConvertAll(VoiceMaker.Room(Array.ConvertAll(sung, v => (double)v), 1.2, new Random(3)), v => (float)v), VoiceMaker.Rate), TestContext.Current.CancellationToken);
        Assert.Equal(tones.Count, report.Notes.Count);
        Assert.All(tones.Zip(report.Notes), x => Assert.InRange(x.Second.End!.Value - x.Second.Onset!.Value, 0.5 * (x.First.End - x.First.Onset), 1.5 * (x.First.End - x.First.Onset)));
        Assert.Contains(report.Doubts, d => d.StartsWith("The room rings", StringComparison.Ordinal));
    }

    /// <summary>A tone, a softer one, and a rest, again and again.</summary>
    private static double Alternating(double t, double first, double second, double soft)
    {
        var at = t % Round;
        return at < Long ? Tone(first, t, 0.2) : at < 2 * Long ? Tone(second, t, 0.2 * soft) : 0;
    }

    /// <summary>What a room that falls by 60 dB in 1.2 s still holds of the first tone after its end.</summary>
    private static double Ringing(double t)
    {
        var after = (t % Round) - Long;
        return after < 0 ? 0 : Tone(220, t, 0.2) * Math.Pow(10, -50 * after / 20);
    }

    private static (PitchTrack Track, Voicing Voicing) Heard(double seconds, Func<double, double> at)
    {
        var track = PitchTracker.Track(SoundSource.FromSamples(Sound(seconds, at), Rate), TestContext.Current.CancellationToken);
        return (track, Voicing.Of(track));
    }

    /// <summary>The share of frames with voice in a part of each round, without its edges.</summary>
    private static double Share(PitchTrack track, Voicing voicing, double from, double to) =>
        Enumerable.Range(0, track.Count).Where(f => Within(f, from + 0.08, to - 0.08)).Average(f => voicing[f] > 0.5 ? 1.0 : 0);

    private static bool Within(int frame, double from, double to) => frame / (double)PitchTrack.FramesASecond % Round is var at && at > from && at < to;
}

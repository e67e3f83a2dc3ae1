namespace Warmup.Audio.Tests;

/// <summary>
/// Counting in, clicks, calls and answers, to the frame. At 60 aksharas a minute an akshara is exactly as many frames as a second has;
/// Adi is 4 + 2 + 2 aksharas (common practice).
/// </summary>
public class TimingTests
{
    private const int Second = 44_100;

    [Theory]
    [InlineData(1)]
    [InlineData(8)]
    public void A_count_in_moves_the_voice_by_its_beats_exactly(int beats)
    {
        var score = Sounds.Drill("ladder.take(2)").ToScore();
        var (plain, counted) = (Sounds.File(score, Sounds.VoiceOnly), Sounds.File(score, Sounds.VoiceOnly with { CountInBeats = beats }));
        Assert.Equal(plain.Frames + (beats * Second), counted.Frames);
        Assert.True(Sounds.IsSilent(counted.Left.AsSpan(0, beats * Second)));
        Assert.Equal(plain.Left, counted.Left[(beats * Second)..]);
        Assert.Equal([.. plain.Markers.Select(m => (m.Label, m.Frame + (beats * Second)))], counted.Markers);
    }

    [Fact]
    public void A_tempo_that_fits_no_frames_is_rounded_once_and_never_adds_up()
    {
        // 97 aksharas a minute are 27278.35... frames an akshara.
        var score = (Sounds.Drill("ladder.repeat(20)") with { Tempo = 97 }).ToScore();
        var clicks = Clicks(Sounds.File(score, Sounds.BeatOnly).Right);
        Assert.Equal(400, clicks.Count);
        for (var k = 0; k < clicks.Count; k++)
        {
            Assert.Equal(Sounds.Frame(k, 97, Second), clicks[k].Start);
        }
    }

    [Fact]
    public void Clicks_are_on_the_aksharas_and_louder_on_angas_and_avartanas()
    {
        var score = Sounds.Drill("ladder").ToScore();
        var clicks = Clicks(Sounds.File(score, Sounds.BeatOnly with { CountInBeats = 6 }).Right);

        // 20 aksharas of notes are filled up to 24. Six beats before the first avartana the count stands at 2.
        Assert.Equal(Enumerable.Range(0, 30).Select(k => (long)k * Second), clicks.Select(c => c.Start));
        var heights = clicks.Select(c => c.Height).Distinct().Order().ToArray();
        Assert.Equal(3, heights.Length);
        for (var k = 0; k < clicks.Count; k++)
        {
            var place = (k + 2) % 8;
            Assert.Equal(place == 0 ? heights[2] : place is 4 or 6 ? heights[1] : heights[0], clicks[k].Height);
        }
    }

    [Fact]
    public void Free_rhythm_has_plain_clicks()
    {
        var score = (Sounds.Drill("ladder") with { Meter = Meter.Free }).ToScore();
        var clicks = Clicks(Sounds.File(score, Sounds.BeatOnly).Right);
        Assert.Equal(20, clicks.Count);
        Assert.Single(clicks.Select(c => c.Height).Distinct());
    }

    [Fact]
    public void A_count_in_is_clicked_without_a_beat_too()
    {
        var score = Sounds.Drill("ladder").ToScore();
        var clicks = Clicks(Sounds.File(score, Sounds.BeatOnly with { HasBeat = false, CountInBeats = 3 }).Right);
        Assert.Equal([0, Second, 2 * Second], clicks.Select(c => c.Start));
    }

    [Fact]
    public void Sections_are_counted_at_their_own_tempo()
    {
        var score = Sounds.Joined(Sounds.Drill("ladder.take(2)"), Sounds.Drill("ladder.take(2)") with { Tempo = 120, Meter = Meter.Free });
        var clicks = Clicks(Sounds.File(score, Sounds.BeatOnly).Right);

        // An avartana of 8 seconds, then 5 aksharas of half a second.
        Assert.Equal(
            [.. Enumerable.Range(0, 8).Select(k => (long)k * Second), .. Enumerable.Range(0, 5).Select(k => (8L * Second) + (k * Second / 2))],
            clicks.Select(c => c.Start));
    }

    [Fact]
    public void Clicks_never_fall_into_each_other()
    {
        // Bars of free rhythm end on quarters of an akshara: at 400 a minute the nearest two beats are 1,654 frames apart, and a click lasts 1,323.
        var bar = (Sounds.Drill() with
        {
            Meter = Meter.Free,
            Tempo = 400,
            Expansion = new([new Line([default(LineNote) with { Length = new Rational(5, 4) }])]),
        }).ToScore();
        var sound = Sounds.File(Score.Join("bars", [bar, bar, bar]), Sounds.BeatOnly).Right;
        var click = Sounds.File(Sounds.Drill().ToScore(), Sounds.BeatOnly with { HasBeat = false, CountInBeats = 1 }).Right[..1323];
        int[] starts = [.. Enumerable.Range(0, 3).SelectMany(b => (int[])[Frame(5 * b), Frame((5 * b) + 4)]), Frame(15)];
        for (var b = 0; b + 1 < starts.Length; b++)
        {
            Assert.Equal(click, sound[starts[b]..(starts[b] + click.Length)]);
            Assert.True(Sounds.IsSilent(sound.AsSpan(starts[b] + click.Length, starts[b + 1] - starts[b] - click.Length)));
        }

        static int Frame(int quarters) => (int)Sounds.Frame(new Rational(quarters, 4), 400, Second);
    }

    [Fact]
    public void Each_line_is_followed_by_the_same_time_for_the_answer()
    {
        var score = Sounds.Drill("ladder").ToScore();
        var section = score.Sections[0];
        var plain = Sounds.File(score, Sounds.VoiceOnly);
        var answered = Sounds.File(score.WithAnswers(), Sounds.VoiceOnly);

        // Lines of 2, 3, 4, 5 and 6 aksharas: twice 20, which are five avartanas.
        Assert.Equal(40 * Second, answered.Frames);
        var markers = new List<(string, long)>();
        foreach (var (line, l) in section.Lines.Select((line, l) => (line, l)))
        {
            var at = (int)line.Onset.Numerator * Second;
            var length = (int)line.Length.Numerator * Second;

            // The ends of a line differ: without answers its first and last notes are joined to the lines beside it.
            const int Edge = Second / 20;
            Assert.Equal(Periods(plain.Left, at + Edge, length - (2 * Edge)), Periods(answered.Left, (2 * at) + Edge, length - (2 * Edge)));
            Assert.True(Sounds.IsSilent(answered.Left.AsSpan((2 * at) + length, length)));
            markers.Add(($"Line {l + 1}", 2 * at));
            markers.Add(($"Line {l + 1}, answer", (2 * at) + length));
        }

        Assert.Equal(markers, answered.Markers);

        // The pitch of each second, in cents above 220 Hz: without a joint before it, a tone begins at another phase.
        static int[] Periods(short[] sound, int from, int length) =>
            [.. Enumerable.Range(0, length / Second).Select(s => (int)Math.Round(Tracker.Cents(Tracker.Hz(sound.AsSpan(from + (s * Second), Second * 8 / 10), Second), 220)))];
    }

    [Fact]
    public void Drone_and_beat_go_on_through_the_answers()
    {
        var score = (Sounds.Drill("ladder") with { Delivery = Delivery.LineByLine }).ToScore();
        var clicks = Clicks(Sounds.File(score.WithAnswers(), Sounds.BeatOnly).Right);
        Assert.Equal(Enumerable.Range(0, 80).Select(k => (long)k * Second), clicks.Select(c => c.Start));
        Assert.All(clicks, c => Assert.Equal(clicks[(int)(c.Start / Second % 8)].Height, c.Height));

        // A stroke of the drone begins every second but each fifth, also in the answers.
        var drone = Sounds.File(score.WithAnswers(), Sounds.DroneOnly).Right;
        for (var s = 0; s < 79; s++)
        {
            Assert.True(Sounds.Peak(drone.AsSpan(s * Second, Second)) > 500);
        }
    }

    [Fact]
    public void A_drone_of_strokes_has_them_at_their_times()
    {
        var score = Sounds.Drill("ladder").ToScore();
        var drone = new Drone([score.Drone!.Strings[1]], 1, new Rational(7, 3));
        var sound = Sounds.File(score with { Drone = drone }, Sounds.DroneOnly).Right;
        for (var k = 1; k < 10; k++)
        {
            // Damped to nothing, then plucked anew from nothing: the frames on both sides are the quietest.
            var frame = (int)Sounds.Frame(new Rational(7 * k, 3), 60, Second);
            Assert.InRange(Sounds.Peak(sound.AsSpan(frame - 4, 8)), 0, 8);
            Assert.True(Sounds.Peak(sound.AsSpan(frame + 400, 400)) > 500);
        }
    }

    /// <summary>The clicks of a channel that has nothing else: where each begins and its greatest height.</summary>
    private static List<(long Start, int Height)> Clicks(short[] sound)
    {
        // A click begins with samples that are rounded to nothing, how many depends on its kind. What they are is seen where a click of
        // each kind is the first thing in a file: a count-in of 8, 4 and 1 in Adi begins an avartana, an anga and neither.
        var leads = new Dictionary<int, int>();
        foreach (var beats in (int[])[8, 4, 1])
        {
            var first = Heard(Sounds.File(Sounds.Drill("ladder.take(1)").ToScore(), Sounds.BeatOnly with { CountInBeats = beats }).Right)[0];
            leads.Add(first.Height, (int)first.Start);
        }

        return [.. Heard(sound).Select(c => (c.Start - leads[c.Height], c.Height))];
    }

    private static List<(long Start, int Height)> Heard(short[] sound)
    {
        var clicks = new List<(long, int)>();
        for (var i = 0; i < sound.Length; i++)
        {
            if (sound[i] != 0)
            {
                // 30 ms and a little, shorter than any akshara.
                var click = sound.AsSpan(i, Math.Min(1400, sound.Length - i));
                clicks.Add((i, Sounds.Peak(click)));
                i += click.Length - 1;
            }
        }

        return clicks;
    }
}

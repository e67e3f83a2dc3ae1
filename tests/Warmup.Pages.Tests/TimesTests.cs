namespace Warmup.Pages.Tests;

/// <summary>
/// What the page asks of Web Audio against the score itself: <see cref="Section.SecondsAt"/>, <see cref="ScorePitch.Hz"/>,
/// <see cref="Drone.Strokes"/> and the angas of the meter. The audio clock is made to run faster, so that whole scores pass in seconds;
/// the times asked for are those of the page's own plan.
/// </summary>
public abstract class TimesTests(Opened opened)
{
    private const double Millisecond = 1e-3;
    private const double Relative = 1e-6;

    private static readonly Drill Mohanam = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Tempo = 120, Tuning = Tuning.Just,
    };

    public static TheoryData<string, int> Scores =>
    [
        .. WholeCheck.OneIn(3, new[]
        {
            ("plain", 50), ("plain", 100), ("line by line", 150), ("sruti box", 100), ("ramp", 80), ("ramp", 100), ("answers", 100), ("no drone", 100), ("warm-up", 125), ("free", 100),
        }),
    ];

    [Theory]
    [MemberData(nameof(Scores))]
    public async Task Frequencies_and_times_are_the_scores_at_every_tempo(string name, int percent)
    {
        var score = Score(name);
        await opened.OpenAsync(score);
        await opened.SetTempoAsync(percent);
        await opened.Browser.EvaluateAsync("test.hurry(25)");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.getElementById('status').textContent === 'The end.'");
        var sounds = await opened.SoundsAsync();
        await opened.IsContentAsync();

        var rate = percent / 100.0;
        var counted = score.Sections[0].CountIn.Sign > 0 ? 0 : 4;
        var notes = Notes(score);
        var guide = sounds.Where(s => s.Part == "guide").ToList();
        var zero = guide[0].Start - (notes[0].Start / rate);
        Assert.Equal(notes.Count, guide.Count);
        foreach (var (note, sound) in notes.Zip(guide))
        {
            Assert.Equal(1, sound.Hz / note.Hz, Relative);
            Assert.Equal(note.Start / rate, sound.Start - zero, Millisecond);
            Assert.Equal(note.End / rate, sound.Stop!.Value - zero, Millisecond);
        }

        // The count-in comes first, at the tempo of the first line, and is all plain beats.
        var akshara = 60 / score.Sections[0].Tempo.ToDouble() / rate;
        var beats = sounds.Where(s => s.Part == "beat").OrderBy(s => s.Start).ToList();
        var expected = Enumerable.Range(0, counted).Select(b => (Start: (b - counted) * akshara, Hz: 900.0))
            .Concat(Beats(score).Select(b => (Start: b.Start / rate, b.Hz))).ToList();
        Assert.Equal(expected.Count, beats.Count);
        Assert.All(expected.Zip(beats), pair =>
        {
            Assert.Equal(pair.First.Start, pair.Second.Start - zero, Millisecond);
            Assert.Equal(pair.First.Hz, pair.Second.Hz, Relative);
        });

        HasDrone(score, [.. sounds.Where(s => s.Part == "drone")], zero - (counted * akshara), score.Seconds.ToDouble() / rate);
    }

    /// <summary>The drone's strokes are those of its own clock, whatever the tempo; each string is two oscillators, a held one is one.</summary>
    private static void HasDrone(Score score, List<Sound> drone, double zero, double seconds)
    {
        if (score.Drone is null)
        {
            Assert.Empty(drone);
            return;
        }

        if (score.Drone.IsHeld)
        {
            var held = score.Drone.Strings.ConvertAll(s => s.Hz).Distinct().ToList();
            Assert.Equal(held.Count, drone.Count);
            Assert.All(held.Zip(drone), pair => Assert.Equal(1, pair.Second.Hz / pair.First, Relative));
            Assert.All(drone, sound => Assert.Equal(zero, sound.Start, Millisecond));
            return;
        }

        var strokes = score.Drone.Strokes(100 + score.Seconds).ToList();
        Assert.True(drone[^1].Start - zero > seconds - score.Drone.CycleSeconds.ToDouble());
        for (var i = 0; i < drone.Count; i++)
        {
            var stroke = strokes[i / 2];
            Assert.Equal(1, drone[i].Hz / score.Drone.Strings[stroke.StringIndex].Hz, Relative);
            Assert.Equal(stroke.Onset.ToDouble(), drone[i].Start - zero, Millisecond);
        }
    }

    public static TheoryData<int> Percents => [.. WholeCheck.OneIn(2, (int[])[150, 100])];

    [Theory]
    [MemberData(nameof(Percents))]
    public async Task A_slide_goes_from_the_middle_of_its_note_to_the_next_pitch_and_a_short_note_stops_there(int percent)
    {
        var score = (Mohanam with { Pattern = Pattern.Parse("[S , P , S' , P , ,].glide + [S G P , ,].staccato + [S , , ,].swell") }).ToScore();
        await opened.OpenAsync(score);
        await opened.SetTempoAsync(percent);
        await opened.ToggleAsync("count-in");
        await opened.Browser.EvaluateAsync("test.hurry(10)");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.getElementById('status').textContent === 'The end.'");
        var guide = (await opened.SoundsAsync()).Where(s => s.Part == "guide").OrderBy(s => s.Start).ToList();
        await opened.IsContentAsync();

        // A beat lasts half a second at the written tempo of 120.
        var section = score.Sections[0];
        Assert.Equal(section.Notes.Count, guide.Count);
        double Seconds(Rational aksharas) => aksharas.ToDouble() / 2 / (percent / 100.0);
        for (var n = 0; n < guide.Count; n++)
        {
            var (note, sound) = (section.Notes[n], guide[n]);
            Assert.Equal(Seconds(note.Onset), sound.Start - guide[0].Start, Millisecond);
            if (note.Joining == Joining.Glide)
            {
                var (from, hz, to) = Assert.Single(sound.Slides);
                Assert.Equal(1, hz / section.PitchOf(section.Notes[n + 1]).Hz, Relative);
                Assert.Equal(Seconds(note.Middle), from - guide[0].Start, Millisecond);
                Assert.Equal(Seconds(note.End), to - guide[0].Start, Millisecond);

                // It lets go while the next begins, and not long after.
                Assert.InRange(sound.Stop!.Value - guide[0].Start - Seconds(note.End), 0.001, 0.03);
            }
            else
            {
                Assert.Empty(sound.Slides);
                Assert.Equal(Seconds(note.SoundEnd), sound.Stop!.Value - guide[0].Start, Millisecond);
            }
        }
    }

    [Fact]
    public async Task A_looped_line_comes_again_after_its_own_length_and_the_drone_goes_on()
    {
        var score = Score("plain");
        await opened.OpenAsync(score);
        await opened.Browser.EvaluateAsync("test.hurry(10)");
        await opened.Browser.ClickAsync("#line-2");
        Assert.Equal("true", (string)(await opened.Browser.EvaluateAsync("document.querySelector('#line-2').getAttribute('aria-pressed')"))!);
        await opened.Browser.ClickAsync("#play");

        // The third line has four notes, half a second each: three times through and a little more.
        await opened.Browser.WaitAsync("JSON.parse(test.sounds()).filter(s => s.part === 'guide').length >= 14");
        var sounds = await opened.SoundsAsync();
        await opened.Browser.ClickAsync("#play");
        var line = Notes(score).Skip(5).Take(4).ToList();
        var guide = sounds.Where(s => s.Part == "guide").ToList();
        for (var i = 0; i < guide.Count; i++)
        {
            var expected = line[i % 4];
            Assert.Equal(1, guide[i].Hz / expected.Hz, Relative);
            Assert.Equal(((i / 4) * 2) + expected.Start - line[0].Start, guide[i].Start - guide[0].Start, Millisecond);
        }

        HasDrone(score, [.. sounds.Where(s => s.Part == "drone")], sounds.Where(s => s.Part == "drone").Min(s => s.Start), 0);
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task A_new_tempo_while_it_plays_loses_no_note_and_doubles_none()
    {
        var score = (Mohanam with { Tempo = 240, Tuning = Tuning.Equal }).ToScore();
        await opened.OpenAsync(score);
        await opened.ToggleAsync("count-in");
        await opened.Browser.EvaluateAsync("test.hurry(1)");
        await opened.Browser.ClickAsync("#play");
        foreach (var percent in (int[])[150, 120, 60, 150])
        {
            await Task.Delay(350);
            await opened.SetTempoAsync(percent);
        }

        await opened.Browser.WaitAsync("document.getElementById('status').textContent === 'The end.'");
        var guide = (await opened.SoundsAsync()).Where(s => s.Part == "guide").OrderBy(s => s.Start).ToList();
        var notes = Notes(score);
        Assert.Equal(notes.Count, guide.Count);
        Assert.All(notes.Zip(guide), pair => Assert.Equal(1, pair.Second.Hz / pair.First.Hz, Relative));

        // The lines run on: each note ends where the next begins, also where the tempo changed in its middle.
        Assert.All(guide.Zip(guide.Skip(1)), pair => Assert.Equal(pair.Second.Start, pair.First.Stop!.Value, Millisecond));
        Assert.True(guide.Zip(guide.Skip(1)).Select(p => Math.Round(p.Second.Start - p.First.Start, 3)).Distinct().Count() > 3);
        await opened.IsContentAsync();
    }

    private static Score Score(string name) => name switch
    {
        "line by line" => (Mohanam with { Delivery = Delivery.LineByLine, Speeds = [Speed.Second] }).ToScore(),
        "ramp" => (Mohanam with { Tempo = new TempoRamp(120, 25, 200), CountIn = 1, Meter = Meter.Parse("misra chapu"), Pattern = Pattern.Ladder.Take(3) }).ToScore(),
        "answers" => (Mohanam with { Pattern = Pattern.Ladder.Take(3), Tonic = Tonic.FromHz(227.3) }).ToScore().WithAnswers(),
        "warm-up" => Mohanam.ToScore() is var first && (Mohanam with { Tonic = Tonic.Parse("A3"), Tempo = 90, Speeds = [new Speed(3, 3)] }).ToScore() is var second
            ? Warmup.Score.Join(first.Title, [first, second])
            : throw new InvalidOperationException(),
        "sruti box" => (Mohanam with { DroneStyle = DroneStyle.SrutiBox }).ToScore(),
        "free" => (Mohanam with { Meter = Meter.Free }).ToScore(),
        "no drone" => (Mohanam with { HasDrone = false }).ToScore(),
        _ => Mohanam.ToScore(),
    };

    private static List<(double Hz, double Start, double End)> Notes(Score score)
    {
        var notes = new List<(double, double, double)>();
        var start = 0.0;
        foreach (var section in score.Sections)
        {
            notes.AddRange(section.Notes.Select(n => (
                section.PitchOf(n).Hz, start + section.SecondsAt(n.Onset).ToDouble(), start + section.SecondsAt(n.Onset + n.Length).ToDouble())));
            start += section.Seconds.ToDouble();
        }

        return notes;
    }

    private static IEnumerable<(double Start, double Hz)> Beats(Score score)
    {
        var start = 0.0;
        foreach (var section in score.Sections)
        {
            for (var akshara = 0; akshara < section.Length; akshara++)
            {
                var within = section.Meter.IsFree ? -1 : akshara % section.Meter.Beats;
                var beginsAnga = within > 0 && section.Meter.AngaEnd(within - 1) == within;
                yield return (start + section.SecondsAt(akshara).ToDouble(), within == 0 ? 1600 : beginsAnga ? 1200 : 900);
            }

            start += section.Seconds.ToDouble();
        }
    }
}

/// <summary>The times in Chromium.</summary>
public class TimesInChromiumTests(OpenedInChromium opened) : TimesTests(opened), IClassFixture<OpenedInChromium>;

/// <summary>The times in Firefox.</summary>
[Trait("Run", "whole")]
public class TimesInFirefoxTests(OpenedInFirefox opened) : TimesTests(opened), IClassFixture<OpenedInFirefox>;

namespace Warmup.Pages.Tests;

/// <summary>
/// What a singer can choose on the practice page, by what the page then asks of Web Audio and shows. The audio clock is the test's, so that whole drills
/// pass in seconds.
/// </summary>
public abstract class ChoicesTests(Opened opened)
{
    private const double Millisecond = 1e-3;
    private const double Relative = 1e-6;

    // Five lines of two to six notes, half a second each.
    private static readonly Drill Mohanam = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Tempo = 120, Tuning = Tuning.Just,
    };

    [Fact]
    public async Task The_tonic_moves_by_semitones_and_octaves_with_the_drone_and_says_its_name_and_kattai()
    {
        var score = Mohanam.ToScore();
        await opened.OpenAsync(score);
        Assert.Equal("S = G3 (kattai 5, 196.00 Hz)", await opened.TextAsync("#tonic"));
        foreach (var shift in (int[])[-12, 1, 1])
        {
            await opened.Browser.EvaluateAsync($"document.querySelector('.shift[value=\"{shift}\"]').click()");
        }

        // Ten semitones under G3 is A2, 110 Hz; A is 6 kattai.
        Assert.Equal("S = A2 (kattai 6, 110.00 Hz)", await opened.TextAsync("#tonic"));
        Assert.Equal("Tonic: S = A2 (kattai 6, 110.00 Hz).", await opened.TextAsync("#status"));
        var sounds = await PlayToTheEndAsync();
        var ratio = Math.Pow(2, -10.0 / 12);
        Assert.Equal(score.NoteCount, sounds.Count(s => s.Part == "guide"));
        Assert.All(
            score.Sections[0].Notes.Zip(sounds.Where(s => s.Part == "guide")),
            pair => Assert.Equal(ratio, pair.Second.Hz / score.Sections[0].PitchOf(pair.First).Hz, Relative));
        var strings = score.Drone!.Strings.ConvertAll(s => s.Hz * ratio);
        Assert.All(sounds.Where(s => s.Part == "drone"), s => Assert.Contains(strings, hz => Math.Abs((s.Hz / hz) - 1) < Relative));

        // The beat has no tonic.
        Assert.All(sounds.Where(s => s.Part == "beat"), s => Assert.Contains(s.Hz, (double[])[900, 1200, 1600]));
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task The_tonic_stops_where_there_are_no_more()
    {
        await opened.OpenAsync((Mohanam with { Tonic = Tonic.Parse("C2"), HasDrone = false }).ToScore());
        await opened.Browser.EvaluateAsync("document.querySelector('.shift[value=\"-12\"]').click()");
        Assert.Equal(
            "[true,true,false,false]", (string)(await opened.Browser.EvaluateAsync("JSON.stringify([...document.querySelectorAll('.shift')].map(b => b.disabled))"))!);
    }

    [Fact]
    public async Task Several_lines_are_looped_together()
    {
        await opened.OpenAsync(Mohanam.ToScore());
        await opened.SetAsync("loop-from", "1");
        await opened.SetAsync("loop-to", "2");
        Assert.Equal("Looping lines 2 to 3.", await opened.TextAsync("#status"));
        await HasPressedAsync(1, 2);
        await opened.Browser.EvaluateAsync("test.hurry(10)");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("JSON.parse(test.sounds()).filter(s => s.part === 'guide').length >= 18");
        var guide = (await opened.SoundsAsync()).Where(s => s.Part == "guide").ToList();
        await opened.Browser.ClickAsync("#play");

        // S R G S R G P, over and over, without a gap: each half a second.
        var hz = new[] { 1, 9.0 / 8, 5.0 / 4, 1, 9.0 / 8, 5.0 / 4, 3.0 / 2 }.Select(ratio => ratio * 195.99771799087463).ToList();
        for (var i = 0; i < guide.Count; i++)
        {
            Assert.Equal(1, guide[i].Hz / hz[i % 7], Relative);
            Assert.Equal(i * 0.5, guide[i].Start - guide[0].Start, Millisecond);
        }

        // Shift and a line's number extend the loop; the number of a line alone makes a loop of it, and again takes it away.
        await opened.Browser.EvaluateAsync("document.getElementById('line-4').dispatchEvent(new MouseEvent('click', { shiftKey: true }))");
        await HasPressedAsync(1, 2, 3, 4);
        await opened.Browser.ClickAsync("#line-3");
        await HasPressedAsync(3);
        await opened.Browser.ClickAsync("#line-3");
        await HasPressedAsync();
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task Sing_after_me_leaves_each_line_silent_after_it_was_heard_while_beat_and_drone_go_on()
    {
        await opened.OpenAsync((Mohanam with { Pattern = Pattern.Ladder.Take(3), Meter = Meter.Parse("tisra eka") }).ToScore());
        await opened.ToggleAsync("after-me");
        var sounds = await PlayToTheEndAsync();

        // Lines of 2, 3 and 4 aksharas of half a second: each is heard, then its own time is silent.
        var guide = sounds.Where(s => s.Part == "guide").Select(s => s.Start).ToList();
        double[] expected = [0, 0.5, 2, 2.5, 3, 5, 5.5, 6, 6.5];
        Assert.Equal(expected.Length, guide.Count);
        Assert.All(expected.Zip(guide), pair => Assert.Equal(pair.First, pair.Second - guide[0], Millisecond));
        var beats = sounds.Where(s => s.Part == "beat" && s.Start > guide[0] - 0.01).Select(s => s.Start - guide[0]).ToList();
        Assert.Equal(18, beats.Count);
        Assert.All(beats.Select((start, i) => (start, i)), b => Assert.Equal(b.i * 0.5, b.start, Millisecond));
        Assert.Contains(sounds, s => s.Part == "drone" && s.Start - guide[0] > 7);
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task The_page_says_whose_turn_it_is()
    {
        await opened.OpenAsync((Mohanam with { Tempo = 60, Pattern = Pattern.Ladder.Take(2) }).ToScore());
        await opened.ToggleAsync("after-me");
        await opened.ToggleAsync("count-in");
        await opened.Browser.EvaluateAsync("test.hurry(1)");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.getElementById('now').textContent === 'Now: line 1'");
        await opened.Browser.WaitAsync("document.getElementById('now').textContent === 'Your turn: line 1'");

        // The letters are lit in the singer's turn too.
        await opened.Browser.WaitAsync("document.querySelector('.lit')?.textContent === 'R'");
        await opened.Browser.WaitAsync("document.getElementById('now').textContent === 'Now: line 2'");
        await opened.Browser.ClickAsync("#play");
    }

    public static TheoryData<string, int> Guides => [.. WholeCheck.OneIn(2, new[] { ("first-note", 10), ("all", 40), ("first-time", 20), ("none", 0) })];

    [Theory]
    [MemberData(nameof(Guides))]
    public async Task The_guide_sounds_what_was_chosen(string choice, int notes)
    {
        // Five lines of 20 notes together, sung twice.
        var score = (Mohanam with { Repetitions = 2 }).ToScore();
        await opened.OpenAsync(score);
        await opened.SetAsync("sounds", choice);
        var sounds = await PlayToTheEndAsync();
        var guide = sounds.Where(s => s.Part == "guide").ToList();
        Assert.Equal(notes, guide.Count);
        Assert.Equal(4 + score.Sections[0].Length, sounds.Count(s => s.Part == "beat"));
        if (choice == "first-note")
        {
            // The ladder's lines all begin on S.
            Assert.All(guide, s => Assert.Equal(1, s.Hz / 195.99771799087463, Relative));
        }
    }

    [Fact]
    public async Task Only_the_first_time_through_a_loop_is_heard_where_that_is_chosen()
    {
        await opened.OpenAsync(Mohanam.ToScore());
        await opened.SetAsync("sounds", "first-time");
        await opened.Browser.ClickAsync("#line-0");
        await opened.Browser.EvaluateAsync("test.hurry(10)");
        await opened.Browser.ClickAsync("#play");

        // The line has two aksharas: 4 of count-in, then five times through.
        await opened.Browser.WaitAsync("JSON.parse(test.sounds()).filter(s => s.part === 'beat').length >= 14");
        Assert.Equal(2, (await opened.SoundsAsync()).Count(s => s.Part == "guide"));
        await opened.Browser.ClickAsync("#play");
    }

    [Fact]
    public async Task Choices_are_kept_for_the_next_time_the_tempo_and_the_tonic_for_each_drill()
    {
        await opened.OpenAsync(Mohanam.ToScore());
        foreach (var (id, value) in ((string, string)[])[("guide", "40"), ("sounds", "first-note"), ("letters", "150"), ("tempo", "120")])
        {
            await opened.SetAsync(id, value);
        }

        await opened.ToggleAsync("count-in");
        await opened.Browser.EvaluateAsync("document.querySelector('.shift[value=\"1\"]').click()");
        await opened.OpenAgainAsync(Mohanam.ToScore());
        Assert.Equal("40 first-note 150 120 false", await StateAsync());
        Assert.Contains("kattai 5.5", await opened.TextAsync("#tonic"), StringComparison.Ordinal);

        await opened.OpenAgainAsync((Mohanam with { Title = "Another drill" }).ToScore());
        Assert.Equal("40 first-note 150 100 false", await StateAsync());
        Assert.Contains("kattai 5,", await opened.TextAsync("#tonic"), StringComparison.Ordinal);

        await opened.Browser.EvaluateAsync("document.getElementById('reset').click()");
        Assert.Equal("100 all 100 100 true", await StateAsync());

        // What was changed by hand, or written by something else, does no harm.
        await opened.Browser.EvaluateAsync("(localStorage.setItem('warmup-practice', '{\"guide\":\"loud\",\"sounds\":\"toString\",\"letters\":7,\"count-in\":\"no\"}'), localStorage.setItem('warmup-practice: Another drill', '[1'), 1)");
        await opened.OpenAgainAsync((Mohanam with { Title = "Another drill" }).ToScore());
        Assert.Equal("100 all 100 100 true", await StateAsync());
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task Where_the_browser_keeps_nothing_all_works_but_begins_anew()
    {
        await opened.OpenAsync(Mohanam.ToScore());
        await opened.Browser.EvaluateAsync("(Storage.prototype.setItem = Storage.prototype.removeItem = () => { throw new Error('full'); }, 1)");
        await opened.SetAsync("letters", "200");
        await opened.Browser.EvaluateAsync("document.getElementById('reset').click()");
        Assert.Equal("All is as at first.", await opened.TextAsync("#status"));
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task Letters_grow_to_twice_their_size_and_still_fit_a_phone()
    {
        await opened.OpenAsync((Mohanam with { Speeds = [Speed.Third] }).ToScore(), 360, height: 740);
        const string size = "parseFloat(getComputedStyle(document.querySelector('.n')).fontSize)";
        var before = (double)(await opened.Browser.EvaluateAsync(size))!;
        await opened.SetAsync("letters", "200");
        Assert.Equal(2, (double)(await opened.Browser.EvaluateAsync(size))! / before, 1e-3);
        Assert.Equal("[]", (string)(await opened.Browser.EvaluateAsync(
            "JSON.stringify([...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > 360.5).map(e => `${e.className} ${e.getBoundingClientRect().right}`))"))!);
        Assert.InRange((int)(await opened.Browser.EvaluateAsync("document.documentElement.scrollWidth"))!, 1, 360);
    }

    [Fact]
    public async Task The_player_takes_at_most_120_pixels_of_a_phone_and_stays_in_sight()
    {
        await opened.OpenAsync((Mohanam with { Repetitions = 4 }).ToScore(), 360, height: 740);
        await opened.Browser.EvaluateAsync("test.hurry(1)");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.querySelector('.lit')");
        await opened.Browser.EvaluateAsync("window.scrollTo(0, 600)");
        var box = (await opened.Browser.EvaluateAsync("(({ top, height }) => [top, height])(document.getElementById('player').getBoundingClientRect())"))!.AsArray();
        Assert.Equal(0, (double)box[0]!, 1);
        Assert.InRange((double)box[1]!, 60, 120);
        await opened.Browser.ClickAsync("#play");
    }

    [Fact]
    public async Task The_picture_moves_with_the_sound_and_marks_the_note_that_sounds()
    {
        await opened.OpenAsync((Mohanam with { Tempo = 60 }).ToScore());
        await opened.ToggleAsync("count-in");
        await opened.Browser.EvaluateAsync("test.hurry(1)");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.querySelector('#picture .sounding')");

        // The higher the note, the higher its bar: S R, S R G, S R G P, ...
        var heights = (await opened.Browser.EvaluateAsync("[...document.querySelectorAll('#picture .bar')].slice(0, 5).map(b => +b.getAttribute('y1'))"))!.AsArray().Select(y => (double)y!).ToList();
        Assert.True(heights[0] > heights[1] && heights[3] > heights[4]);
        Assert.Equal(heights[0], heights[2]);
        const string left = "+document.querySelector('#picture g').getAttribute('transform').match(/-?[0-9.]+/)[0]";
        var places = new List<double>();
        for (var i = 0; i < 3; i++)
        {
            places.Add((double)(await opened.Browser.EvaluateAsync(left))!);
            await Task.Delay(250);
        }

        Assert.True(places[0] > places[1] && places[1] > places[2], string.Join(' ', places));
        await opened.Browser.ClickAsync("#play");
    }

    [Fact]
    public async Task Everything_is_reached_and_worked_by_keyboard()
    {
        await opened.OpenAsync((Mohanam with { Tempo = 60 }).ToScore());
        await opened.Browser.EvaluateAsync("test.hurry(1)");
        await opened.Browser.PressAsync(Key.Space);
        await opened.Browser.WaitAsync("document.getElementById('play').textContent === 'Stop'");
        Assert.Equal("Playing, 60 aksharas a minute.", await opened.TextAsync("#status"));
        await opened.Browser.PressAsync(Key.Escape);
        await opened.Browser.WaitAsync("document.getElementById('play').textContent === 'Play'");
        Assert.Equal("Stopped.", await opened.TextAsync("#status"));

        await opened.Browser.EvaluateAsync("document.getElementById('tempo').focus()");
        await opened.Browser.PressAsync(Key.Right);
        Assert.Equal("101 %, 60.6 aksharas a minute", await opened.TextAsync("#tempo-says"));
        Assert.Equal("101 percent, 60.6 aksharas a minute", (string)(await opened.Browser.EvaluateAsync("document.getElementById('tempo').getAttribute('aria-valuetext')"))!);

        // From the slider the tab key goes to the choices, which open, through them, past the recorder, and to the lines.
        await opened.Browser.PressAsync(Key.Tab);
        Assert.Equal("summary", (string)(await opened.Browser.EvaluateAsync("document.activeElement.localName"))!);
        await ActivateAsync();
        await opened.Browser.WaitAsync("document.querySelector('details').open");
        var reached = new List<string>();
        for (var i = 0; i < 16; i++)
        {
            await opened.Browser.PressAsync(Key.Tab);
            reached.Add((string)(await opened.Browser.EvaluateAsync("document.activeElement.id || document.activeElement.value || document.activeElement.localName"))!);
        }

        Assert.Equal(["-12", "-1", "1", "12", "guide", "drone", "beat", "sounds", "after-me", "count-in", "loop-from", "letters", "reset", "summary", "line-0", "line-1"], reached);
        await ActivateAsync();
        Assert.Equal("Looping line 2.", await opened.TextAsync("#status"));
        await opened.IsContentAsync();
    }

    public static TheoryData<string, int> Pages => [.. WholeCheck.OneIn(3, new[] { ("plain", 360), ("three speeds", 1000), ("plain", 1000), ("two sections", 1000), ("answers", 360) })];

    /// <summary>axe-core's rules, those of best practice (landmarks, order of headings) included.</summary>
    [Theory]
    [MemberData(nameof(Pages))]
    public async Task The_page_keeps_the_rules_of_accessibility(string which, int width)
    {
        var score = which switch
        {
            "three speeds" => (Mohanam with { Speeds = SpeedSequences.ThreeSpeeds() }).ToScore(),
            "two sections" => Score.Join("Two", [Mohanam.ToScore(), (Mohanam with { Speeds = SpeedSequences.ThreeSpeeds() }).ToScore()]),
            "answers" => Mohanam.ToScore().WithAnswers(),
            _ => Mohanam.ToScore(),
        };
        await opened.OpenAsync(score, width, height: 740);
        await opened.Browser.EvaluateAsync("document.querySelector('details').open = true");
        Assert.Equal("[]", await Axe.ViolationsAsync(opened.Browser));
    }

    /// <summary>Works the control that has the focus, by the space bar where the browser's window has the focus, which headless Firefox gives to none.</summary>
    private async Task ActivateAsync()
    {
        if ((bool)(await opened.Browser.EvaluateAsync("document.hasFocus()"))!)
        {
            await opened.Browser.PressAsync(Key.Space);
        }
        else
        {
            await opened.Browser.EvaluateAsync("document.activeElement.click()");
        }
    }

    private async Task<List<Sound>> PlayToTheEndAsync()
    {
        await opened.Browser.EvaluateAsync("test.hurry(25)");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.getElementById('status').textContent === 'The end.'");
        return await opened.SoundsAsync();
    }

    private async Task HasPressedAsync(params int[] lines) => Assert.Equal(
        lines.Select(line => $"line-{line}"),
        (await opened.Browser.EvaluateAsync("[...document.querySelectorAll('.loop[aria-pressed=\"true\"]')].map(b => b.id)"))!.AsArray().Select(id => (string)id!));

    private async Task<string> StateAsync() => (string)(await opened.Browser.EvaluateAsync(
        "[...['guide', 'sounds', 'letters', 'tempo'].map(id => document.getElementById(id).value), document.getElementById('count-in').checked].join(' ')"))!;
}

/// <summary>The choices in Chromium.</summary>
[Collection<FilesInChromium>]
public class ChoicesInChromiumTests(OpenedInChromium opened) : ChoicesTests(opened);

/// <summary>The choices in Firefox.</summary>
[Trait("Run", "whole")]
public class ChoicesInFirefoxTests(OpenedInFirefox opened) : ChoicesTests(opened), IClassFixture<OpenedInFirefox>;

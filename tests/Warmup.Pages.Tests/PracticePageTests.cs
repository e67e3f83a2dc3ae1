using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Warmup.Pages.Tests;

/// <summary>
/// The practice page in a real browser, opened from a file: it sounds, it can be used by mouse, by keyboard and with a screen reader
/// (names and roles as the browser's own accessibility tree has them, WAI-ARIA 1.2), it fits a phone and a sheet of paper.
/// </summary>
[Collection<FilesInChromium>]
public class PracticePageTests(OpenedInChromium opened)
{
    private static readonly Drill Mohanam = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Tuning = Tuning.Just, Delivery = Delivery.LineByLine,
    };

    private Browser Browser => opened.Browser;

    [Fact]
    public async Task It_sounds_lights_the_note_and_stops()
    {
        await opened.OpenAsync((Mohanam with { Tempo = 30 }).ToScore());
        Assert.StartsWith("file:", (string)(await Browser.EvaluateAsync("location.href"))!, StringComparison.Ordinal);
        await opened.ToggleAsync("count-in");
        await Browser.ClickAsync("#play");
        await Browser.WaitAsync("test.peak() > 0.05");
        await Browser.WaitAsync("document.querySelector('.lit')");

        // S, then R two seconds later, both in the first line.
        Assert.Equal("S", (string)(await Browser.EvaluateAsync("document.querySelector('.lit').textContent"))!);
        await Browser.WaitAsync("document.querySelector('.lit')?.textContent === 'R'");
        Assert.Equal(1, (int)(await Browser.EvaluateAsync("document.querySelectorAll('.lit').length"))!);
        Assert.Equal("line-0", (string)(await Browser.EvaluateAsync("document.querySelector('.loop.here').id"))!);
        Assert.Equal(1, (int)(await Browser.EvaluateAsync("document.querySelectorAll('.row.here #line-0').length"))!);
        Assert.InRange((double)(await Browser.EvaluateAsync("test.peak()"))!, 0.01, 0.891);
        Assert.Equal("Stop", await opened.TextAsync("#play"));
        await Browser.ClickAsync("#play");
        await Browser.WaitAsync("test.peak() === 0");
        Assert.Equal("Play", await opened.TextAsync("#play"));
        Assert.Equal(0, (int)(await Browser.EvaluateAsync("document.querySelectorAll('.lit, .here').length"))!);
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task Each_part_can_be_silenced_and_comes_back()
    {
        await opened.OpenAsync(Mohanam.ToScore());
        await opened.ToggleAsync("count-in");
        foreach (var part in (string[])["guide", "drone", "beat"])
        {
            await opened.SetAsync(part, "0");
        }

        await Browser.ClickAsync("#play");
        await Browser.WaitAsync("document.querySelector('.lit')");
        await Task.Delay(300);
        Assert.Equal(0, (double)(await Browser.EvaluateAsync("test.peak()"))!);
        foreach (var part in (string[])["guide", "drone", "beat"])
        {
            await opened.SetAsync(part, "100");
            await Browser.WaitAsync("test.peak() > 0.01");
            await opened.SetAsync(part, "0");
            await Browser.WaitAsync("test.peak() === 0");
        }

        await Browser.ClickAsync("#play");
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task A_screen_reader_finds_a_name_for_each_control_and_words_for_each_line()
    {
        await opened.OpenAsync(Mohanam.ToScore());
        await Browser.EvaluateAsync("document.querySelector('details').open = true");
        await Browser.SendAsync("Accessibility.enable");
        var nodes = (await Browser.SendAsync("Accessibility.getFullAXTree"))["nodes"]!.AsArray()
            .Where(n => (bool?)n!["ignored"] != true)
            .Select(n => (Role: (string?)n!["role"]?["value"] ?? string.Empty, Name: (string?)n["name"]?["value"] ?? string.Empty))
            .ToList();
        Assert.Equal(
            [
                "Play", "An octave lower", "A semitone lower", "A semitone higher", "An octave higher", "All as at first",
                "Loop line 1", "Loop line 2", "Loop line 3", "Loop line 4", "Loop line 5",
            ],
            nodes.Where(n => n.Role == "button").Select(n => n.Name));
        Assert.Equal(["Sing after me: each line twice, the second time without the guide", "Count-in"], nodes.Where(n => n.Role == "checkbox").Select(n => n.Name));
        var sliders = nodes.Where(n => n.Role == "slider").Select(n => n.Name.Split(' ')[0]).ToList();
        Assert.Equal(["Tempo", "Guide", "Drone", "Beat", "Size"], sliders);
        Assert.Contains(nodes, n => n.Role == "StaticText" && n.Name == "S, R, G held, breathe");

        // The columns for the eye are not read out as well: the one sign of a hold is the legend's.
        Assert.Single(nodes, n => n.Role == "StaticText" && n.Name == ",");
    }

    [Fact]
    public async Task A_title_of_markup_is_shown_and_does_nothing()
    {
        const string title = "</script><script>test.hacked = 1</script><img src=x onerror=\"test.hacked = 1\">' & \"quotes\"";
        await opened.OpenAsync((Mohanam with { Title = title }).ToScore());
        Assert.Equal(title, await opened.TextAsync("h1"));
        Assert.Equal(title, (string)(await Browser.EvaluateAsync("document.title"))!);
        Assert.Null(await Browser.EvaluateAsync("test.hacked ?? null"));
        Assert.Equal(0, (int)(await Browser.EvaluateAsync("document.images.length"))!);
        await opened.IsContentAsync();
    }

    [Fact]
    public async Task The_page_follows_the_line_without_a_glide_for_those_who_want_less_motion()
    {
        await opened.OpenAsync(Mohanam.ToScore());
        await opened.ToggleAsync("count-in");
        foreach (var (wish, expected) in ((string, string)[])[("reduce", "auto"), ("no-preference", "smooth")])
        {
            await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject
            {
                ["features"] = new JsonArray(new JsonObject { ["name"] = "prefers-reduced-motion", ["value"] = wish }),
            });
            await Browser.EvaluateAsync("Element.prototype.scrollIntoView = (how) => { test.how = how.behavior; }, test.how = null");
            await Browser.ClickAsync("#play");
            await Browser.WaitAsync("document.querySelector('.lit')");
            Assert.Equal(expected, (string)(await Browser.EvaluateAsync("test.how"))!);
            await Browser.ClickAsync("#play");
        }

        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject { ["features"] = new JsonArray() });
    }

    [Fact]
    public async Task The_picture_turns_like_pages_for_those_who_want_less_motion()
    {
        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject
        {
            ["features"] = new JsonArray(new JsonObject { ["name"] = "prefers-reduced-motion", ["value"] = "reduce" }),
        });
        await opened.OpenAsync(Mohanam.ToScore());
        await opened.ToggleAsync("count-in");
        await Browser.EvaluateAsync("test.hurry(1)");
        await Browser.ClickAsync("#play");
        var places = new HashSet<string>();
        foreach (var letter in (string[])["S", "R"])
        {
            await Browser.WaitAsync($"document.querySelector('.lit')?.textContent === '{letter}'");
            places.Add((string)(await Browser.EvaluateAsync("document.querySelector('#picture g').getAttribute('transform')"))!);
        }

        Assert.Single(places);
        Assert.Equal(0, (int)(await Browser.EvaluateAsync("document.querySelectorAll('#picture .mark').length"))!);
        await Browser.ClickAsync("#play");
        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject { ["features"] = new JsonArray() });
    }

    public static TheoryData<int> Widths => [.. WholeCheck.OneIn(2, (int[])[320, 360, 1000])];

    [Theory]
    [MemberData(nameof(Widths))]
    public async Task Nothing_is_wider_than_the_screen(int width)
    {
        foreach (var drill in (Drill[])
        [
            Mohanam, Mohanam with { Speeds = [Speed.Third] }, Mohanam with { Speeds = [new Speed(4, 9)], Delivery = Delivery.Continuous },
            Mohanam with { Meter = Meter.Parse("sankirna-jati dhruva"), Speeds = [Speed.Second], Title = new string('w', 200) }, Mohanam with { Meter = Meter.Free },
        ])
        {
            await opened.OpenAsync(drill.ToScore(), width);
            Assert.InRange((int)(await Browser.EvaluateAsync("document.documentElement.scrollWidth"))!, 1, width);
        }
    }

    [Fact]
    public async Task The_letters_of_an_akshara_stand_under_each_other_in_all_lines()
    {
        foreach (var width in (int[])[1000, 360])
        {
            await opened.OpenAsync((Mohanam with { Speeds = [Speed.Second] }).ToScore(), width);
            var edges = (await Browser.EvaluateAsync(
                "[...document.querySelectorAll('.rows .row')].map(r => JSON.stringify([...r.querySelectorAll('.a')].map(a => a.getBoundingClientRect().x)))"))!.AsArray().Select(e => (string)e!).ToList();
            Assert.Equal(5, edges.Count);
            Assert.Single(edges.Distinct());
        }
    }

    [Fact]
    public async Task The_usual_drills_print_on_one_page_without_the_player()
    {
        foreach (var drill in (Drill[])
        [
            Mohanam, Mohanam with { Speeds = [Speed.Third] }, Mohanam with { Delivery = Delivery.Continuous, Speeds = SpeedSequences.ThreeSpeeds() },
            Mohanam with { Scale = Scale.Parse("S R1 G3 M1 P D1 N3 S'"), Pattern = Pattern.Parse("ladder.up-down") },
        ])
        {
            await opened.OpenAsync(drill.ToScore());
            var pdf = await Browser.SendAsync("Page.printToPDF", new JsonObject { ["preferCSSPageSize"] = true, ["paperWidth"] = 8.27, ["paperHeight"] = 11.69 });
            var text = Encoding.Latin1.GetString(Convert.FromBase64String((string)pdf["data"]!));
            Assert.Equal("1", Assert.Single(Regex.Matches(text, "/Type /Pages\\s*/Count ([0-9]+)")).Groups[1].Value);
        }

        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject { ["media"] = "print" });
        Assert.Equal("none", (string)(await Browser.EvaluateAsync("getComputedStyle(document.getElementById('player')).display"))!);
        Assert.Equal("rgb(255, 255, 255)", (string)(await Browser.EvaluateAsync("getComputedStyle(document.body).backgroundColor"))!);
        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject { ["media"] = string.Empty });
    }

    /// <summary>Contrast as WCAG 2.2 defines it (relative luminance; 4.5 to 1 for text).</summary>
    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task Text_stands_out_in_light_and_dark(string scheme)
    {
        await opened.OpenAsync(Mohanam.ToScore());
        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject
        {
            ["features"] = new JsonArray(new JsonObject { ["name"] = "prefers-color-scheme", ["value"] = scheme }),
        });
        var paper = await Contrast.LuminanceAsync(Browser, "body", "backgroundColor");
        Assert.Equal(scheme == "light", paper > 0.5);
        foreach (var selector in (string[])["body", "dt", ".n", ".h", ".b", "cite", ".head .a"])
        {
            Contrast.IsEnough(await Contrast.LuminanceAsync(Browser, selector, "color"), paper);
        }

        Contrast.IsEnough(await Contrast.LuminanceAsync(Browser, "#play", "color"), await Contrast.LuminanceAsync(Browser, "#play", "backgroundColor"));
        Contrast.IsEnough(await Contrast.LuminanceAsync(Browser, "#now", "color"), await Contrast.LuminanceAsync(Browser, "#now", "backgroundColor"));
        await Browser.EvaluateAsync("document.querySelector('.n').classList.add('lit'); document.getAnimations().forEach(a => a.finish())");
        Contrast.IsEnough(await Contrast.LuminanceAsync(Browser, ".lit", "color"), await Contrast.LuminanceAsync(Browser, ".lit", "backgroundColor"));
        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject { ["features"] = new JsonArray() });
    }
}

using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>
/// The page's own envelopes, rendered sample by sample in an OfflineAudioContext (W3C Web Audio API): nothing jumps, whatever the listener does and
/// whenever. A jump is heard as a click.
/// </summary>
public abstract class EnvelopeTests(Opened opened)
{
    // The steepest edge the page asks for: the loudest string, 0.3 of full scale, rises within 12 ms, 576 samples at 48 kHz; two strings, a note and a
    // click may move at the same time. A gain that drops to 0 makes a step of more than 0.1.
    private const double SteepestStep = 0.005;

    private static readonly Drill Mohanam = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Tempo = 90, Tuning = Tuning.Just,
    };

    [Theory]
    [InlineData(0.085)]
    [InlineData(0.0915)]
    [InlineData(0.5)]
    [InlineData(0.96)]
    [InlineData(1.37)]
    [InlineData(1.55)]
    public async Task Stopping_fades_and_ends_in_silence(double at)
    {
        await PlayAsync(Mohanam);
        await opened.Browser.EvaluateAsync($"offline.at({Text(at)})");
        await opened.Browser.ClickAsync("#play");
        Assert.Equal("Stopped.", await opened.TextAsync("#status"));
        await IsSmoothAsync(3, ends: true);
    }

    [Fact]
    public async Task A_held_drone_stops_without_a_jump()
    {
        await PlayAsync(Mohanam with { DroneStyle = DroneStyle.SrutiBox });
        await opened.Browser.EvaluateAsync("offline.at(0.3)");
        await opened.Browser.ClickAsync("#play");
        await IsSmoothAsync(3, ends: true);
    }

    [Fact]
    public async Task Volumes_move_without_a_jump_while_a_string_rings()
    {
        await PlayAsync(Mohanam);
        foreach (var (at, part, volume) in ((double, string, int)[])[(0.4, "drone", 0), (0.41, "drone", 60), (0.42, "guide", 10), (0.9, "drone", 100), (1.0, "beat", 0), (1.2, "guide", 100)])
        {
            await opened.Browser.EvaluateAsync($"offline.at({Text(at)})");
            await opened.SetAsync(part, Text(volume));
        }

        await IsSmoothAsync(1.5, ends: false);
    }

    [Fact]
    public async Task A_new_tempo_and_a_loop_take_hold_without_a_jump()
    {
        await PlayAsync(Mohanam);
        foreach (var (at, percent) in ((double, int)[])[(0.085, 60), (0.5, 150), (0.51, 140), (0.52, 80)])
        {
            await opened.Browser.EvaluateAsync($"offline.at({Text(at)})");
            await opened.SetTempoAsync(percent);
        }

        await opened.Browser.EvaluateAsync("offline.at(0.9)");
        await opened.Browser.ClickAsync("#line-2");
        await IsSmoothAsync(1.8, ends: false);
    }

    [Fact]
    public async Task What_is_planned_can_be_heard()
    {
        await PlayAsync(Mohanam, isSteady: false);
        var heard = await RenderAsync(1.5);
        Assert.InRange((double)heard["peak"]!, 0.05, 0.9);
    }

    /// <summary>By Recommendation ITU-R BS.1770-5 (2023).</summary>
    [Fact]
    [Trait("Run", "whole")]
    public Task A_held_drone_lies_below_the_guide_as_the_balance_says() => LiesBelowAsync(DroneStyle.SrutiBox, 185.3, 207.15);

    /// <summary>A cycle of the strings is 5 s. Its two equal strings add up as they happen to meet, by up to 3 dB, so that the mean of some tonics counts.</summary>
    [Fact]
    [Trait("Run", "whole")]
    public Task The_strings_lie_below_the_guide_as_the_balance_says() => LiesBelowAsync(DroneStyle.Tanpura, 185.3, 190.37, 201.7, 207.15);

    private async Task LiesBelowAsync(DroneStyle style, params double[] tonics)
    {
        var below = new List<double>();
        foreach (var hz in tonics)
        {
            var drill = Mohanam with { Tonic = Tonic.FromHz(hz), DroneStyle = style };
            below.Add(await LoudnessAsync(drill, "drone") - await LoudnessAsync(drill, "guide"));
        }

        Assert.True(Math.Abs(below.Average() - SoundBalance.DroneBelowVoice) < 1.5, string.Join(' ', below.Select(b => Text(Math.Round(b, 1)))));
    }

    /// <summary>How loud the page is without a part and without the beat, in LKFS.</summary>
    private async Task<double> LoudnessAsync(Drill drill, string without)
    {
        await opened.OpenAsync(drill.ToScore());
        foreach (var part in (string[])["guide", "drone", "beat"])
        {
            await opened.SetAsync(part, part == without || part == "beat" ? "0" : "100");
        }

        await opened.ToggleAsync("count-in");
        await opened.Browser.EvaluateAsync("offline.isSteady = false");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.getElementById('play').textContent === 'Stop'");
        foreach (var at in (double[])[1, 2, 3, 4, 5])
        {
            await opened.Browser.EvaluateAsync($"offline.at({Text(at)})");
            await opened.Browser.EvaluateAsync("new Promise((done) => setTimeout(done, 150))");
        }

        await RenderAsync(5);
        var samples = (string)(await opened.Browser.EvaluateAsync("offline.samples"))!;
        return LoudnessMeter.Of(Array.ConvertAll(samples.Split(' '), s => double.Parse(s, System.Globalization.CultureInfo.InvariantCulture) / 32_768));
    }

    private async Task PlayAsync(Drill drill, bool isSteady = true)
    {
        await opened.OpenAsync(drill.ToScore());
        await opened.ToggleAsync("count-in");
        await opened.Browser.EvaluateAsync($"offline.isSteady = {(isSteady ? "true" : "false")}");
        await opened.Browser.ClickAsync("#play");
        await opened.Browser.WaitAsync("document.getElementById('play').textContent === 'Stop'");
    }

    private async Task IsSmoothAsync(double seconds, bool ends)
    {
        var heard = await RenderAsync(seconds);
        Assert.InRange((double)heard["peak"]!, 0.01, 1.5);
        Assert.InRange((double)heard["step"]!, 0, SteepestStep);
        Assert.Equal(0, (double)heard["start"]!);
        if (ends)
        {
            Assert.Equal(0, (double)heard["end"]!, 1e-6);
        }

        await opened.IsContentAsync();
    }

    private async Task<JsonNode> RenderAsync(double seconds) => (await opened.Browser.EvaluateAsync($"offline.render(0, {Text(seconds)})"))!;

    private static string Text(double number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>The envelopes in Chromium.</summary>
[Trait("Run", "whole")]
public class EnvelopesInChromiumTests(OfflineInChromium opened) : EnvelopeTests(opened), IClassFixture<OfflineInChromium>;

/// <summary>The envelopes in Firefox.</summary>
[Trait("Run", "whole")]
public class EnvelopesInFirefoxTests(OfflineInFirefox opened) : EnvelopeTests(opened), IClassFixture<OfflineInFirefox>;

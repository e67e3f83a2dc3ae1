using System.Text.Json.Nodes;
using Warmup.Audio;
using Warmup.Takes;

namespace Warmup.Pages.Tests;

/// <summary>A drill of nine notes on the page, and takes of it.</summary>
/// <param name="opened">The browser.</param>
/// <param name="server">The page's program.</param>
public abstract class SungPage(Opened opened, PageServer server) : ServedPage(opened, server)
{
    private protected const string Address = "/?scale=mohanam&from=words&pattern=ladder.take(3)&tempo=120";

    /// <summary>Nine notes of half a second, and half a second of silence.</summary>
    private protected static Score Three { get; } = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse("ladder.take(3)"), Tonic = Tonic.Parse("G3"), Tempo = 120 }.ToScore();

    private protected static byte[] Sung(Score score)
    {
        using var bytes = new MemoryStream();
        new WavFormat(new WavOptions { HasDrone = false, HasBeat = false, CountInBeats = 0, Channels = WavChannels.Mono, SampleRate = 48_000, HasMarkers = false }).Write(score, bytes);
        return bytes.ToArray();
    }
}

/// <summary>
/// What is dropped on the page to make drills in, and what is sung to it. The microphone of Chromium hears a file: the library's own guide tone, of which
/// everything is known; that of Firefox hears a tone.
/// </summary>
/// <param name="opened">The browser.</param>
/// <param name="server">The page's program.</param>
public abstract class TakePageTests(Opened opened, PageServer server) : SungPage(opened, server)
{
    [Fact]
    public async Task A_dropped_file_is_read_and_taken_as_the_drill()
    {
        await StartAsync("/");
        await Browser.EvaluateAsync("(() => { const d = new DataTransfer(); d.items.add(new File(['Evening\\nScale: mohanam\\nTonic: D4\\nS R G P\\nG P D S\\'\\n'], 'lines.txt')); document.querySelector('main').dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: d })); })()");
        await Browser.WaitAsync("document.getElementById('read-heading')");
        Assert.Equal("read-heading", (string)(await Browser.EvaluateAsync("document.activeElement.id"))!);
        await Browser.ClickAsync("#read a.apply");
        await Browser.WaitAsync("document.querySelector('#lines-sung h3')?.textContent === 'Evening' && !document.body.ariaBusy");
        Assert.Equal("S R G P|G P D S'", (string)(await Browser.EvaluateAsync("[...document.querySelectorAll('#lines-sung li')].slice(0, 2).map(l => l.textContent).join('|')"))!);
        Assert.Equal("D4 Mohanam", (string)(await Browser.EvaluateAsync("`${document.getElementById('tonic').value} ${document.getElementById('scale').value}`"))!);

        // What cannot be read is told, and the drill stays.
        await Browser.EvaluateAsync("(() => { const d = new DataTransfer(); d.items.add(new File(['MThd'], 'x.mid')); const f = document.getElementById('music'); f.files = d.files; f.dispatchEvent(new Event('change', { bubbles: true })); })()");
        await Browser.WaitAsync("document.querySelector('#read [role=alert]')");
        Assert.Equal("Evening", (string)(await Browser.EvaluateAsync("document.querySelector('#lines-sung h3').textContent"))!);
        await IsContentAsync();
    }

    [Fact]
    public async Task A_recording_from_a_file_is_held_against_the_drill()
    {
        await StartAsync(Address);
        await Browser.EvaluateAsync(
            $"(() => {{ const d = new DataTransfer(); d.items.add(new File([Uint8Array.from(atob('{Convert.ToBase64String(Sung(Three))}'), c => c.charCodeAt(0))], 'take.wav')); const f = document.getElementById('take-from'); f.files = d.files; f.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()");
        await Browser.WaitAsync("document.getElementById('report-heading')");
        Assert.Contains("9 notes were heard, 9 of them in tune", (string)(await Browser.EvaluateAsync("document.getElementById('report').textContent"))!, StringComparison.Ordinal);

        // The report stays while the drill is changed, and can be asked for again.
        await SettleAsync("tonic", "A3");
        await Browser.WaitAsync("location.search.includes('A3') && !document.body.ariaBusy");
        Assert.True((bool)(await Browser.EvaluateAsync("document.getElementById('report').textContent.includes('9 notes')"))!);
        await Browser.ResizeAsync(360, 900);
        Assert.Equal("[]", await Axe.ViolationsAsync(Browser));
        Assert.InRange((int)(await Browser.EvaluateAsync("document.documentElement.scrollWidth"))!, 1, 360);
        await IsContentAsync();
    }
}

/// <summary>In Firefox.</summary>
[Collection<ServedInFirefox>]
[Trait("Run", "whole")]
public sealed class TakePageInFirefoxTests(OpenedInFirefox opened, PageServer server) : TakePageTests(opened, server)
{
    [Fact]
    public async Task A_tone_of_a_microphone_is_recorded_and_is_not_the_drill()
    {
        await StartAsync(Address);
        await Browser.ClickAsync("#record");
        await Browser.WaitAsync("document.getElementById('recorded').textContent >= '0:02'");

        // Without a loudspeaker a browser may leave its audio clock standing; then the page says so.
        if ((string)(await Browser.EvaluateAsync("document.getElementById('recorded').textContent"))! != "There is no microphone that this page may use here.")
        {
            await Browser.ClickAsync("#record");
            await Browser.WaitAsync("document.getElementById('report-heading')");
            Assert.Contains("This is not the drill", (string)(await Browser.EvaluateAsync("document.getElementById('report').textContent"))!, StringComparison.Ordinal);
        }

        await IsContentAsync();
    }
}

/// <summary>In Chromium, whose microphone can hear a file.</summary>
[Collection<ServedInChromium>]
public sealed class TakePageInChromiumTests(OpenedInChromium opened, PageServer server) : TakePageTests(opened, server)
{
    [Fact]
    public async Task What_is_sung_is_recorded_and_reported_note_by_note()
    {
        await StartAsync(Address);
        await File.WriteAllBytesAsync(Browser.Microphone, Sung(Three), TestContext.Current.CancellationToken);
        await Browser.ClickAsync("#record");
        await Browser.WaitAsync("document.getElementById('recorded').textContent >= '0:05'");
        Assert.Equal("Stop recording", (string)(await Browser.EvaluateAsync("document.getElementById('record').textContent"))!);
        await Browser.ClickAsync("#record");
        await Browser.WaitAsync("document.getElementById('report-heading')");
        Assert.Contains("9 notes were heard, 9 of them in tune", (string)(await Browser.EvaluateAsync("document.getElementById('report').textContent"))!, StringComparison.Ordinal);
        Assert.Equal(9, (int)(await Browser.EvaluateAsync("document.querySelectorAll('#report tbody tr').length"))!);
        await IsContentAsync();
    }

    [Fact]
    public async Task The_practice_page_records_without_a_server_and_saves_a_sound_file_that_is_heard()
    {
        await opened.OpenAsync(Three);
        await File.WriteAllBytesAsync(Browser.Microphone, Sung(Three), TestContext.Current.CancellationToken);
        await Browser.EvaluateAsync("(() => { const make = URL.createObjectURL; URL.createObjectURL = (blob) => { window.made = blob; return make.call(URL, blob); }; document.querySelector('#take details').open = true; })()");
        await Browser.ClickAsync("#record");
        await Browser.WaitAsync("document.getElementById('recorded').textContent >= '0:05'");
        await Browser.ClickAsync("#record");
        await Browser.WaitAsync("!document.getElementById('taken').hidden && document.getElementById('take-sound').duration > 5");
        Assert.StartsWith("blob:", (string)(await Browser.EvaluateAsync("document.getElementById('save').href"))!, StringComparison.Ordinal);
        var bytes = Convert.FromBase64String((string)(await Browser.EvaluateAsync("new Promise(done => { const reader = new FileReader(); reader.onload = () => done(reader.result.split(',')[1]); reader.readAsDataURL(window.made); })"))!);
        using var sound = SoundFile.Open(new MemoryStream(bytes));
        Assert.Equal(1, sound.Channels);
        var report = Listener.Hear(Three, sound, TestContext.Current.CancellationToken);
        Assert.True(report.IsDrill, report.Reason);
        Assert.Equal(9, report.Notes.Count(n => n.Status == NoteStatus.Sung && Math.Abs(n.Cents!.Value) <= TakeMarks.InTune));
        await opened.IsContentAsync();
    }
}

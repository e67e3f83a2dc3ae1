using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Warmup.Midi;

namespace Warmup.Samples.Tests;

/// <summary>The page that the server makes from an address. Made-up singers of the studio Lantern Lane.</summary>
public sealed partial class PageTests : IDisposable
{
    private const string Sparrow = "Sparrow,G3,E5,18,beginner";

    private readonly WebApplicationFactory<Program> _service = new();
    private readonly HttpClient _client;

    public PageTests() => _client = _service.CreateClient();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        _client.Dispose();
        _service.Dispose();
    }

    [Fact]
    public async Task An_empty_address_has_a_drill_and_its_files()
    {
        var page = await Page("/");
        foreach (var link in Links(page).Where(l => l.StartsWith("/drill", StringComparison.Ordinal)))
        {
            using var answer = await _client.GetAsync(link, Stop);
            Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{link}: {answer.StatusCode}");
        }

        Assert.Equal(["/drill.html", "/drill.mid", "/drill.musicxml", "/drill.pdf", "/drill.svg", "/drill.wav", "/drill.zip"], Links(page).Where(l => l.StartsWith("/drill", StringComparison.Ordinal)).Select(l => l.Split('?')[0]).Order());
    }

    [Fact]
    public async Task All_that_was_chosen_is_in_the_address_and_in_its_files()
    {
        var page = await Page("/?scale=mohanam&from=words&pattern=ladder.reversed&tonic=D4&tempo=72&tala=eka&speeds=1,2&delivery=line-by-line&lines=1-3&tuning=just");
        Assert.Contains("""value="D4" """.TrimEnd(), page, StringComparison.Ordinal);
        Assert.Contains("""<option value="line-by-line" selected>""", page, StringComparison.Ordinal);
        var link = Links(page).Single(l => l.StartsWith("/drill.mid?", StringComparison.Ordinal));
        var drill = new Drill
        {
            Scale = Catalogue.Default.Read("mohanam"),
            Pattern = Pattern.Parse("ladder.reversed"),
            Tonic = Tonic.Parse("D4"),
            Tempo = 72,
            Tuning = Tuning.Just,
            Meter = Meter.Parse("eka"),
            Speeds = [Speed.First, Speed.Second],
            Delivery = Delivery.LineByLine,
        };
        var lines = drill.Expand();
        using var bytes = new MemoryStream();
        new MidiFormat().Write((drill with { Expansion = new Expansion([.. lines.Lines.Take(3)], lines.Findings) }).ToScore(), bytes, Stop);
        Assert.Equal(bytes.ToArray(), await _client.GetByteArrayAsync(link, Stop));
    }

    [Fact]
    public async Task Drone_climb_count_in_eduppu_repeats_and_title_are_those_of_the_library()
    {
        // A climb of two semitones: five rounds, four cues between them, without a drone.
        var climb = DrillOf(await Page("/?scale=mohanam&from=words&pattern=ladder&climb=2&cue=chord&title=Morning&count-in=1"));
        var drill = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Title = "Morning", CountIn = 1 };
        Assert.Equal(Midi(new Climb { Drill = drill, Semitones = 2, Cue = Climb.BrokenChord }.ToScore(Stop)), await _client.GetByteArrayAsync(climb, Stop));

        var other = DrillOf(await Page("/?scale=mohanam&from=words&pattern=ladder&drone=sruti-box&drone-string=G3&repeat=3&eduppu=1/2"));
        var held = drill with { Title = "Mohanam: each line starts on the tonic and adds one note until the upper tonic is reached", CountIn = 0, Repetitions = 3, Eduppu = new Rational(1, 2), DroneStyle = DroneStyle.SrutiBox with { First = Degree.Parse("G3") } };
        Assert.Equal(Midi(held.ToScore()), await _client.GetByteArrayAsync(other, Stop));

        static byte[] Midi(Score score)
        {
            using var bytes = new MemoryStream();
            new MidiFormat().Write(score, bytes, Stop);
            return bytes.ToArray();
        }

        static string DrillOf(string page) => Links(page).Single(l => l.StartsWith("/drill.mid?", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_climb_that_is_too_high_is_offered_shorter()
    {
        // Sparrow's highest note is E5: from G4 the upper S lies at G5, from C4 at C5, so a climb of four semitones fits and five do not.
        var page = await Page($"/?scale=mohanam&from=words&pattern=ladder&tonic=C4&climb=8&delivery=line-by-line&class={Sparrow}");
        Assert.Contains("does not fit", page, StringComparison.Ordinal);
        Assert.Contains(">climb 4 semitones</a>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Typed_lines_are_a_drill()
    {
        var page = await Page("/?scale=mohanam&from=written&written=S+R+G%0D%0AR+G+P&tonic=D4");
        Assert.Contains("<li>S R G</li><li>R G P</li>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("find=mohanam", "Mohanam")]
    [InlineData("find=65", "Mechakalyani")] // the 65th parent (Venkatamakhin's scheme, common knowledge)
    [InlineData("find=S+R2+G3+P+D2", "Mohanam")]
    [InlineData("without-p=1", "Sriranjani")] // S R2 G2 M1 D2 N2: no P (common practice)
    public async Task A_scale_is_found_by_name_number_letters_and_without_p(string query, string name)
    {
        var page = await Page("/?" + query);
        var found = page[page.IndexOf("id=\"scales\"", StringComparison.Ordinal)..];
        found = found[..found.IndexOf("</fieldset>", StringComparison.Ordinal)];
        Assert.Contains($">{name}</a>", found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_remedy_clears_its_finding_when_its_link_is_followed()
    {
        // Continuous, in one breath of 16 seconds, a semitone too high for Sparrow's range when sung on F4.
        var page = await Page($"/?exercise=sarali-1&tonic=F4&class={Sparrow}%0AOtter,C3,G4,24,intermediate");
        var tried = 0;
        foreach (Match finding in Finding().Matches(page))
        {
            foreach (var link in Links(finding.Value).Where(l => !finding.Value.Contains("Alone", StringComparison.Ordinal)))
            {
                Assert.DoesNotContain(finding.Groups["message"].Value, await Page(link), StringComparison.Ordinal);
                tried++;
            }
        }

        Assert.True(tried >= 2, $"{tried} remedies were tried");
    }

    [Fact]
    public async Task A_posted_class_is_in_no_address()
    {
        using var form = Form(("class", Sparrow), ("tonic", "D4"));
        using var answer = await _client.PostAsync(new Uri("/", UriKind.Relative), form, Stop);
        var page = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Contains("<strong>Sparrow</strong>", page, StringComparison.Ordinal);
        Assert.All(Links(page), l => Assert.DoesNotContain("Sparrow", l, StringComparison.Ordinal));
        Assert.Contains("""data-address="/?tonic=D4" """.TrimEnd(), page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_singer_is_added_and_the_class_comes_as_both_files()
    {
        var page = await Page($"/?class={Sparrow}&add-alias=Otter&add-low=C3&add-high=G4&add-seconds=24&add-experience=intermediate");
        Assert.Contains("<strong>Otter</strong>", page, StringComparison.Ordinal);
        var json = await _client.GetByteArrayAsync($"/class.json?class={Sparrow}", Stop);
        Assert.Equal(new Singer("Sparrow", NoteName.Parse("G3"), NoteName.Parse("E5"), 18, Experience.Beginner), Assert.Single(SingersFile.Read(json)));
        using var pasted = Form(("class", System.Text.Encoding.UTF8.GetString(json)));
        using var csv = await _client.PostAsync(new Uri("/class.csv", UriKind.Relative), pasted, Stop);
        Assert.Contains("Sparrow,,G3,E5,18", await csv.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_no_tempo_fits_the_page_says_why_and_what_would_help()
    {
        var singer = new Singer("Sparrow", NoteName.Parse("G3"), NoteName.Parse("E5"), 8, Experience.Beginner);
        var drill = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse("ladder"), Tonic = Tonic.Parse("G3"), Speeds = [Speed.Second] };
        var closed = TempoWindow.OfSpeeds(drill, [singer], cancellationToken: Stop).Where(w => w.IsEmpty).ToList();
        Assert.Contains(closed, w => !w.OpenedBy.IsEmpty);
        var page = WebUtility.HtmlDecode(await Page("/?scale=mohanam&from=words&pattern=ladder&tonic=G3&speeds=2&class=Sparrow,G3,E5,8,beginner"));
        Assert.All(closed.SelectMany(w => w.ClosedBy), why => Assert.Contains($"<p class=\"help\">{why}</p>", page, StringComparison.Ordinal));
        Assert.All(closed.SelectMany(w => w.OpenedBy), help => Assert.Contains($"<p>{help}</p>", page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_quick_answer_has_the_findings_and_the_full_one_what_would_help()
    {
        using var quick = await _client.PostAsync(new Uri("/", UriKind.Relative), Form(("class", Sparrow), ("quick", "1")), Stop);
        using var full = await _client.PostAsync(new Uri("/", UriKind.Relative), Form(("class", Sparrow)), Stop);
        var (early, late) = (await quick.Content.ReadAsStringAsync(Stop), await full.Content.ReadAsStringAsync(Stop));
        Assert.Contains("one breath has to last", early, StringComparison.Ordinal);
        Assert.Contains("one breath has to last", late, StringComparison.Ordinal);
        Assert.DoesNotContain("planned breaths (", early, StringComparison.Ordinal);
        Assert.Contains("planned breaths (", late, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_with_its_style_and_script_is_under_100_kB()
    {
        var length = (await _client.GetByteArrayAsync("/?find=a&class=" + string.Join("%0A", Enumerable.Range(1, 6).Select(n => $"Wren{n},G3,E5,18,beginner")), Stop)).Length;
        foreach (var file in (string[])["/page.css", "/take.css", "/page.js", "/read.js", "/recorder.js", "/listen.js"])
        {
            length += (await _client.GetByteArrayAsync(file, Stop)).Length;
        }

        Assert.InRange(length, 20_000, 100_000);
    }

    [Fact]
    public void Nothing_is_logged() => Assert.Empty(_service.Services.GetServices<ILoggerProvider>());

    [GeneratedRegex("href=\"(?<to>[^\"]*)\"|src=\"(?<to>[^\"]*)\"")]
    private static partial Regex Link();

    [GeneratedRegex("<div class=\"finding\"><p>(?:lines? [^:]*: )?(?<message>[^<]*)</p>.*?</div>", RegexOptions.Singleline)]
    private static partial Regex Finding();

    internal static FormUrlEncodedContent Form(params IEnumerable<(string Name, string Value)> values) =>
        new(values.Select(v => KeyValuePair.Create(v.Name, v.Value)));

    private static List<string> Links(string page) => [.. Link().Matches(page).Select(m => WebUtility.HtmlDecode(m.Groups["to"].Value)).Where(l => !l.Contains("alias,low", StringComparison.Ordinal) || l.Contains("Sparrow", StringComparison.Ordinal))];

    private async Task<string> Page(string address)
    {
        using var answer = await _client.GetAsync(address, Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{address}: {answer.StatusCode}");
        return await answer.Content.ReadAsStringAsync(Stop);
    }
}

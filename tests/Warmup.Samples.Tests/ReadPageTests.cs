using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.WebUtilities;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Reading;
using Warmup.Web;

namespace Warmup.Samples.Tests;

/// <summary>Files that are dropped on the page or chosen: what was read, and the drill that is made of it.</summary>
public sealed partial class ReadPageTests(WebApplicationFactory<Program> service) : IClassFixture<WebApplicationFactory<Program>>
{
    private static readonly Drill Mohanam = new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("D4"), Tempo = 72 };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> Drills => ["plain", "second speed", "line by line", "tisra", "long notes"];

    [Theory]
    [MemberData(nameof(Drills))]
    public async Task The_lines_of_a_notation_file_are_taken_as_a_drill_with_the_same_notes(string name)
    {
        var score = (name switch
        {
            "second speed" => Mohanam with { Speeds = [Speed.Second] },
            "line by line" => Mohanam with { Delivery = Delivery.LineByLine, CountIn = 1 },
            "tisra" => Mohanam with { Speeds = [Speed.OfGati(3)] },
            "long notes" => Mohanam with { Pattern = Pattern.Parse("ladder.stretch(3)"), Meter = Meter.Parse("3/4") },
            _ => Mohanam,
        }).ToScore();
        var taken = Take(await Read(Written(new MusicXmlFormat(), score), "drill.musicxml"));
        Assert.Equal(Notes(score), Notes(taken));
        Assert.Equal(score.Sections[0].Tempo, taken.Sections[0].Tempo);
        Assert.Equal(score.Sections[0].Meter, taken.Sections[0].Meter);
    }

    [Fact]
    public async Task A_MIDI_file_is_taken_with_its_proposed_scale_and_tonic_and_the_rule_is_found()
    {
        var score = Mohanam.ToScore();
        await using var patient = service.WithWebHostBuilder(host => host.UseSetting("Limits:RuleSeconds", "60").UseSetting("Limits:RequestSeconds", "90"));
        using var answer = await Post(patient, Written(new MidiFormat(), score), "drill.mid");
        var page = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Equal(Notes(score), Notes(Take(page)));
        Assert.Contains("Take the rule that gives them: ladder</a>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("S R G / R G M / G M P / M P D", true)]
    [InlineData("S R G / R G M / G M P / D P S'", false)]
    [InlineData("S R G , , / R G M , , / G M P -", false)]
    public void The_rule_of_all_lines_is_the_only_one_of_the_search_with_parts(string lines, bool isSure)
    {
        var section = MusicReader.Read(Encoding.UTF8.GetBytes(lines.Replace(" / ", "\n", StringComparison.Ordinal)), new ReadingOptions { Scale = Repertoire.UsualScale }).Sections[0];
        var all = RuleFinder.Find(section, Stop);
        var whole = RuleFinder.FindWhole(section, Stop);
        Assert.True(!isSure || whole is not null);
        Assert.Equal(all.Count == 1 && all[0].LastLine == section.Lines.Count && !all[0].IsByTonesAlone ? all[0] : null, whole);
    }

    [Fact]
    public async Task Typed_lines_are_read_in_the_scale_and_on_the_tonic_that_are_known()
    {
        var page = await Read("Morning <b>lines</b>\nS R G P\n2. R G P D"u8.ToArray(), "lines.txt", ("read-scale", "mohanam"), ("read-tonic", "A3"));
        Assert.Contains("Mohanam, S = A3", page, StringComparison.Ordinal);
        Assert.Contains("<li>S R G P</li><li>R G P D</li>", page, StringComparison.Ordinal);
        Assert.Contains("Morning &lt;b&gt;lines&lt;/b&gt;", page, StringComparison.Ordinal);
        Assert.Equal("Mohanam", Take(page).Sections[0].Scale.Name);
    }

    [Fact]
    public async Task Of_a_long_file_the_lines_are_taken_that_have_room_in_an_address()
    {
        var page = await Read(Encoding.UTF8.GetBytes(string.Join('\n', Enumerable.Repeat("S R G M P D N S'", 300))), "lines.txt");
        Assert.Matches("Take these lines as the drill \\([0-9]+ of 300 shown\\)", page);
        var link = Link(page);
        Assert.InRange(link.Length, 3_000, 7_500); // a request line may have 8 KiB (Kestrel's default)
        Assert.InRange(Take(page).Sections[0].Lines.Count, 50, 200);
    }

    [Theory]
    [InlineData("")]
    [InlineData("PK\u0003\u0004 no archive")]
    [InlineData("MThd no music")]
    [InlineData("<score-partwise><part></score-partwise>")]
    [InlineData("these are no notes at all")]
    [InlineData("\u0001\u0002\u0003")]
    public async Task What_cannot_be_read_is_refused_in_words(string content)
    {
        var page = await Read(Encoding.UTF8.GetBytes(content), "x.bin");
        Assert.Matches("The file was not read</p><p>[^<]{10,}</p>", page);
    }

    [Theory]
    [InlineData("read-scale", "nothing-like-it")]
    [InlineData("read-tonic", "H9")]
    public async Task A_wrong_scale_or_tonic_is_said(string name, string value) =>
        Assert.Contains("The file was not read", await Read("S R G"u8.ToArray(), "lines.txt", (name, value)), StringComparison.Ordinal);

    [Fact]
    public async Task Only_a_form_with_a_file_of_some_size_is_taken_and_nothing_of_it_reaches_the_disk()
    {
        using var client = service.CreateClient();
        using var plain = await client.PostAsync(new Uri("/read", UriKind.Relative), PageTests.Form(("music", "S R G")), Stop);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, plain.StatusCode);
        using var broken = new StringContent("--x\r\nnonsense");
        broken.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=x");
        using var cut = await client.PostAsync(new Uri("/read", UriKind.Relative), broken, Stop);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, cut.StatusCode);
        using var large = await Post(new byte[Guard.MostFileBytes + 100_000], "x.mid");
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);

        // The framework's own reader of such forms names its files so.
        string[] Left() => Directory.GetFiles(Path.GetTempPath(), "ASPNETCORE_*");
        var before = Left();
        using var nearly = await Post(new byte[Guard.MostFileBytes - 1000], "x.mid");
        Assert.Equal(HttpStatusCode.OK, nearly.StatusCode);
        Assert.Equal(before, Left());
    }

    [GeneratedRegex("<a class=\"apply\" href=\"(?<to>[^\"]*)\">Take these lines")]
    private static partial Regex Use();

    private static string Link(string page) => WebUtility.HtmlDecode(Use().Match(page).Groups["to"].Value);

    private static List<(Rational Onset, Rational Length, ScaleTone Tone, int Line)> Notes(Score score) =>
        [.. score.Sections[0].Notes.Select(n => (n.Onset, n.Length, score.Sections[0].PitchOf(n).Tone, n.LineIndex))];

    private static byte[] Written(IScoreFormat format, Score score)
    {
        using var bytes = new MemoryStream();
        format.Write(score, bytes, Stop);
        return bytes.ToArray();
    }

    // The drill that the page's link means, as the page itself reads it.
    private static Score Take(string page)
    {
        var values = QueryHelpers.ParseQuery(Link(page).TrimStart('/'));
        var errors = new List<QueryError>();
        var request = DrillQuery.Read(PageState.Read(PageForm.Drill, values, isClassInAddress: true, new Limits(), errors).ToDrill(), new Limits(), errors);
        Assert.Empty(errors);
        Assert.True(request!.TryMake(new Limits(), Stop, out _, out var score, out var refusal), refusal?.Message);
        return score;
    }

    private async Task<string> Read(byte[] file, string name, params (string Name, string Value)[] values)
    {
        using var answer = await Post(file, name, values);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Stop);
    }

    private Task<HttpResponseMessage> Post(byte[] file, string name, params (string Name, string Value)[] values) => Post(service, file, name, values);

    private static async Task<HttpResponseMessage> Post(WebApplicationFactory<Program> service, byte[] file, string name, params (string Name, string Value)[] values)
    {
        using var client = service.CreateClient();
        using var form = new MultipartFormDataContent();
        foreach (var (field, value) in values)
        {
            form.Add(new StringContent(value), field);
        }

        form.Add(new ByteArrayContent(file), "music", name);
        return await client.PostAsync(new Uri("/read", UriKind.Relative), form, Stop);
    }
}

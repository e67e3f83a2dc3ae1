using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.Configuration;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;
using Warmup.Web;

namespace Warmup.Samples.Tests;

/// <summary>The web sample over HTTP, as RFC 9110 (methods, negotiation, tags) and RFC 9457 (problem details) want it.</summary>
public sealed partial class WebTests : IClassFixture<WebApplicationFactory<Program>>
{
    private const string Query = "?scale=mohanam&pattern=ladder&tonic=G3&tempo=72&tuning=just&delivery=line-by-line";

    private static readonly Score Same = new Drill
    {
        Scale = Catalogue.Default.Read("mohanam"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("G3"),
        Tempo = 72,
        Tuning = Tuning.Just,
        Delivery = Delivery.LineByLine,
    }.ToScore();

    private readonly HttpClient _client;

    public WebTests(WebApplicationFactory<Program> service) => _client = service.CreateClient();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string, string> Endings => new()
    {
        { "html", "text/html; charset=utf-8" },
        { "mid", "audio/midi" },
        { "musicxml", "application/vnd.recordare.musicxml+xml" },
    };

    [Theory]
    [MemberData(nameof(Endings))]
    public async Task The_ending_chooses_the_format_and_the_bytes_are_the_librarys(string ending, string contentType)
    {
        using var answer = await _client.GetAsync($"/drill.{ending}{Query}", Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(contentType, answer.Content.Headers.ContentType?.ToString());
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal(Written(ending), await answer.Content.ReadAsByteArrayAsync(Stop));
    }

    [Theory]
    [InlineData(null, "text/html")]
    [InlineData("*/*", "text/html")]
    [InlineData("audio/*", "audio/midi")]
    [InlineData("application/vnd.recordare.musicxml+xml, text/html;q=0.5", "application/vnd.recordare.musicxml+xml")]
    [InlineData("*/*;q=0.9, text/html;q=0.1, audio/midi;q=0.2", "application/vnd.recordare.musicxml+xml")]
    [InlineData("text/html;q=0, audio/midi", "audio/midi")]
    public async Task The_accept_header_chooses_the_format(string? accept, string contentType)
    {
        using var answer = await Get("/drill" + Query, ("Accept", accept));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(contentType, answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("Accept", Assert.Single(answer.Headers.Vary));
    }

    [Theory]
    [InlineData("image/png")]
    [InlineData("text/html;q=0")]
    public async Task What_is_not_offered_is_not_acceptable(string accept)
    {
        using var answer = await Get("/drill" + Query, ("Accept", accept));
        Assert.Equal(HttpStatusCode.NotAcceptable, answer.StatusCode);
        Assert.Contains("audio/midi", (await Problem(answer)).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/drill.ogg" + Query)]
    [InlineData("/somewhere")]
    public async Task An_unknown_ending_or_path_is_not_found(string path)
    {
        using var answer = await _client.GetAsync(path, Stop);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal(404, (await Problem(answer)).GetProperty("status").GetInt32());
    }

    [Fact]
    public async Task Another_method_is_not_allowed()
    {
        using var answer = await _client.DeleteAsync("/drill.mid" + Query, Stop);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
        Assert.Contains("GET", answer.Content.Headers.Allow);
        await Problem(answer);
    }

    [Fact]
    public async Task A_request_with_content_is_too_large()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/drill.mid" + Query) { Content = new StringContent("a") };
        using var answer = await _client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        await Problem(answer);
    }

    [Fact]
    public async Task The_tag_stays_and_an_unchanged_drill_is_not_sent_again()
    {
        using var first = await _client.GetAsync("/drill.mid" + Query, Stop);
        var tag = first.Headers.ETag!;
        Assert.False(tag.IsWeak);
        using var again = await Get("/drill.mid" + Query, ("If-None-Match", tag.ToString()));
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        Assert.Equal(tag, again.Headers.ETag);
        Assert.Empty(await again.Content.ReadAsByteArrayAsync(Stop));
        using var other = await Get("/drill.mid" + Query.Replace("72", "73", StringComparison.Ordinal), ("If-None-Match", tag.ToString()));
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
        Assert.NotEqual(tag, other.Headers.ETag);
    }

    [Fact]
    public async Task Head_has_the_headers_of_get_and_no_content()
    {
        using var request = new HttpRequestMessage(HttpMethod.Head, "/drill.mid" + Query);
        using var answer = await _client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(Written("mid").Length, answer.Content.Headers.ContentLength);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Stop));
    }

    // In "S R9 P" the unknown svara begins in column 3; "ladder.revers" has a word behind its dot in column 8.
    [Theory]
    [InlineData("scale=S+R9+P&pattern=ladder&tonic=G3", "scale", 3)]
    [InlineData("scale=mohanam&pattern=ladder.revers&tonic=G3", "pattern", 8)]
    [InlineData("scale=mohanam&pattern=ladder&tonic=H3", "tonic", 1)]
    [InlineData("scale=mohanam&pattern=ladder&tonic=G3&tempo=29", "tempo", 1)]
    [InlineData("scale=mohanam&pattern=ladder&tonic=G3&tempo=fast", "tempo", 1)]
    [InlineData("scale=mohanam&pattern=ladder&tonic=G3&tuning=loud", "tuning", 1)]
    [InlineData("pattern=ladder&tonic=G3", "scale", null)]
    [InlineData("scale=mohanam&scale=kalyani&pattern=ladder&tonic=G3", "scale", null)]
    [InlineData("scale=mohanam&pattern=ladder&tonic=G3&tepmo=60", "tepmo", null)]
    public async Task A_wrong_value_is_named_with_its_place_and_what_would_mend_it(string query, string parameter, int? column)
    {
        using var answer = await _client.GetAsync("/drill.mid?" + query, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var error = Assert.Single((await Problem(answer)).GetProperty("errors").EnumerateArray());
        Assert.Equal(parameter, error.GetProperty("parameter").GetString());
        Assert.Equal(column, error.GetProperty("column") is { ValueKind: JsonValueKind.Number } number ? number.GetInt32() : null);
        Assert.NotEqual(string.Empty, error.GetProperty("message").GetString());
    }

    [Fact]
    public async Task All_wrong_values_are_told_at_once()
    {
        using var answer = await _client.GetAsync("/drill.mid?scale=nothing-like-it&pattern=sing&tonic=H&tempo=0", Stop);
        var errors = (await Problem(answer)).GetProperty("errors").EnumerateArray().Select(e => e.GetProperty("parameter").GetString());
        Assert.Equal(["scale", "pattern", "tonic", "tempo"], errors);
    }

    [Fact]
    public async Task A_text_that_is_too_long_is_refused_with_the_limit()
    {
        using var answer = await _client.GetAsync($"/drill.mid?scale=mohanam&tonic=G3&pattern={string.Join('+', Enumerable.Repeat("run", 600))}", Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("at most 2000 characters", (await Problem(answer)).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_many_notes_are_refused_with_the_limit_and_the_fix()
    {
        // The ladder has 20 notes in Mohanam: 101 times are 2,020, and the service allows 2,000.
        using var answer = await _client.GetAsync("/drill.mid?scale=mohanam&tonic=G3&pattern=ladder.repeat(101)", Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await Problem(answer);
        Assert.Contains("at most 2000 notes here, not 2020", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.NotEqual(string.Empty, problem.GetProperty("fix").GetString());
    }

    [Fact]
    public async Task A_line_that_the_scale_refuses_is_a_problem_with_a_fix()
    {
        using var answer = await _client.GetAsync("/drill.mid?scale=mohanam&tonic=G3&pattern=[S+M]", Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await Problem(answer);
        Assert.Contains("Mohanam", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.NotEqual(string.Empty, problem.GetProperty("fix").GetString());
    }

    [Fact]
    public async Task The_requests_of_its_page_are_answered_as_the_page_says()
    {
        var page = File.ReadAllText(SourceTree.At("docs/embed.md"));
        var requests = Request().Matches(page);
        Assert.True(requests.Count >= 6);
        foreach (Match request in requests)
        {
            using var answer = await _client.GetAsync(request.Groups["path"].Value, Stop);
            Assert.True((int)answer.StatusCode == int.Parse(request.Groups["status"].Value, CultureInfo.InvariantCulture), $"{request.Value}: {(int)answer.StatusCode}");
        }
    }

    [Fact]
    public async Task It_serves_over_a_real_connection()
    {
        using var service = new WebApplicationFactory<Program>();
        service.UseKestrel(0);
        using var client = service.CreateClient();
        Assert.True(client.BaseAddress!.IsLoopback);
        Assert.Equal(Written("mid"), await client.GetByteArrayAsync("/drill.mid" + Query, Stop));
        using var tooLong = await client.GetAsync("/drill.mid?scale=" + new string('S', 20_000), Stop);
        Assert.Equal(HttpStatusCode.RequestUriTooLong, tooLong.StatusCode);
    }

    [Fact]
    public void It_listens_on_this_machine_only_unless_asked_otherwise()
    {
        var usual = new Uri(Addresses.Of(new ConfigurationBuilder().Build()));
        Assert.True(IPAddress.IsLoopback(IPAddress.Parse(usual.Host)));
        var asked = new ConfigurationBuilder().AddInMemoryCollection([new("urls", "http://0.0.0.0:80")]).Build();
        Assert.Equal("http://0.0.0.0:80", Addresses.Of(asked));
        Assert.Null(Guard.Refusal(Addresses.Of(new ConfigurationBuilder().Build()), null));
        Assert.Contains("--token", Guard.Refusal("http://127.0.0.1:5080;http://0.0.0.0:80", null), StringComparison.Ordinal);
        Assert.Contains("at least 16", Guard.Refusal("http://0.0.0.0:80", "short"), StringComparison.Ordinal);
        Assert.Null(Guard.Refusal("http://0.0.0.0:80", "sixteen-letters-"));
    }

    [GeneratedRegex("^GET (?<path>\\S+) # (?<status>\\d+)\\r?$", RegexOptions.Multiline)]
    private static partial Regex Request();

    internal static byte[] Written(string ending)
    {
        IScoreFormat format = ending switch { "html" => new HtmlFormat(), "mid" => new MidiFormat(), _ => new MusicXmlFormat() };
        using var bytes = new MemoryStream();
        format.Write(Same, bytes, Stop);
        return bytes.ToArray();
    }

    internal static async Task<JsonElement> Problem(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop));
        Assert.Equal((int)answer.StatusCode, json.RootElement.GetProperty("status").GetInt32());
        Assert.NotEqual(string.Empty, json.RootElement.GetProperty("title").GetString());
        return json.RootElement.Clone();
    }

    private async Task<HttpResponseMessage> Get(string path, (string Name, string? Value) header)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (header.Value is not null)
        {
            request.Headers.TryAddWithoutValidation(header.Name, header.Value);
        }

        return await _client.SendAsync(request, Stop);
    }
}

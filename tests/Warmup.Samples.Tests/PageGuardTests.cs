using System.Net;
using System.Text;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace Warmup.Samples.Tests;

/// <summary>What nobody should send to the page, and who may not ask.</summary>
public sealed class PageGuardTests : IDisposable
{
    private const string Token = "a-token-of-enough-letters";

    private static readonly string[] Names =
        ["scale", "find", "from", "exercise", "written", "pattern", "lines", "tonic", "tuning", "syllables", "tempo", "tala", "speeds", "gati", "delivery", "fill", "fill-by", "breath", "breaths", "class", "add-alias",
         "title", "repeat", "count-in", "eduppu", "drone", "drone-string", "climb", "cue"];

    private static readonly string[] PlanNames = ["scales", "start", "days", "minutes", "level", "tempo", "tonic", "tuning", "climb", "rest", "no-repeat", "least", "seed", "day", "class", "log", "add-alias"];

    private readonly WebApplicationFactory<Program> _service = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _service.Dispose();

    [Fact]
    public async Task Nothing_that_is_sent_breaks_the_page_or_becomes_a_tag()
    {
        using var client = _service.CreateClient();
        string[] bad = ["<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "' autofocus onfocus=alert(1) x='", "\0\u202e\ud800", new('S', 600), "-1", "99999999999999999999", "{", "{\"schema\":\"urn:warmup:singers:9\"}", "=1+1", "../../etc/passwd", "%s%n", "[[[[", "((((", "1-9999999", "trikalam,,,", "0/0", "nan", "1e309"];
        foreach (var (path, name) in Names.Select(n => ("/", n)).Concat(PlanNames.Select(n => ("/plan", n))))
        {
            foreach (var value in WholeCheck.OneIn(2, bad, name.Length))
            {
                (string, string)[] usual = path == "/" ? [("from", name is "written" ? "written" : name is "pattern" ? "words" : "exercise")] : name is "class" or "start" ? [] : [("class", "Wren,G3,E5,18"), ("start", "2026-12-01"), ("days", "2")];
                using var form = PageTests.Form([(name, value), .. usual.Where(u => u.Item1 != name)]);
                using var answer = await client.PostAsync(new Uri(path, UriKind.Relative), form, Stop);
                var page = await answer.Content.ReadAsStringAsync(Stop);
                Assert.True((int)answer.StatusCode is 200 or 400 or 415, $"{path} {name}={value}: {answer.StatusCode}");
                using var read = await client.GetAsync($"{path}?{name}={Uri.EscapeDataString(value)}", Stop);
                Assert.True((int)read.StatusCode is 200 or 400, $"GET {name}={value}: {read.StatusCode}");
                page += await read.Content.ReadAsStringAsync(Stop);
                Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
                Assert.DoesNotContain("<img src=x", page, StringComparison.Ordinal);
                Assert.DoesNotContain("' autofocus", page, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [InlineData("tonic=H9", "Tonic")]
    [InlineData("tempo=5", "Tempo")]
    [InlineData("scale=nothing-like-it", "Scale")]
    [InlineData("tonic=C4&tonic=D4", "must be given once")]
    [InlineData("class=Wren,H3,E5,18", "Wren")]
    [InlineData("class=Wren,G3,E5", "cells")]
    [InlineData("lines=99", "there is no line 99")]
    [InlineData("from=words&pattern=ladder.repeat(500)", "at most 2000 notes")]
    [InlineData("repeat=200", "at most 2000 notes")]
    [InlineData("repeat=0", "between 1 and 1000")]
    [InlineData("count-in=9", "between 0 and 8")]
    [InlineData("count-in=1&tala=free", "needs a meter")]
    [InlineData("eduppu=1/3", "Eduppu")]
    [InlineData("eduppu=1/2&tala=free", "needs a meter")]
    [InlineData("drone=harp", "Drone")]
    [InlineData("drone-string=X", "svara such as P")]
    [InlineData("drone=none&drone-string=P", "needs a drone")]
    [InlineData("climb=25", "between 1 and 24")]
    [InlineData("climb=12&tonic=C7", "beyond C7")]
    [InlineData("climb=3&drone=tanpura", "would sound against a climb")]
    [InlineData("cue=chord", "belongs to a climb")]
    [InlineData("title=a%0Ab", "plain text in one line")]
    public async Task What_is_wrong_is_said_on_the_page(string query, string said)
    {
        using var client = _service.CreateClient();
        using var answer = await client.GetAsync("/?" + query, Stop);
        var page = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Contains("role=\"alert\"", page, StringComparison.Ordinal);
        Assert.Contains(said, page[page.IndexOf("role=\"alert\"", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_class_has_a_limit_of_singers_and_of_letters()
    {
        using var client = _service.CreateClient();
        foreach (var (lines, said) in ((int, string)[])[(41, "at most 40 singers"), (2_000, "at most 20000 characters")])
        {
            using var form = PageTests.Form(("class", string.Join('\n', Enumerable.Range(1, lines).Select(n => $"Wren{n},G3,E5,18,beginner"))));
            using var answer = await client.PostAsync(new Uri("/", UriKind.Relative), form, Stop);
            Assert.Contains(said, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("text/plain", 10, 415)]
    [InlineData("multipart/form-data; boundary=x", 10, 415)]
    [InlineData("application/json", 10, 415)]
    [InlineData("application/x-www-form-urlencoded", 200_001, 413)]
    public async Task Only_a_form_of_some_size_is_taken(string type, int length, int status)
    {
        using var client = _service.CreateClient();
        using var content = new StringContent(new string('a', length), Encoding.ASCII);
        content.Headers.ContentType = System.Net.Http.Headers.MediaTypeHeaderValue.Parse(type);
        using var answer = await client.PostAsync(new Uri("/", UriKind.Relative), content, Stop);
        Assert.Equal(status, (int)answer.StatusCode);
    }

    [Fact]
    public async Task The_page_may_load_nothing_from_elsewhere_and_may_not_be_framed()
    {
        using var client = _service.CreateClient();
        using var answer = await client.GetAsync("/", Stop);
        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        Assert.StartsWith("default-src 'none';", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.True(answer.Headers.CacheControl!.NoStore);
        using var file = await client.GetAsync("/drill.svg?scale=mohanam&pattern=run&tonic=G3", Stop);
        Assert.Equal("frame-ancestors 'none'", Assert.Single(file.Headers.GetValues("Content-Security-Policy")));
    }

    [Theory]
    [InlineData("Host", "studio.example", 421)]
    [InlineData("Host", "127.0.0.1.studio.example", 421)]
    [InlineData("Host", "localhost.", 421)]
    [InlineData("Host", "127.0.0.1:5080", 200)]
    [InlineData("Host", "[::1]:5080", 200)]
    [InlineData("Sec-Fetch-Site", "cross-site", 403)]
    [InlineData("Sec-Fetch-Site", "same-site", 403)]
    [InlineData("Sec-Fetch-Site", "same-origin", 200)]
    [InlineData("Sec-Fetch-Site", "none", 200)]
    [InlineData("Origin", "http://studio.example", 403)]
    [InlineData("Origin", "null", 403)]
    [InlineData("Origin", "http://localhost", 200)]
    public async Task Only_this_machine_and_the_page_itself_may_ask(string header, string value, int status)
    {
        using var client = _service.CreateClient();
        foreach (var path in (string[])["/", "/drill.mid?scale=mohanam&pattern=run&tonic=G3"])
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.TryAddWithoutValidation(header, value);
            using var answer = await client.SendAsync(request, Stop);
            Assert.Equal(status, (int)answer.StatusCode);
        }
    }

    [Theory]
    [InlineData("GET", "/", "document", 200)]
    [InlineData("GET", "/", "iframe", 403)]
    [InlineData("GET", "/drill.mid?scale=mohanam&pattern=run&tonic=G3", "document", 403)]
    [InlineData("POST", "/", "document", 403)]
    public async Task A_link_from_elsewhere_leads_to_the_page_and_to_nothing_else(string method, string path, string destination, int status)
    {
        using var client = _service.CreateClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        request.Headers.Add("Sec-Fetch-Mode", "navigate");
        request.Headers.Add("Sec-Fetch-Dest", destination);
        using var answer = await client.SendAsync(request, Stop);
        Assert.Equal(status, (int)answer.StatusCode);
    }

    [Fact]
    public async Task With_a_token_only_its_address_opens_the_page_and_the_cookie_keeps_it_open()
    {
        await using var service = _service.WithWebHostBuilder(host => host.UseSetting("token", Token));
        using var client = service.CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });
        foreach (var path in (string[])["/", "/plan", "/?token=a-token-of-other-letters", "/page.js", "/drill.mid?scale=mohanam&pattern=run&tonic=G3"])
        {
            using var refused = await client.GetAsync(path, Stop);
            Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
        }

        using var entrance = await client.GetAsync($"/?tonic=D4&token={Token}", Stop);
        Assert.Equal("/?tonic=D4", entrance.Headers.Location?.ToString());
        var cookie = Assert.Single(entrance.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(Token, cookie, StringComparison.Ordinal);
        using var inside = await client.GetAsync("/?tonic=D4", Stop);
        Assert.Equal(HttpStatusCode.OK, inside.StatusCode);
    }
}

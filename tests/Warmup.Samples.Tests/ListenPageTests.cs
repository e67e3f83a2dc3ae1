using System.Net;
using System.Net.Http.Headers;
using Microsoft.AspNetCore.Mvc.Testing;
using Warmup.Audio;
using Warmup.Web;

namespace Warmup.Samples.Tests;

/// <summary>Recordings that are held against the drill of the page. The takes are the library's own guide tone, of which everything is known.</summary>
public sealed class ListenPageTests(WebApplicationFactory<Program> service) : IClassFixture<WebApplicationFactory<Program>>
{
    private const string Query = "?scale=mohanam&pattern=ladder&tonic=G3&tempo=120";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_take_of_the_drill_is_heard_note_by_note()
    {
        var report = await Report(Sung("ladder"));
        Assert.Contains("20 notes were heard, 20 of them in tune", report, StringComparison.Ordinal);
        Assert.Contains("<svg", report, StringComparison.Ordinal);
        Assert.DoesNotContain("<style", report, StringComparison.Ordinal);
        Assert.DoesNotContain("style=", report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_note_is_named()
    {
        // In the fourth line S is sung for P.
        var report = await Report(Sung("S R / S R G / S R G P / S R G S D / S R G P D S'"));
        Assert.Contains("20 notes were heard, 19 of them in tune", report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Silence_is_not_judged() => Assert.Contains("This is not the drill", await Report(Wav(new short[48_000 * 3])), StringComparison.Ordinal);

    [Theory]
    [InlineData("text/plain", 415)]
    [InlineData("application/x-www-form-urlencoded", 415)]
    [InlineData("audio/wav", 400)]
    public async Task What_is_no_recording_is_refused_in_words(string type, int status)
    {
        using var answer = await Post("no sound at all"u8.ToArray(), type);
        Assert.Equal(status, (int)answer.StatusCode);
        Assert.NotEqual(string.Empty, (await WebTests.Problem(answer)).GetProperty("detail").GetString());
    }

    [Fact]
    public async Task A_recording_of_more_than_half_an_hour_and_one_from_another_site_are_turned_away()
    {
        using var client = service.CreateClient();
        using var content = new ByteArrayContent([1, 2, 3]);
        content.Headers.ContentType = MediaTypeHeaderValue.Parse("audio/wav");
        content.Headers.ContentLength = Guard.MostTakeBytes + 1L;
        using var large = await client.PostAsync(new Uri("/listen" + Query, UriKind.Relative), content, Stop);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/listen" + Query) { Content = new ByteArrayContent(Sung("ladder")) };
        request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse("audio/wav");
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        using var foreign = await client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.Forbidden, foreign.StatusCode);
    }

    [Fact]
    public async Task A_wrong_drill_is_told_before_the_recording_is_heard()
    {
        using var answer = await Post(Sung("ladder"), "audio/wav", "?scale=mohanam&pattern=ladder&tonic=H9");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("tonic", (await WebTests.Problem(answer)).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    private static byte[] Sung(string pattern)
    {
        var score = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse(pattern.Contains(' ', StringComparison.Ordinal) ? $"[{pattern}]" : pattern), Tonic = Tonic.Parse("G3"), Tempo = 120 }.ToScore();
        using var bytes = new MemoryStream();
        new WavFormat(new WavOptions { HasDrone = false, HasBeat = false, CountInBeats = 0, Channels = WavChannels.Mono, SampleRate = 48_000 }).Write(score, bytes, Stop);
        return bytes.ToArray();
    }

    private static byte[] Wav(short[] samples)
    {
        using var bytes = new MemoryStream();
        using var writer = new BinaryWriter(bytes);
        writer.Write("RIFF"u8);
        writer.Write(36 + (samples.Length * 2));
        writer.Write("WAVEfmt "u8);
        foreach (var number in (int[])[16, 0x0001_0001, 48_000, 96_000, 0x0010_0002])
        {
            writer.Write(number);
        }

        writer.Write("data"u8);
        writer.Write(samples.Length * 2);
        foreach (var sample in samples)
        {
            writer.Write(sample);
        }

        return bytes.ToArray();
    }

    private async Task<string> Report(byte[] take)
    {
        using var answer = await Post(take, "audio/wav");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Stop);
    }

    private async Task<HttpResponseMessage> Post(byte[] take, string type, string query = Query)
    {
        using var client = service.CreateClient();
        using var content = new ByteArrayContent(take);
        content.Headers.ContentType = MediaTypeHeaderValue.Parse(type);
        return await client.PostAsync(new Uri("/listen" + query, UriKind.Relative), content, Stop);
    }
}

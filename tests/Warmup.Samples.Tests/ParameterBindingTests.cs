using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;

namespace Warmup.Samples.Tests;

/// <summary>Source: ASP.NET's minimal APIs, which read a parameter from the address by the parameter type's <see cref="IParsable{TSelf}"/>.</summary>
public sealed class ParameterBindingTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_text_form_is_a_parameter_of_a_minimal_API()
    {
        await using var app = Of(app =>
        {
            app.MapGet("/pitch/{degree}/{tone}", (Degree degree, ScaleTone tone, NoteName note, Interval interval, Tonic tonic) => Results.Text($"{degree} {tone} {note} {interval} {tonic.ToText()}"));
            app.MapGet("/time", (Rational number, Speed speed, TempoRamp tempo, Meter meter, Anga anga) => Results.Text($"{number} {speed} {tempo} {meter.ToText()} {anga}"));
            app.MapGet("/drill", (Scale scale, ScaleKind kind, Tuning tuning, Syllables syllables, Pattern pattern, Tonic? tonic) =>
                Results.Text($"{scale.ToText()} {kind} {tuning.ToText()} {syllables.ToText()} {pattern} {tonic is null}"));
        });
        await app.StartAsync(Stop);
        using var client = app.GetTestClient();
        Assert.Equal("R2 N3_ G3 5/4 A3", await client.GetStringAsync("/pitch/R2/N3_?note=G3&interval=5/4&tonic=A3", Stop));
        Assert.Equal(
            "145/2 tisra nadai, three to two aksharas 60 to 90 by 5 own: I4 + O clap silent",
            await client.GetStringAsync("/time?number=72.5&speed=2,gati+3&tempo=60+to+90+by+5&meter=own:I4%2BO&anga=clap+silent", Stop));
        Assert.Equal(
            "own = S R2 G3 P D2 S' audava just, R2 10/9 solfa ladder.ends True",
            await client.GetStringAsync("/drill?scale=own%3DS+R2+G3+P+D2+S'&kind=audava&tuning=just,R2+10/9&syllables=solfa&pattern=ladder.ends", Stop));
    }

    [Fact]
    public async Task What_is_not_such_a_value_is_a_bad_request()
    {
        await using var app = Of(app => app.MapGet("/", (Speed speed, Scale? scale) => Results.Text($"{speed} {scale}")));
        await app.StartAsync(Stop);
        using var client = app.GetTestClient();
        foreach (var (query, status) in ((string, HttpStatusCode)[])[("speed=2", HttpStatusCode.OK), ("speed=5", HttpStatusCode.BadRequest), ("speed=2&scale=S+R9", HttpStatusCode.BadRequest), ("", HttpStatusCode.BadRequest)])
        {
            using var answer = await client.GetAsync($"/?{query}", Stop);
            Assert.Equal(status, answer.StatusCode);
        }
    }

    private static WebApplication Of(Action<WebApplication> map)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseTestServer();
        var app = builder.Build();
        map(app);
        return app;
    }
}

using System.Net;
using Microsoft.AspNetCore.Mvc.Testing;

namespace Warmup.Samples.Tests;

/// <summary>Whatever stands in a query, the service answers with a drill or says what is wrong: never with an error of its own.</summary>
public sealed class WebInputTests(WebApplicationFactory<Program> service) : IClassFixture<WebApplicationFactory<Program>>
{
    private static readonly string[] Scales =
    [
        "mohanam", "15", "bilahari", "kedaram", "nadanamakriya", "darbar", "blues", "chromatic", "S R2 G3 P D2 S'", "semitones: 0 2 4 7 9", "vakra: S G3 R2 S'",
        "1 b3 4 b5 5 b7 1'", "S X", "/", "\u202e", "\0", "\ud800", " ", "SSSS", "-1", "73",
    ];

    private static readonly string[] Patterns =
    [
        "ladder", "ladder.reversed.ends", "ladder.above(7)", "run.span(-20 20)", "[S , ; - R / G]", "[1 25 -24]", "ladder.repeat(90)", "run.stretch(4096)",
        "run.shrink(4096)", "run.stretch(64).stretch(64)", "run.shrink(7).rhythm(1 3)", "empty", "run.rest(4096)", "run.hold(4000)", "figure(1 10 -9)", "run.weave(ladder)",
        "run.rhythm(4096 1).shrink(17)", "run.sung([x])", "run.sung(=1)", "(", "ladder.", "[", "+", "ladder.repeat(99999999999999999999)",
    ];

    private static readonly string[] Tonics = ["G3", "5.5", "220Hz", "C1", "C7", "C8", "Cb4", "G##3", "20Hz", "1e9Hz", "NaNHz", "-5", "8.5", "H"];

    [Fact]
    public async Task No_query_is_an_error_of_the_service()
    {
        using var client = service.CreateClient();
        var statuses = new HashSet<HttpStatusCode>();
        var n = 0;
        foreach (var scale in Scales)
        {
            foreach (var pattern in Patterns)
            {
                var tonic = Tonics[n % Tonics.Length];
                var ending = (n++ % 3) switch { 0 => "mid", 1 => "musicxml", _ => "html" };
                var query = $"/drill.{ending}?scale={Uri.EscapeDataString(scale)}&pattern={Uri.EscapeDataString(pattern)}&tonic={Uri.EscapeDataString(tonic)}";
                using var answer = await client.GetAsync(query, TestContext.Current.CancellationToken);
                statuses.Add(answer.StatusCode);
                Assert.True(answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.BadRequest, $"{query}: {(int)answer.StatusCode}");
                if (answer.StatusCode == HttpStatusCode.BadRequest)
                {
                    await WebTests.Problem(answer);
                }
            }
        }

        Assert.Equal(2, statuses.Count);
    }
}

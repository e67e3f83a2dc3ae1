using System.Diagnostics;
using System.Diagnostics.Metrics;
using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Warmup.Web;

namespace Warmup.Samples.Tests;

/// <summary>Source: docs/telemetry.md, and what was asked for here.</summary>
public sealed class WebTelemetryTests : IDisposable
{
    private const string Token = "a-token-of-enough-letters";

    private readonly WebApplicationFactory<Program> _service = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _service.Dispose();

    [Fact]
    public async Task A_drill_is_told_by_its_format_and_why_there_is_none()
    {
        var told = new List<(string? Format, string? Error)>();
        using var listener = new MeterListener
        {
            InstrumentPublished = (instrument, listening) =>
            {
                if (instrument.Meter.Name == WebTelemetry.Name)
                {
                    listening.EnableMeasurementEvents(instrument);
                }
            },
        };
        listener.SetMeasurementEventCallback<long>((instrument, value, tags, _) =>
        {
            var named = tags.ToArray().ToDictionary(t => t.Key, t => (string?)t.Value);
            lock (told)
            {
                told.Add((named["warmup.web.format"], named.GetValueOrDefault("error.type")));
            }

            Assert.Equal(("warmup.web.drills", "{drill}", 1L), (instrument.Name, instrument.Unit, value));
            Assert.InRange(named.Count, 1, 2);
        });
        listener.Start();
        var activities = new List<Activity>();
        using var watching = new ActivityListener
        {
            ShouldListenTo = source => source.Name == WebTelemetry.Name,
            Sample = (ref _) => ActivitySamplingResult.AllData,
            ActivityStopped = activity =>
            {
                lock (activities)
                {
                    activities.Add(activity);
                }
            },
        };
        ActivitySource.AddActivityListener(watching);
        using var client = _service.CreateClient();
        (await client.GetAsync(new Uri("/drill.smf-telemetry", UriKind.Relative), Stop)).Dispose(); // no such format: no drill
        (await client.GetAsync(new Uri("/drill.mid?scale=mohanam&pattern=ladder&tonic=G3", UriKind.Relative), Stop)).Dispose();
        (await client.GetAsync(new Uri("/drill.mid?scale=typed-secret", UriKind.Relative), Stop)).Dispose();

        // Other tests ask at the same time, for other things, so that both lists go on growing.
        var toldSoFar = Copied(told);
        Assert.Contains(("mid", null), toldSoFar);
        Assert.Contains(("mid", "query"), toldSoFar);
        Assert.DoesNotContain(toldSoFar, t => t.Format == "smf-telemetry");
        var activitiesSoFar = Copied(activities);
        Assert.Contains(activitiesSoFar, a => a.OperationName == "warmup.web.drill" && a.Status == ActivityStatusCode.Error);
        Assert.DoesNotContain(activitiesSoFar.SelectMany(a => a.TagObjects), tag => $"{tag.Value}".Contains("typed", StringComparison.Ordinal));
    }

    private static List<T> Copied<T>(List<T> growing)
    {
        lock (growing)
        {
            return [.. growing];
        }
    }

    [Fact]
    public async Task Prometheus_is_answered_only_where_that_was_asked_for()
    {
        using (var client = _service.CreateClient())
        {
            using var none = await client.GetAsync(new Uri("/metrics", UriKind.Relative), Stop);
            Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        }

        await using var service = _service.WithWebHostBuilder(host => host.UseSetting("metrics", "true"));
        using var asking = service.CreateClient();
        (await asking.GetAsync(new Uri("/drill.mid?scale=mohanam&pattern=ladder&tonic=G3", UriKind.Relative), Stop)).Dispose();

        // How long a request took is counted after its answer was sent, so that it may not be there at once.
        const string Took = "http_server_request_duration_seconds_count{";
        var text = string.Empty;
        for (var i = 0; i < 100 && !text.Contains(Took, StringComparison.Ordinal); i++)
        {
            await Task.Delay(i == 0 ? 0 : 100, Stop);
            text = await asking.GetStringAsync(new Uri("/metrics", UriKind.Relative), Stop);
        }

        var line = Assert.Single(text.Split('\n'), l => l.StartsWith("warmup_web_drills_total{", StringComparison.Ordinal) && l.Contains("warmup_web_format=\"mid\"", StringComparison.Ordinal) && !l.Contains("error_type", StringComparison.Ordinal));
        Assert.True(double.Parse(line.Split(' ')[1], CultureInfo.InvariantCulture) >= 1, line);
        Assert.Contains(Took, text, StringComparison.Ordinal);
        Assert.DoesNotContain("mohanam", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Where_a_token_is_asked_for_Prometheus_sends_it_as_a_header()
    {
        await using var service = _service.WithWebHostBuilder(host => host.UseSetting("metrics", "true").UseSetting("token", Token));
        using var client = service.CreateClient();
        foreach (var (token, expected) in ((string?, HttpStatusCode)[])[(null, HttpStatusCode.Unauthorized), ("another-token-of-letters", HttpStatusCode.Unauthorized), (Token, HttpStatusCode.OK)])
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("/metrics", UriKind.Relative));
            request.Headers.Authorization = token is null ? null : new AuthenticationHeaderValue("Bearer", token);
            using var answer = await client.SendAsync(request, Stop);
            Assert.Equal(expected, answer.StatusCode);
        }
    }
}

using System.Diagnostics.Metrics;
using System.Net;
using System.Net.Sockets;
using Akka.Actor;

namespace Warmup.ManyMachines.Tests;

/// <summary>Source: docs/telemetry.md, and what was done here.</summary>
public sealed class TelemetryTests : IDisposable
{
    private static readonly PatternJob Job = new() { Words = "ladder run .ends .reversed", Size = 3, Scales = "Mohanam", RangeLength = 30 };

    private readonly TestFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_run_is_told_to_listeners_and_to_Prometheus()
    {
        var sums = new Dictionary<string, double>();
        var units = new Dictionary<string, string?>();
        void Add(Instrument instrument, double value)
        {
            lock (sums)
            {
                sums[instrument.Name] = sums.GetValueOrDefault(instrument.Name) + value;
                units[instrument.Name] = instrument.Unit;
            }
        }

        using var listener = new MeterListener
        {
            InstrumentPublished = (instrument, listening) =>
            {
                if (instrument.Meter.Name == ClusterTelemetry.Name)
                {
                    listening.EnableMeasurementEvents(instrument);
                }
            },
        };
        listener.SetMeasurementEventCallback<int>((instrument, value, _, _) => Add(instrument, value));
        listener.SetMeasurementEventCallback<long>((instrument, value, _, _) => Add(instrument, value));
        listener.SetMeasurementEventCallback<double>((instrument, value, _, _) => Add(instrument, value));
        listener.Start();

        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var port = ((IPEndPoint)free.LocalEndpoint).Port;
        free.Stop();
        using var metrics = MetricsEndpoint.Open($"127.0.0.1:{port}");
        Tally tally;
        await using (var node = new CoordinatorNode(Job, _folder.Journal, [], new ClusterSettings { Certificate = _folder.Coordinator }, _ => { }))
        {
            Assert.True(await WorkerNode.RunAsync([Address.Parse(node.Address)], null, new ClusterSettings { Certificate = _folder.Worker }, CancellationToken.None));
            tally = await node.Result;
        }

        // Other tests run beside this one and are told too.
        var ranges = new PatternWork(Job).Ranges;
        lock (sums)
        {
            Assert.True(sums["warmup.cluster.ranges.done"] >= ranges);
            Assert.True(sums["warmup.cluster.patterns"] >= tally.Patterns);
            Assert.True(sums["warmup.cluster.range.duration"] > 0);
            Assert.True(sums["warmup.cluster.journal.write.duration"] > 0);
            Assert.Contains("warmup.cluster.workers", sums.Keys);
            Assert.Equal(("{range}", "{pattern}", "s", "{worker}"), (units["warmup.cluster.ranges.done"], units["warmup.cluster.patterns"], units["warmup.cluster.range.duration"], units["warmup.cluster.workers"]));
        }

        using var client = new HttpClient();
        var text = await client.GetStringAsync(new Uri($"http://127.0.0.1:{port}/metrics"), TestContext.Current.CancellationToken);
        Assert.Matches("(?m)^warmup_cluster_ranges_done_total(\\{[^}]*\\})? [1-9]", text);
        Assert.Matches("(?m)^warmup_cluster_range_duration_seconds_count(\\{[^}]*\\})? [1-9]", text);
        Assert.DoesNotContain("Mohanam", text, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("9464")]
    [InlineData("127.0.0.1:0")]
    [InlineData("127.0.0.1:99999")]
    [InlineData("a b:9464")]
    [InlineData("http://127.0.0.1:9464/")]
    public void Prometheus_needs_a_host_and_a_port(string address) => Assert.Throws<UsageException>(() => MetricsEndpoint.Open(address));

    [Fact]
    public void There_is_no_endpoint_by_default() => Assert.Null(MetricsEndpoint.Open(null));
}

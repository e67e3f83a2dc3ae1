using OpenTelemetry;
using OpenTelemetry.Metrics;

namespace Warmup.ManyMachines;

/// <summary>Answers a Prometheus server with the meters' values, where that was asked for. It shows numbers only, to whoever reaches it.</summary>
internal static class MetricsEndpoint
{
    /// <summary>Opens the endpoint <c>/metrics</c>; without an address there is none.</summary>
    /// <param name="address">A host and a port, such as <c>127.0.0.1:9464</c>; <c>*</c> is every address of this machine.</param>
    /// <exception cref="UsageException">The address is not such a one.</exception>
    public static IDisposable? Open(string? address) => address is null ? null
        : address.Split(':') is [var host, var text] && (host == "*" || Uri.CheckHostName(host) is UriHostNameType.Dns or UriHostNameType.IPv4) && ushort.TryParse(text, out var port) && port > 0
            ? Sdk.CreateMeterProviderBuilder()
                .AddMeter(ClusterTelemetry.Name)
                .AddPrometheusHttpListener(options => (options.Host, options.Port) = (host, port))
                .Build()
            : throw new UsageException($"--metrics must be a host and a port such as 127.0.0.1:9464, not '{(address.Length <= 100 ? address : address[..100])}'");
}

using System.Diagnostics;
using System.Diagnostics.Metrics;
using OpenTelemetry.Metrics;

namespace Warmup.Web;

/// <summary>What the service tells whoever listens; docs/telemetry.md describes it. Nobody listens by default, and nothing that was typed is told.</summary>
internal static class WebTelemetry
{
    public const string Name = "Warmup.Web";

    private static readonly ActivitySource Activities = new(Name);
    private static readonly System.Diagnostics.Metrics.Meter Instruments = new(Name);
    private static readonly Counter<long> Drills = Instruments.CreateCounter<long>("warmup.web.drills", "{drill}", "Drills that were asked for");

    /// <summary>A drill is asked for in a format; its disposal is the answer.</summary>
    public static DrillAnswer BeginDrill(string format) => new(Activities.StartActivity("warmup.web.drill"), format);

    /// <summary>Collects what Prometheus asks for: this service's numbers, the library's runs, and what ASP.NET Core counts by route.</summary>
    public static void AddPrometheus(IServiceCollection services) => services.AddOpenTelemetry().WithMetrics(meters => meters
        .AddMeter(Name, Telemetry.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "Microsoft.AspNetCore.RateLimiting")
        .AddPrometheusExporter());

    /// <summary>A drill that is being made.</summary>
    internal sealed class DrillAnswer(Activity? activity, string format) : IDisposable
    {
        private string? _error;

        /// <summary>There is no such drill.</summary>
        /// <param name="code">Why, as one of a fixed list.</param>
        public void Fail(string code) => _error = code;

        public void Dispose()
        {
            var tags = new TagList { { "warmup.web.format", format } };
            if (_error is not null)
            {
                tags.Add("error.type", _error);
                activity?.SetStatus(ActivityStatusCode.Error).SetTag("error.type", _error);
            }

            Drills.Add(1, tags);
            activity?.SetTag("warmup.web.format", format).Dispose();
        }
    }
}

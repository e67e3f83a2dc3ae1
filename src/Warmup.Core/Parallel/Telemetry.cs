namespace Warmup;

/// <summary>Under which name the library tells what it does: to whoever listens with System.Diagnostics, such as OpenTelemetry. Nobody does by default.</summary>
public static class Telemetry
{
    /// <summary>The name of the <see cref="System.Diagnostics.ActivitySource"/> and of the <see cref="System.Diagnostics.Metrics.Meter"/>: <c>Warmup</c>.</summary>
    public static string Name => "Warmup";
}

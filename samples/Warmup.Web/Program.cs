using System.Diagnostics;
using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.AspNetCore.RateLimiting;
using Warmup.Takes;
using Warmup.Web;

// The page to make drills in, and drills over HTTP: GET /drill.mid?scale=mohanam&pattern=ladder&tonic=G3, or /drill with an Accept header.
// It keeps no user data, no files, no cache and no log. Run it with: dotnet run --project samples/Warmup.Web -- --open
const string Open = "--open";
var builder = WebApplication.CreateBuilder([.. args.Where(a => a != Open)]);
var hasMetrics = builder.Configuration["metrics"] is "true";
var addresses = Addresses.Of(builder.Configuration);
var token = builder.Configuration["token"];
if (Guard.Refusal(addresses, token) is { } refusal)
{
    Console.Error.WriteLine(refusal);
    return 2;
}

builder.WebHost.UseUrls(addresses);
builder.WebHost.ConfigureKestrel(server =>
{
    server.AddServerHeader = false;
    server.Limits.MaxRequestBodySize = Guard.MostBytes;
});

// The usual log names each address, and what was typed is in it.
builder.Logging.ClearProviders();

var limits = builder.Configuration.GetSection("Limits").Get<Limits>() ?? new Limits();
builder.Services.AddSingleton(limits);
builder.Services.AddSingleton(DrillFormats.All);
builder.Services.AddProblemDetails();
builder.Services.AddExceptionHandler<ErrorTrace>();
builder.Services.AddRequestTimeouts(timeouts => timeouts.DefaultPolicy = new RequestTimeoutPolicy
{
    Timeout = TimeSpan.FromSeconds(limits.RequestSeconds),
    TimeoutStatusCode = StatusCodes.Status503ServiceUnavailable,
});
builder.Services.AddRateLimiter(limiter =>
{
    limiter.RejectionStatusCode = StatusCodes.Status503ServiceUnavailable;
    limiter.OnRejected = (context, _) =>
    {
        context.HttpContext.Response.Headers.RetryAfter = limits.RequestSeconds.ToString(CultureInfo.InvariantCulture);
        return ValueTask.CompletedTask;
    };
    limiter.AddConcurrencyLimiter("drills", turns =>
    {
        turns.PermitLimit = limits.AtOnce;
        turns.QueueLimit = limits.Waiting;
    });

    // A take lies in memory whole: one at a time.
    limiter.AddConcurrencyLimiter("takes", turns =>
    {
        turns.PermitLimit = 1;
        turns.QueueLimit = 4;
    });
});

if (hasMetrics)
{
    WebTelemetry.AddPrometheus(builder.Services);
}

var app = builder.Build();
app.UseExceptionHandler();
app.UseStatusCodePages();
app.Use((context, next) => Guard.Check(context, next, token));
app.UseRouting();
app.UseRateLimiter();
app.UseRequestTimeouts();
app.MapMethods("/drill", [HttpMethods.Get, HttpMethods.Head], DrillEndpoint.ByAccept).RequireRateLimiting("drills");
app.MapMethods("/drill.{ending}", [HttpMethods.Get, HttpMethods.Head], DrillEndpoint.ByEnding).RequireRateLimiting("drills");
app.MapMethods("/contour.svg", [HttpMethods.Get, HttpMethods.Head], DrillEndpoint.Contour).RequireRateLimiting("drills");
app.MapMethods("/", [HttpMethods.Get, HttpMethods.Head], PageEndpoint.Get).RequireRateLimiting("drills");
app.MapPost("/", PageEndpoint.Post).RequireRateLimiting("drills");
app.MapMethods("/class.{ending:regex(^(csv|json)$)}", [HttpMethods.Get, HttpMethods.Post], PageEndpoint.Class).RequireRateLimiting("drills");
app.MapMethods("/plan", [HttpMethods.Get, HttpMethods.Head], PlanEndpoint.Get).RequireRateLimiting("drills");
app.MapPost("/plan", PlanEndpoint.Post).RequireRateLimiting("drills");
app.MapPost("/plan.{ending:regex(^(json|html)$)}", PlanEndpoint.File).RequireRateLimiting("drills");
app.MapPost("/plan-day.{ending}", PlanEndpoint.Day).RequireRateLimiting("drills");
app.MapPost("/read", ReadEndpoint.Post).RequireRateLimiting("drills");
app.MapPost("/listen", ListenEndpoint.Post).RequireRateLimiting("takes").WithRequestTimeout(TimeSpan.FromSeconds(limits.TakeSeconds));
if (hasMetrics)
{
    app.MapPrometheusScrapingEndpoint("/metrics");
}

app.MapGet("/page.css", () => PageEndpoint.Resource("page.css", "text/css; charset=utf-8"));
app.MapGet("/page.js", () => PageEndpoint.Resource("page.js", "text/javascript; charset=utf-8"));
foreach (var script in (string[])["plan.js", "read.js", "recorder.js", "listen.js"])
{
    app.MapGet("/" + script, () => PageEndpoint.Resource(script, "text/javascript; charset=utf-8"));
}

app.MapGet("/take.css", () => Results.Text(TakePicture.Style, "text/css; charset=utf-8"));
app.MapGet("/icon.svg", () => PageEndpoint.Resource("icon.svg", "image/svg+xml"));
app.Lifetime.ApplicationStarted.Register(() =>
{
    foreach (var address in app.Urls)
    {
        Console.WriteLine(token is null ? address : $"{address}/?token={Uri.EscapeDataString(token)}");
    }

    if (args.Contains(Open) && app.Urls.FirstOrDefault() is { } first)
    {
        using var browser = Process.Start(new ProcessStartInfo(token is null ? first : $"{first}/?token={Uri.EscapeDataString(token)}") { UseShellExecute = true });
    }
});
app.Run();
return 0;

namespace Warmup.Web
{
    /// <summary>Where the service listens.</summary>
    internal static class Addresses
    {
        /// <summary>The addresses in <c>--urls</c> or <c>ASPNETCORE_URLS</c>; this machine only by default.</summary>
        public static string Of(IConfiguration configuration) => configuration["urls"] ?? "http://127.0.0.1:5080";
    }

    /// <summary>Says on the terminal where the program failed, without the message, which may hold what was typed.</summary>
    internal sealed class ErrorTrace : IExceptionHandler
    {
        public ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
        {
            if (exception is not OperationCanceledException and not BadHttpRequestException)
            {
                Console.Error.WriteLine($"{exception.GetType().FullName}{Environment.NewLine}{exception.StackTrace}");
            }

            return ValueTask.FromResult(false);
        }
    }
}

using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.AspNetCore.RateLimiting;
using Warmup.Web;

// A drill over HTTP: GET /drill.mid?scale=mohanam&pattern=ladder&tonic=G3, or /drill with an Accept header.
// It keeps no user data, no files and no cache. Run it with: dotnet run --project samples/Warmup.Web
var builder = WebApplication.CreateBuilder(args);
builder.WebHost.UseUrls(Addresses.Of(builder.Configuration));
builder.WebHost.ConfigureKestrel(server =>
{
    server.AddServerHeader = false;
    server.Limits.MaxRequestBodySize = 0;
});

var limits = builder.Configuration.GetSection("Limits").Get<Limits>() ?? new Limits();
builder.Services.AddSingleton(limits);
builder.Services.AddSingleton(DrillFormats.All);
builder.Services.AddProblemDetails();
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
});

var app = builder.Build();
app.UseExceptionHandler();
app.UseStatusCodePages();
app.Use((context, next) =>
{
    context.Response.Headers.XContentTypeOptions = "nosniff";
    if (context.Request.ContentLength is > 0 || context.Request.Headers.TransferEncoding.Count > 0)
    {
        // The query describes the drill; there is no body to send.
        context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
        return Task.CompletedTask;
    }

    return next(context);
});
app.UseRouting();
app.UseRateLimiter();
app.UseRequestTimeouts();
app.MapMethods("/drill", [HttpMethods.Get, HttpMethods.Head], DrillEndpoint.ByAccept).RequireRateLimiting("drills");
app.MapMethods("/drill.{ending}", [HttpMethods.Get, HttpMethods.Head], DrillEndpoint.ByEnding).RequireRateLimiting("drills");
app.Run();

namespace Warmup.Web
{
    /// <summary>Where the service listens.</summary>
    internal static class Addresses
    {
        /// <summary>The addresses in <c>--urls</c> or <c>ASPNETCORE_URLS</c>; this machine only by default.</summary>
        public static string Of(IConfiguration configuration) => configuration["urls"] ?? "http://127.0.0.1:5080";
    }
}

using System.Net;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Warmup.Web;

namespace Warmup.Samples.Tests;

/// <summary>What the web sample does when a drill takes long: an exporter of the test's own waits until it is stopped.</summary>
public sealed class WebLimitTests : IDisposable
{
    private const string Path = "/drill.slow?scale=mohanam&pattern=ladder&tonic=G3";

    private readonly SlowFormat _slow = new();
    private readonly WebApplicationFactory<Program> _plain = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        _slow.Dispose();
        _plain.Dispose();
    }

    [Fact]
    public async Task A_request_that_takes_too_long_ends_with_a_problem()
    {
        await using var service = Service(("Limits:RequestSeconds", "1"));
        using var answer = await service.CreateClient().GetAsync(Path, Stop);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        await WebTests.Problem(answer);
        Assert.True(_slow.WasStopped.IsSet);
    }

    [Fact]
    public async Task Who_comes_while_all_places_are_taken_is_told_when_to_come_again()
    {
        await using var service = Service(("Limits:RequestSeconds", "600"), ("Limits:AtOnce", "1"), ("Limits:Waiting", "0"));
        using var client = service.CreateClient();
        using var leave = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        var first = client.GetAsync(Path, leave.Token);
        _slow.HasBegun.Wait(Stop);
        using var second = await client.GetAsync(Path, Stop);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, second.StatusCode);
        Assert.Equal(TimeSpan.FromSeconds(600), second.Headers.RetryAfter?.Delta);
        await WebTests.Problem(second);
        await leave.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
    }

    [Fact]
    public async Task Work_for_a_client_that_has_gone_is_stopped()
    {
        await using var service = Service(("Limits:RequestSeconds", "600"));
        using var leave = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        var request = service.CreateClient().GetAsync(Path, leave.Token);
        _slow.HasBegun.Wait(Stop);
        await leave.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => request);
        _slow.WasStopped.Wait(Stop); // hangs until the run's own time limit if nothing stops the work
    }

    private WebApplicationFactory<Program> Service(params (string Name, string Value)[] settings) => _plain.WithWebHostBuilder(host =>
    {
        foreach (var (name, value) in settings)
        {
            host.UseSetting(name, value);
        }

        host.ConfigureTestServices(services => services.AddSingleton(new DrillFormats([new Offer(_slow, "text/plain", "text/plain")])));
    });

    private sealed class SlowFormat : IScoreFormat, IDisposable
    {
        public ManualResetEventSlim HasBegun { get; } = new();

        public ManualResetEventSlim WasStopped { get; } = new();

        public string Name => "slow";

        public ValueList<string> Extensions => [".slow"];

        public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
        {
            HasBegun.Set();
            cancellationToken.WaitHandle.WaitOne();
            WasStopped.Set();
            cancellationToken.ThrowIfCancellationRequested();
        }

        public void Dispose()
        {
            HasBegun.Dispose();
            WasStopped.Dispose();
        }
    }
}

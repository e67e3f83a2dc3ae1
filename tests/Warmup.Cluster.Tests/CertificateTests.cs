using System.Collections.Concurrent;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using Akka.Actor;

namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the promise that nodes speak only to nodes with a certificate of their own authority.</summary>
public sealed class CertificateTests : IDisposable
{
    private static readonly PatternJob Job = new() { Words = "ladder run .ends .reversed", Size = 3, Scales = "Mohanam", RangeLength = 30 };

    private static readonly TimeSpan Long = TimeSpan.FromMinutes(2);

    private readonly TestFolder _folder = new();
    private readonly TestFolder _others = new();

    public void Dispose()
    {
        _folder.Dispose();
        _others.Dispose();
    }

    [Fact]
    public async Task A_node_of_another_authority_or_without_a_certificate_gets_nowhere()
    {
        var log = new ConcurrentQueue<Progress>();
        await using var node = new CoordinatorNode(Job, _folder.Journal, [], new ClusterSettings { Certificate = _folder.Coordinator }, log.Enqueue);
        var address = Address.Parse(node.Address);

        // A worker of another authority finds nobody, and nobody has heard of it.
        var impatient = new ClusterSettings { Certificate = _others.Worker, Patience = TimeSpan.FromSeconds(3), Tick = TimeSpan.FromMilliseconds(200) };
        Assert.False(await WorkerNode.RunAsync([address], null, impatient, CancellationToken.None));
        Assert.DoesNotContain(log, p => p is Progress.Joined);

        // A client that shows no certificate, and one that does not encrypt, get no answer but the end.
        using (var client = await Connect(address))
        {
            await using var secured = new SslStream(client.GetStream(), false, (_, certificate, _, _) => certificate is not null);
            var refused = await Record.ExceptionAsync(() => secured.AuthenticateAsClientAsync("coordinator"));

            // From TLS 1.3 on a client hears only after its own part of the handshake that it was refused.
            Assert.True(refused is null or AuthenticationException or IOException, refused?.ToString());
            Assert.Equal(0, refused is null ? await BytesUntilTheEnd(secured) : 0);
        }

        using (var client = await Connect(address))
        {
            await client.GetStream().WriteAsync(new byte[64], TestContext.Current.CancellationToken);
            Assert.InRange(await BytesUntilTheEnd(client.GetStream()), 0, 7); // an alert of TLS
        }

        // One of its own does all the work.
        Assert.True(await WorkerNode.RunAsync([address], null, impatient with { Certificate = _folder.Worker, Patience = Long }, CancellationToken.None));
        Assert.Equal(new PatternWork(Job).OfAll(CancellationToken.None), await node.Result.WaitAsync(Long, TestContext.Current.CancellationToken));
        Assert.Single(log.OfType<Progress.Joined>());
    }

    private static async Task<TcpClient> Connect(Address address)
    {
        var client = new TcpClient();
        await client.ConnectAsync(address.Host, address.Port!.Value, TestContext.Current.CancellationToken);
        return client;
    }

    private static async Task<int> BytesUntilTheEnd(Stream stream)
    {
        using var late = new CancellationTokenSource(Long);
        var buffer = new byte[1_000];
        var bytes = 0;
        try
        {
            for (var read = 1; read > 0; bytes += read)
            {
                read = await stream.ReadAsync(buffer, late.Token);
            }
        }
        catch (IOException)
        {
            // Cut off.
        }

        return bytes;
    }

    [Fact]
    public void A_folder_gets_more_nodes_of_the_same_authority_and_keeps_what_it_has()
    {
        var folder = _folder.At("certificates");
        NodeCertificate.Make(folder, ["third"]);
        NodeCertificate.Read(Path.Combine(folder, "third.pem"));
        Assert.Equal(["authority.key", "authority.pem", "coordinator.pem", "third.pem", "worker.pem"], Directory.GetFiles(folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal([UnixFileMode.UserRead | UnixFileMode.UserWrite], Directory.GetFiles(folder).Select(File.GetUnixFileMode).Distinct());
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(folder));
        }

        Assert.Contains("there already", Assert.Throws<UsageException>(() => NodeCertificate.Make(folder, ["third"])).Message, StringComparison.Ordinal);
        foreach (var name in (string[])["", "authority", "../up", "a b", new string('a', 41)])
        {
            Assert.Throws<UsageException>(() => NodeCertificate.Make(folder, [name]));
        }
    }

    [Fact]
    public void A_certificate_must_be_of_the_authority_beside_it()
    {
        var stranger = _folder.At("certificates/stranger.pem");
        File.Copy(_others.At("certificates/worker.pem"), stranger);
        Assert.Contains("is not of the authority", Assert.Throws<UsageException>(() => NodeCertificate.Read(stranger)).Message, StringComparison.Ordinal);
        File.WriteAllText(stranger, "nothing");
        Assert.Throws<UsageException>(() => NodeCertificate.Read(stranger));
        File.WriteAllText(stranger, new string('x', 70_000));
        Assert.Contains("at most", Assert.Throws<UsageException>(() => NodeCertificate.Read(stranger)).Message, StringComparison.Ordinal);
        Assert.Throws<UsageException>(() => NodeCertificate.Read(_folder.At("nowhere.pem")));
    }
}

using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace Warmup.ManyMachines.Tests;

/// <summary>A PostgreSQL server of a test's own, on this machine, with a password, in a folder that goes when it has gone.</summary>
internal sealed class TestPostgres : IDisposable
{
    // The server refuses to run as root.
    private const string User = "postgres";

    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-postgres").FullName;

    public TestPostgres()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        listener.Stop();
        var password = RandomNumberGenerator.GetHexString(32);
        File.WriteAllText(Path.Combine(_folder, "password"), password);
        Run("chown", "-R", User, _folder);
        AsUser("initdb", "-D", Data, "--auth=scram-sha-256", $"--pwfile={Path.Combine(_folder, "password")}", "--username=warmup");
        AsUser("pg_ctl", "-D", Data, "-w", "-l", Path.Combine(_folder, "log"), "-o", $"-p {port} -h 127.0.0.1 -k {_folder}", "start");
        Connection = $"Host=127.0.0.1;Port={port};Database=postgres;Username=warmup;Password={password}";
    }

    /// <summary>Whether PostgreSQL is installed and can be started.</summary>
    public static bool IsThere => OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess && Programs is not null;

    public string Connection { get; }

    private static string? Programs => Directory.Exists("/usr/lib/postgresql")
        ? Directory.GetDirectories("/usr/lib/postgresql").Select(version => Path.Combine(version, "bin")).FirstOrDefault(bin => File.Exists(Path.Combine(bin, "initdb")))
        : null;

    private string Data => Path.Combine(_folder, "data");

    public void Dispose()
    {
        Npgsql.NpgsqlConnection.ClearAllPools();
        AsUser("pg_ctl", "-D", Data, "-m", "immediate", "stop");
        Directory.Delete(_folder, true);
    }

    private void AsUser(string program, params string[] arguments) => Run("runuser", ["-u", User, "--", Path.Combine(Programs!, program), .. arguments]);

    private void Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = _folder })!;
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}

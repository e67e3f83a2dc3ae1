using System.Diagnostics;
using Warmup.TestSupport;

namespace Warmup.Cli.Tests;

/// <summary>Whatever happens to the program while it writes, the folder holds whole files or none.</summary>
public sealed class InterruptionTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Theory]
    [InlineData("TERM")]
    [InlineData("HUP")]
    [InlineData("INT")]
    public async Task A_signal_ends_the_work_with_a_word_and_leaves_no_file(string signal)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "signals are Unix's");
        using var process = Process.Start(Long("a.wav"))!;
        await Shell.Until(() => _shell.Files.Any(f => f.EndsWith(".partial", StringComparison.Ordinal)) || process.HasExited);
        Assert.False(process.HasExited, "it ended before it could be stopped");
        Process.Start("kill", [$"-{signal}", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]).WaitForExit();
        var error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, process.ExitCode);
        Assert.Equal("warmup: stopped; no half-written file is left\n", error);
        Assert.Empty(_shell.Files);
    }

    [Fact]
    public async Task What_a_killed_run_leaves_is_gone_after_the_next()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "kill -9 is Unix's");
        using (var process = Process.Start(Long("a.wav"))!)
        {
            await Shell.Until(() => _shell.Files.Length > 0);
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        Assert.NotEmpty(_shell.Files);
        Assert.Equal(0, Shell.Run(_shell.Drill(("--out", _shell.At("b.txt")))).Code);
        Assert.Equal(["b.txt"], _shell.Files);
    }

    [Fact]
    public void A_disk_that_fills_up_is_named_and_left_clean()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a small file system is made with Linux's tmpfs");
        var program = Path.Combine(AppContext.BaseDirectory, "warmup.dll");
        var disk = _shell.At("disk");
        Directory.CreateDirectory(disk);
        var script = $"""
            mount -t tmpfs -o size=64k none '{disk}' || exit 77
            dotnet '{program}' drill --scale mohanam --pattern ladder --tonic G3 --tempo 60 --out '{disk}/a.txt' || exit 3
            dotnet '{program}' drill --scale mohanam --pattern ladder --tonic G3 --tempo 60 --out '{disk}/a.wav'
            echo "exit $?"
            ls -A '{disk}'
            """;
        var run = ProgramRun.Of("unshare", _shell.Folder, "--map-root-user", "--mount", "bash", "-c", script);
        Assert.SkipWhen(run.Code != 0 && (run.Code == 77 || run.Error.Contains("unshare", StringComparison.Ordinal)), "this system does not let a user make a small file system");
        Assert.EndsWith("exit 2\na.txt\n", run.Out, StringComparison.Ordinal);
        Assert.Equal("warmup: the disk is full; nothing half-written is left; make room, or write to another disk\n", run.Error);
    }

    [Theory]
    [InlineData("check", "--singers", "/dev/zero")]
    [InlineData("plan", "--plan", "/dev/zero")]
    [InlineData("drill", "--tuning", "endless.scl")]
    public void A_file_without_an_end_is_refused_before_it_fills_the_memory(string command, string option, string path)
    {
        Assert.SkipUnless(File.Exists("/dev/zero"), "no /dev/zero on this system");
        if (path.EndsWith(".scl", StringComparison.Ordinal))
        {
            path = File.CreateSymbolicLink(_shell.At(path), "/dev/zero").FullName;
        }

        var before = GC.GetTotalAllocatedBytes();
        var drill = _shell.Drill()[1..^2];
        var (code, _, error) = Shell.Run(command switch
        {
            "plan" => [command, option, path, "--day", "2026-12-01", "--out", _shell.At("plan")],
            "drill" => [.. _shell.Drill((option, path))],
            _ => [command, .. drill, option, path],
        });
        Assert.Equal(2, code);
        Assert.Contains("is too long; the most is", error, StringComparison.Ordinal);

        // The longest file there may be is 64 MB; what is read grows by doubling.
        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, 400_000_000);
    }

    [Fact]
    public void A_folder_is_no_file()
    {
        var (code, _, error) = Shell.Run(["check", .. _shell.Drill()[1..^2], "--singers", _shell.Folder]);
        Assert.Equal(2, code);
        Assert.Contains($"--singers: {_shell.Folder} is a folder", error, StringComparison.Ordinal);
        (code, _, error) = Shell.Run("plan", "--plan", _shell.Folder, "--day", "2026-12-01", "--out", _shell.At("x"));
        Assert.Equal(2, code);
        Assert.Contains($"--plan: {_shell.Folder} is a folder", error, StringComparison.Ordinal);
    }

    /// <summary>A sound of a quarter of an hour, which takes long enough to be interrupted.</summary>
    private ProcessStartInfo Long(string name) => ProgramRun.Prepare(
        "dotnet",
        _shell.Folder,
        [Path.Combine(AppContext.BaseDirectory, "warmup.dll"), .. _shell.Drill(("--out", _shell.At(name)), ("--repeat", "100"), ("--tempo", "60"))]);
}

using System.Diagnostics;
using Warmup.Plans;

namespace Warmup.Samples.Tests;

/// <summary>The month's worker as a process of its own, stopped by the system's signal.</summary>
public sealed class MonthProgramTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-month-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    [Trait("Run", "whole")]
    public void Stopped_by_a_signal_it_leaves_whole_files_and_goes_on()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "the signal is sent by a Unix shell");
        File.WriteAllText(
            Path.Combine(_folder, "class.json"),
            """{ "schema": "urn:warmup:singers:1", "singers": [{ "alias": "Wren", "low": "G3", "high": "E5", "sustainedSeconds": 18 }] }""");
        using (var worker = Process.Start(ProgramRun.Prepare("dotnet", _folder, Arguments("part")))!)
        {
            while (worker.StandardOutput.ReadLine() is { } line && !line.StartsWith("wrote", StringComparison.Ordinal))
            {
            }

            Assert.Equal(0, ProgramRun.Of("sh", _folder, "-c", $"kill -TERM {worker.Id}").Code);
            worker.StandardOutput.ReadToEnd();
            worker.WaitForExit();

            // 3 where the signal came in time, 0 where the month was done first; the files are whole either way.
            Assert.True(worker.ExitCode is 3 or 0, $"it ended with {worker.ExitCode}");
        }

        Assert.Equal(0, ProgramRun.Of("dotnet", _folder, Arguments("all")).Code);
        var (all, part) = (Content("all"), Content("part"));
        Assert.InRange(part.Count, 2, all.Count);
        Assert.All(part, file => Assert.Equal(all[file.Key], file.Value));
        Assert.Equal(0, ProgramRun.Of("dotnet", _folder, Arguments("part")).Code);
        Assert.Equal(all, Content("part"));
    }

    private static string[] Arguments(string folder) =>
        [typeof(Month.MonthOptions).Assembly.Location, "--month", "2026-12", "--singers", "class.json", "--scales", "mohanam, hamsadhwani", "--out", folder];

    private SortedDictionary<string, string> Content(string folder)
    {
        var content = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in Directory.EnumerateFiles(Path.Combine(_folder, folder)))
        {
            content.Add(Path.GetFileName(file), Convert.ToHexString(File.ReadAllBytes(file)));
        }

        return content;
    }
}

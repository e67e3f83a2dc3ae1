using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using Warmup.Plans;
using Warmup.Samples;
using Warmup.TestSupport;

namespace Warmup.Cli.Tests;

/// <summary>A plan's folder that was left half-way is taken up by the same command; nothing in it is replaced unasked. What is expected is a folder that was written in one go.</summary>
public sealed class PlanFolderTests : IDisposable
{
    // From Tuesday 1 to Sunday 6 December 2026 there is one Sunday: five days of singing, with a page and a sheet each; and plan.json, plan.html, plan.ics.
    private const int Files = (5 * 2) + 3;

    private readonly Shell _shell = new();

    public PlanFolderTests()
    {
        using var file = File.Create(_shell.At("singers.json"));
        SingersFile.Write(Studio.Singers, file);
    }

    public void Dispose() => _shell.Dispose();

    private string[] New(string folder, params string[] more) => Of(6, folder, more);

    private string[] Of(int days, string folder, params string[] more) =>
        [
            "plan", "--singers", _shell.At("singers.json"), "--scales", "mohanam", "--start", "2026-12-01", "--days", days.ToString(CultureInfo.InvariantCulture), "--minutes", "5",
            "--out", _shell.At(folder), .. more,
        ];

    private string Made(string folder, params string[] more)
    {
        var (code, output, error) = Shell.Run(New(folder, more));
        Assert.Equal((0, string.Empty), (code, error));
        return output;
    }

    private SortedDictionary<string, string> Content(string folder)
    {
        var files = Directory.GetFiles(_shell.At(folder)).ToDictionary(f => Path.GetFileName(f), f => Convert.ToHexString(File.ReadAllBytes(f)));
        return new SortedDictionary<string, string>(files, StringComparer.Ordinal);
    }

    [Fact]
    public void The_same_command_again_finds_all_and_touches_nothing()
    {
        Made("a");
        foreach (var file in Directory.GetFiles(_shell.At("a")))
        {
            File.SetLastWriteTimeUtc(file, DateTime.UnixEpoch);
        }

        Assert.Contains($"a is complete: all {Files} files of this plan were there, and nothing was written", Made("a"), StringComparison.Ordinal);
        Assert.Equal(Files, Directory.GetFiles(_shell.At("a")).Length);
        Assert.All(Directory.GetFiles(_shell.At("a")), f => Assert.Equal(DateTime.UnixEpoch, File.GetLastWriteTimeUtc(f)));
    }

    [Fact]
    public void Files_of_every_format_are_known_again()
    {
        var formats = string.Join(' ', Formats.All.SelectMany(f => f.Extensions));
        var once = Of(1, "a", "--formats", formats, "--week", "2026-12-01");
        Assert.Equal(0, Shell.Run(once).Code);
        var files = Directory.GetFiles(_shell.At("a")).Length;
        Assert.Equal(Formats.All.Sum(f => f.Extensions.Count) + 4, files);
        Assert.Contains($"all {files} files", Shell.Run(once).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plan.json")]
    [InlineData("plan.html")]
    [InlineData("plan.ics")]
    [InlineData("2026-12-03.txt")]
    [InlineData("2026-12-03.txt", "2026-12-03.html", "2026-12-05.html", "plan.json")]
    public void What_is_missing_is_written(params string[] missing)
    {
        Made("a");
        var whole = Content("a");
        foreach (var file in missing)
        {
            File.Delete(_shell.At($"a/{file}"));
        }

        var (kept, verb) = (Files - missing.Length, missing.Length == 1 ? "was" : "were");
        Assert.Contains($"a is complete: {kept} of the {Files} files of this plan were there and stay, and {missing.Length} {verb} written", Made("a"), StringComparison.Ordinal);
        Assert.Equal(whole, Content("a"));
    }

    [Theory]
    [InlineData("2026-12-04.txt")]
    [InlineData("2026-12-04.html")]
    [InlineData("plan.html")]
    [InlineData("plan.ics")]
    public void A_file_that_was_changed_is_named_before_anything_is_written(string changed)
    {
        Made("a");
        var whole = Content("a");
        File.AppendAllText(_shell.At($"a/{changed}"), "the teacher's own note");
        File.Delete(_shell.At("a/2026-12-01.txt"));
        var before = Content("a");
        var (code, _, error) = Shell.Run(New("a"));
        Assert.Equal(2, code);
        Assert.StartsWith($"warmup: {_shell.At($"a/{changed}")} is there and holds something else than this plan gives", error, StringComparison.Ordinal);
        Assert.Contains("--force", error, StringComparison.Ordinal);
        Assert.Equal(before, Content("a"));
        Made("a", "--force");
        Assert.Equal(whole, Content("a"));
    }

    [Fact]
    public void A_file_that_was_cut_short_is_named()
    {
        Made("a");
        var path = _shell.At("a/2026-12-04.txt");
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..^1]);
        Assert.StartsWith($"warmup: {path} is there", Shell.Run(New("a")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_of_another_plan_is_left_alone()
    {
        Made("a");
        var before = Content("a");
        var (code, _, error) = Shell.Run(New("a", "--seed", "8"));
        Assert.Equal(2, code);
        Assert.StartsWith($"warmup: {_shell.At("a/plan.json")} holds another plan", error, StringComparison.Ordinal);
        Assert.Equal(before, Content("a"));
    }

    [Fact]
    public void Stopped_anywhere_it_leaves_whole_files_and_goes_on_to_the_same_folder()
    {
        Made("all");
        var all = Content("all");
        var stopped = 0;
        for (var days = 1; ; days += 13)
        {
            var folder = $"part-{days}";
            using var stop = new CancellationTokenSource();
            if (StopAfter(folder, days, stop) is not { } words)
            {
                break;
            }

            var part = Directory.Exists(_shell.At(folder)) ? Content(folder) : [];
            Assert.All(part, file => Assert.Equal(all[file.Key], file.Value));
            Assert.True(part.Count == 0 || part.ContainsKey("plan.json"), "the plan comes first");
            Assert.Contains($"has {part.Count} of the plan's {Files} files", words, StringComparison.Ordinal);
            Made(folder);
            Assert.Equal(all, Content(folder));
            stopped++;
        }

        Assert.InRange(stopped, 3, 100);
    }

    /// <summary>Writes the plan until so many days have been gone through; what is said, or <see langword="null"/> where it was finished before.</summary>
    private string? StopAfter(string folder, int days, CancellationTokenSource stop)
    {
        var options = new PlanOptions();
        var command = new Command("plan");
        options.AddTo(command);
        var parsed = command.Parse(New(folder)[1..]);
        var plan = WarmupPlan.Make(options.ReadRequest(parsed, new Terminal(TextWriter.Null, TextWriter.Null)), CancellationToken.None).Plan;
        var left = days;
        IEnumerable<PlanDay> Days()
        {
            foreach (var day in plan.Days)
            {
                if (Interlocked.Decrement(ref left) == 0)
                {
                    stop.Cancel();
                }

                stop.Token.ThrowIfCancellationRequested();
                yield return day;
            }
        }

        // The words of a stop count the files, for which the days are gone through again.
        IEnumerable<PlanDay> Again() => stop.IsCancellationRequested ? plan.Days : Days();
        try
        {
            using var progress = new Progress("planning", null, TimeProvider.System);
            new PlanFolder(options, parsed, ".html .txt").Write(plan, new Anew(Again), progress, stop.Token);
            return null;
        }
        catch (StoppedException words)
        {
            return words.Message;
        }
        catch (OperationCanceledException)
        {
            Assert.False(Directory.Exists(_shell.At(folder)), "stopped before the first file");
            return $"has 0 of the plan's {Files} files";
        }
    }

    [Fact]
    [Trait("Run", "whole")]
    public Task A_program_that_was_asked_to_end_half_way_is_taken_up() => IsTakenUpAsync("TERM");

    [Fact]
    [Trait("Run", "whole")]
    public Task A_program_that_was_killed_half_way_is_taken_up() => IsTakenUpAsync("KILL");

    private async Task IsTakenUpAsync(string signal)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "signals are Unix's");
        const int TwoDays = (2 * 2) + 3;
        string[] command = Of(2, "a", "--formats", "txt wav");
        var start = ProgramRun.Prepare("dotnet", _shell.Folder, [Path.Combine(AppContext.BaseDirectory, "warmup.dll"), .. command]);

        // On one core it makes the days one after the other, so that the first is whole while the second is being made.
        start.Environment["DOTNET_PROCESSOR_COUNT"] = "1";
        using (var process = Process.Start(start)!)
        {
            await Shell.Until(() => process.HasExited || (Directory.Exists(_shell.At("a")) && Directory.GetFiles(_shell.At("a"), "2*.wav").Length > 0));
            Assert.False(process.HasExited, "it ended before it could be stopped");
            Process.Start("kill", [$"-{signal}", process.Id.ToString(CultureInfo.InvariantCulture)]).WaitForExit();
            var error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            if (signal == "TERM")
            {
                Assert.Equal(2, process.ExitCode);
                Assert.StartsWith("warmup: stopped; no half-written file is left: ", error, StringComparison.Ordinal);
                Assert.EndsWith($"of the plan's {TwoDays} files, and the same command writes the others\n", error, StringComparison.Ordinal);
                Assert.DoesNotContain(Content("a").Keys, f => f.EndsWith(".partial", StringComparison.Ordinal));
            }
        }

        var left = Content("a").Where(f => !f.Key.EndsWith(".partial", StringComparison.Ordinal)).ToList();
        Assert.InRange(left.Count, 2, TwoDays - 1);
        var (code, output, _) = Shell.Run(command);
        Assert.Equal(0, code);
        Assert.Contains($"{left.Count} of the {TwoDays} files of this plan were there and stay", output, StringComparison.Ordinal);
        var whole = Content("a");
        Assert.Equal(TwoDays, whole.Count);
        Assert.All(left, f => Assert.Equal(f.Value, whole[f.Key]));
    }

    /// <summary>Days that are drawn anew whenever they are gone through.</summary>
    private sealed class Anew(Func<IEnumerable<PlanDay>> draw) : IEnumerable<PlanDay>
    {
        public IEnumerator<PlanDay> GetEnumerator() => draw().GetEnumerator();

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}

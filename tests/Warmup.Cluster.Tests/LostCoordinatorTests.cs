using System.Collections.Concurrent;
using System.Diagnostics;
using Akka.Actor;
using Microsoft.Data.Sqlite;

namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the same job done on one thread. Coordinators and workers are processes of their own.</summary>
public sealed class LostCoordinatorTests(ITestOutputHelper output) : IDisposable
{
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(5);

    private readonly TestFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private static PatternJob Job(int most, int length) => new() { Size = 6, Most = most, RangeLength = length, HasParts = true };

    [Fact]
    public async Task When_the_coordinator_is_killed_the_second_one_goes_on_from_the_journal()
    {
        var job = Job(8_000, 200);
        await TakeOver(job, _folder.Journal, ["--journal", _folder.At("journal.db")]);
    }

    [Fact]
    [Trait("Run", "whole")]
    public async Task The_same_with_the_journal_in_PostgreSQL()
    {
        Assert.SkipUnless(TestPostgres.IsThere, "needs PostgreSQL from Debian (postgresql), and root");
        using var postgres = new TestPostgres();
        var connection = _folder.At("postgres.txt");
        await File.WriteAllTextAsync(connection, postgres.Connection, TestContext.Current.CancellationToken);
        await TakeOver(Job(40_000, 200), JobJournal.InPostgres(connection), ["--postgres", connection]);
    }

    private async Task TakeOver(PatternJob job, JobJournal journal, string[] options)
    {
        var parts = _folder.Folder("parts");
        var whole = Task.Run(() => new PatternWork(job).OfAll(CancellationToken.None));
        using var processes = new Processes(job, options, parts, silence: 2);
        var first = processes.StartCoordinator(0);
        var log = new ConcurrentQueue<Progress>();
        List<Process> workers = [];
        await using (var second = new CoordinatorNode(job, journal, [.. processes.Addresses.Select(Address.Parse)], processes.Settings(1), log.Enqueue))
        {
            await second.Joined.WaitAsync(Long, TestContext.Current.CancellationToken);
            workers.AddRange([processes.StartWorker(), processes.StartWorker()]);
            await Until(() => Directory.GetFiles(parts, "part-*").Length >= 5, () => !first.HasExited);
            Assert.Empty(log);
            Processes.Kill(first);
            Assert.Equal(await whole, await second.Result.WaitAsync(Long, TestContext.Current.CancellationToken));
        }

        foreach (var worker in workers)
        {
            Assert.True(worker.WaitForExit(Long));
            Assert.Equal(0, worker.ExitCode);
        }

        Assert.InRange(Assert.Single(log.OfType<Progress.Leads>()).Done, 1, new PatternWork(job).Ranges - 1);
        var sum = await JournalSum.ReadAsync(journal, parts, TestContext.Current.CancellationToken);
        Assert.Empty(sum.Differences);
        Assert.True(sum.IsWhole);
        Assert.Equal((await whole, 0), (sum.Sum, sum.Repeated));
        Assert.Equal(sum.Ranges, Directory.GetFiles(parts).Length);

        // A part that is not what the journal says is named.
        File.Delete(Path.Combine(parts, PartFile.NameOf(0)));
        File.Copy(Path.Combine(parts, PartFile.NameOf(job.RangeLength)), Path.Combine(parts, PartFile.NameOf(2 * job.RangeLength)), true);
        var lacking = await JournalSum.ReadAsync(journal, parts, TestContext.Current.CancellationToken);
        Assert.False(lacking.IsWhole);
        Assert.Equal([$"{PartFile.NameOf(0)} is missing", $"{PartFile.NameOf(2 * job.RangeLength)} does not have the indexes of its range"], lacking.Differences.Order(StringComparer.Ordinal));
    }

    private static async Task Until(Func<bool> isSo, Func<bool> canBe)
    {
        var since = Stopwatch.GetTimestamp();
        while (!isSo())
        {
            Assert.True(canBe() && Stopwatch.GetElapsedTime(since) < Long, "it ended before");
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Two coordinators and three workers; every few seconds one of them is killed and started again. When the job is done, it begins anew.</summary>
    [Fact]
    [Trait("Run", "whole")]
    public async Task Two_minutes_of_killing_anyone_cost_no_index_and_no_index_twice()
    {
        var job = Job(60_000, 500);
        var whole = Task.Run(() => new PatternWork(job).OfAll(CancellationToken.None));
        var seed = Environment.TickCount;
        output.WriteLine($"seed {seed}");
        var random = new Random(seed);
        var since = Stopwatch.GetTimestamp();
        var (killedCoordinators, killedWorkers, ended, leaders, runs) = (0, 0, 0, 0, 0);
        do
        {
            runs++;
            var parts = _folder.Folder($"parts-{runs}");
            var journal = _folder.At($"journal-{runs}.db");
            using var processes = new Processes(job, ["--journal", journal], parts, silence: 2);
            Func<Process>[] starts = [() => processes.StartCoordinator(0), () => processes.StartCoordinator(1), processes.StartWorker, processes.StartWorker, processes.StartWorker];
            var running = Array.ConvertAll(starts, start => start());
            var (last, next, before) = (Stopwatch.GetElapsedTime(since), TimeSpan.FromSeconds(random.NextDouble() * 3), 0);
            while (!running[..2].Any(c => c.HasExited && c.ExitCode == 0))
            {
                Assert.True(Stopwatch.GetElapsedTime(since) < TimeSpan.FromMinutes(10), "the job did not end");
                await Task.Delay(200, TestContext.Current.CancellationToken);

                // A while after something was done, so that there is something to lose; or after 20 seconds in any case.
                var (now, done) = (Stopwatch.GetElapsedTime(since), Directory.GetFiles(parts, "part-*").Length);
                if (now < TimeSpan.FromMinutes(2) && (now > last + TimeSpan.FromSeconds(20) || (done > before && now > last + next)))
                {
                    (last, next, before) = (now, TimeSpan.FromSeconds(3 * random.NextDouble()), done);
                    var which = random.Next(2) == 0 ? random.Next(2) : random.Next(2, 5);
                    if (!running[which].HasExited)
                    {
                        Processes.Kill(running[which]);
                        (killedCoordinators, killedWorkers) = which < 2 ? (killedCoordinators + 1, killedWorkers) : (killedCoordinators, killedWorkers + 1);
                        running[which] = starts[which]();
                    }
                }

                // As a service manager does: whoever ended by itself, because another leads or nobody was found, is started again.
                for (var i = 0; i < running.Length; i++)
                {
                    if (running[i].HasExited && running[i].ExitCode != 0)
                    {
                        ended++;
                        running[i] = starts[i]();
                    }
                }
            }

            // Those that were just started may find nobody any more.
            Array.ForEach(running, process => process.WaitForExit(TimeSpan.FromSeconds(20)));
            foreach (var process in running.Where(p => !p.HasExited))
            {
                Processes.Kill(process);
            }

            var sum = await JournalSum.ReadAsync(JobJournal.InFile(journal), parts, TestContext.Current.CancellationToken);
            Assert.Empty(sum.Differences);
            Assert.True(sum.IsWhole);
            Assert.Equal((await whole, 0), (sum.Sum, sum.Repeated));
            leaders += Writers(journal);
        }
        while (Stopwatch.GetElapsedTime(since) < TimeSpan.FromMinutes(2));

        output.WriteLine($"{runs} runs of {job.Most} indexes; killed: {killedCoordinators} coordinators, {killedWorkers} workers; {ended} ended by themselves and were started again; {leaders} coordinators led in turn");
        Assert.True(killedCoordinators >= 5 && killedWorkers >= 5 && leaders > runs, "too little was killed to show anything");
    }

    /// <summary>How many different coordinators wrote into the journal.</summary>
    private static int Writers(string journal)
    {
        using var database = new SqliteConnection($"Data Source={journal}");
        database.Open();
        using var command = database.CreateCommand();
        command.CommandText = "select count(distinct writer_uuid) from journal";
        return (int)(long)command.ExecuteScalar()!;
    }
}

using System.Diagnostics;
using System.Text;

namespace Warmup.Takes.Tests;

public class BarsTests
{
    [Fact]
    public void Table()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("WARMUP_ALL") == "1", "WARMUP_ALL is not 1");
        var count = int.Parse(Environment.GetEnvironmentVariable("TAKES_COUNT") ?? "6");
        var seed = int.Parse(Environment.GetEnvironmentVariable("TAKES_SEED") ?? "1");
        var only = Environment.GetEnvironmentVariable("TAKES_ONLY");
        var text = new StringBuilder();
        var (tracking, aligning) = (TimeSpan.Zero, TimeSpan.Zero);
        var seconds = 0.0;
        foreach (var condition in Corpus.Conditions.Where(c => only is null || only.Split(',').Any(o => c.Contains(o, StringComparison.Ordinal))))
        {
            var score = new TakeScore();
            foreach (var plan in Corpus.Plans(condition, seed, count))
            {
                var take = TakeMaker.Make(plan);
                using var process = Process.GetCurrentProcess();
                var begun = process.TotalProcessorTime;
                var track = PitchTracker.Track(SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken);
                process.Refresh();
                var tracked = process.TotalProcessorTime;
                var report = Listener.Hear(plan.Score, track, AlignmentWeights.Default, TestContext.Current.CancellationToken);
                process.Refresh();
                (tracking, aligning) = (tracking + (tracked - begun), aligning + (process.TotalProcessorTime - tracked));
                seconds += take.Samples.Length / (double)take.Rate;
                score.Add(take, report);
            }

            text.AppendLine(score.Row(condition));
            foreach (var line in score.Said)
            {
                text.AppendLine("  " + line);
            }
        }

        text.AppendLine(FormattableString.Invariant(
            $"{seconds:0} s heard in {(tracking + aligning).TotalSeconds:0.00} s of the processor: {seconds / (tracking + aligning).TotalSeconds:0} times real time ({tracking.TotalSeconds:0.00} s the pitch track)"));
        File.WriteAllText(Environment.GetEnvironmentVariable("TAKES_OUT") ?? Path.Combine(AppContext.BaseDirectory, "bars.txt"), text.ToString());
    }
}

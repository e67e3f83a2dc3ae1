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
        var watch = new Stopwatch();
        var seconds = 0.0;
        foreach (var condition in Corpus.Conditions.Where(c => only is null || only.Split(',').Any(o => c.Contains(o, StringComparison.Ordinal))))
        {
            var score = new TakeScore();
            foreach (var plan in Corpus.Plans(condition, seed, count))
            {
                var take = TakeMaker.Make(plan);
                watch.Start();
                var report = Listener.Hear(plan.Score, SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken);
                watch.Stop();
                seconds += take.Samples.Length / (double)take.Rate;
                score.Add(take, report);
            }

            text.AppendLine(score.Row(condition));
            foreach (var line in score.Said)
            {
                text.AppendLine("  " + line);
            }
        }

        text.AppendLine(FormattableString.Invariant($"{seconds:0} s heard in {watch.Elapsed.TotalSeconds:0.00} s: {seconds / watch.Elapsed.TotalSeconds:0} times real time"));
        File.WriteAllText(Environment.GetEnvironmentVariable("TAKES_OUT") ?? Path.Combine(AppContext.BaseDirectory, "bars.txt"), text.ToString());
    }
}

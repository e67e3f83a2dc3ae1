using System.Diagnostics;
using System.Text;

namespace Warmup.Takes.Tests;

/// <summary>The table of docs/listening.md: how well made takes are heard, by condition.</summary>
public class BarsTests
{
    [Fact]
    public void Takes_of_every_condition_are_heard_as_they_were_made()
    {
        // Without WARMUP_ALL one take of every other condition is heard: enough to see that nothing is broken.
        var isWhole = WholeCheck.IsAskedFor;
        var count = int.Parse(Environment.GetEnvironmentVariable("TAKES_COUNT") ?? (isWhole ? "6" : "1"), System.Globalization.CultureInfo.InvariantCulture);
        var seed = int.Parse(Environment.GetEnvironmentVariable("TAKES_SEED") ?? "9", System.Globalization.CultureInfo.InvariantCulture);
        var only = Environment.GetEnvironmentVariable("TAKES_ONLY");
        var text = new StringBuilder();
        var broken = new List<string>();
        var (tracking, aligning) = (TimeSpan.Zero, TimeSpan.Zero);
        var seconds = 0.0;
        foreach (var condition in WholeCheck.OneIn(only is null ? 2 : 1, Corpus.Conditions).Where(c => only is null || only.Split(',').Any(o => c.Contains(o, StringComparison.Ordinal))))
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

            // The table is for reading; these bounds lie well below it, and tell that something broke.
            var (least, most) = condition is "singer's errors" or "all together" ? (0.7, 5.0) : (0.95, 4.0);
            if (score.Right < (least * score.Notes) - 1 || score.OctavesWrong > 0 || score.Cents[score.Cents.Count / 2] > most)
            {
                broken.Add(score.Row(condition));
            }

            foreach (var line in score.Said)
            {
                text.AppendLine("  " + line);
            }
        }

        text.AppendLine(FormattableString.Invariant(
            $"{seconds:0} s heard in {(tracking + aligning).TotalSeconds:0.00} s of the processor: {seconds / (tracking + aligning).TotalSeconds:0} times real time ({tracking.TotalSeconds:0.00} s the pitch track)"));
        File.WriteAllText(Environment.GetEnvironmentVariable("TAKES_OUT") ?? Path.Combine(AppContext.BaseDirectory, "bars.txt"), text.ToString());
        Assert.Empty(broken);
    }
}

using System.Text;

namespace Warmup.Takes.Tests;

/// <summary>
/// For choosing weights and bounds, by hand and with seeds that the published table does not use: TAKES_SEED and TAKES_COUNT name the takes, TAKES_ONLY the
/// conditions, TAKES_OUT the file that is written, TAKES_WEIGHTS settings to compare, such as "|Jump=9;LeftOut=7".
/// </summary>
public class StudyTests
{
    [Fact(Explicit = true)]
    public void Facts_of_right_and_wrong_drills()
    {
        var text = new StringBuilder("kind condition seed take refused facts | sung / held against\n");
        var seeds = (Environment.GetEnvironmentVariable("TAKES_SEED") ?? "1").Split(',').Select(s => int.Parse(s, System.Globalization.CultureInfo.InvariantCulture));
        var count = int.Parse(Environment.GetEnvironmentVariable("TAKES_COUNT") ?? "6", System.Globalization.CultureInfo.InvariantCulture);
        foreach (var seed in seeds)
        {
            foreach (var condition in (Environment.GetEnvironmentVariable("TAKES_ONLY") ?? "clean,singer's errors,all together").Split(','))
            {
                var plans = Corpus.Plans(condition, seed, count).ToList();
                var drills = Corpus.Plans("clean", seed + 500, 5).Concat(plans).Select(p => p.Score).ToList();
                for (var n = 0; n < plans.Count; n++)
                {
                    var take = TakeMaker.Make(plans[n]);
                    var track = PitchTracker.Track(SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken);
                    var voicing = Voicing.Of(track);
                    Row("right", plans[n].Score);
                    for (var d = 0; d < 4; d++)
                    {
                        var other = drills[((n * 3) + d + 1) % drills.Count];
                        if (other.Title != plans[n].Score.Title)
                        {
                            Row("wrong", other);
                        }
                    }

                    void Row(string kind, Score score)
                    {
                        var drill = new DrillNotes(score);
                        var w = AlignmentWeights.Default;
                        var h = TonicHypotheses.Best(drill, track, voicing, w, default);
                        var writer = new TakeWriter(drill, track, voicing, h, w);
                        var facts = writer.Facts(TakePasses.Of(drill, h.Alignment.Spans));
                        text.AppendLine(FormattableString.Invariant($"{kind} {condition.Replace(' ', '-')} {seed} {n} {TakeJudgement.OfAlignment(facts) is not null} {facts} | {plans[n].Score.Title} / {score.Title}"));
                    }
                }
            }
        }

        File.WriteAllText(Environment.GetEnvironmentVariable("TAKES_OUT")!, text.ToString());
    }

    [Fact(Explicit = true)]
    public void Weights()
    {
        var text = new StringBuilder();
        var seeds = (Environment.GetEnvironmentVariable("TAKES_SEED") ?? "1").Split(',').Select(s => int.Parse(s, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        var count = int.Parse(Environment.GetEnvironmentVariable("TAKES_COUNT") ?? "6", System.Globalization.CultureInfo.InvariantCulture);
        var settings = (Environment.GetEnvironmentVariable("TAKES_WEIGHTS") ?? "").Split('|').ToList();
        foreach (var condition in (Environment.GetEnvironmentVariable("TAKES_ONLY") ?? "singer's errors,all together").Split(','))
        {
            var scores = settings.ConvertAll(_ => new TakeScore());
            foreach (var seed in seeds)
            {
                foreach (var plan in Corpus.Plans(condition, seed, count))
                {
                    var take = TakeMaker.Make(plan);
                    var track = PitchTracker.Track(SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken);
                    for (var s = 0; s < settings.Count; s++)
                    {
                        scores[s].Add(take, Listener.Hear(plan.Score, track, Of(settings[s]), TestContext.Current.CancellationToken));
                    }
                }
            }

            for (var s = 0; s < settings.Count; s++)
            {
                text.AppendLine($"{settings[s],-40} {scores[s].Row(condition)}");
            }

            scores[0].Said.ForEach(l => text.AppendLine("  " + l));
            File.WriteAllText(Environment.GetEnvironmentVariable("TAKES_OUT")!, text.ToString());
        }
    }

    private static AlignmentWeights Of(string setting)
    {
        var weights = new AlignmentWeights();
        foreach (var part in setting.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            var pair = part.Split('=');
            typeof(AlignmentWeights).GetProperty(pair[0])!.SetValue(weights, double.Parse(pair[1], System.Globalization.CultureInfo.InvariantCulture));
        }

        return weights;
    }
}

using System.Diagnostics.CodeAnalysis;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>
/// The remedies against every single change, each applied and checked by the public checks. Source: docs/voices.md, "Findings and remedies": which
/// changes are tried, when one helps, and how large each counts.
/// </summary>
public class SmallestRemedyTests
{
    public static Arbitrary<Sung> Drills() => (
        from drill in ScoreGenerators.InTime(Generators.Drills)
        from one in Generators.Singers
        from other in Generators.Singers
        from count in Gen.Choose(1, 2)
        select new Sung(
            drill with { Tonic = Tonic.FromMidi(drill.Tonic.Midi), HasDrone = false },
            count == 1 ? [one] : [one, new Singer("other", other.Low, other.High, other.SustainedSeconds, other.Experience)]))
        .Where(s => s.Drill.TryToScore(out var score, out _) && score.NoteCount <= 40).ToArbitrary();

    [Property(Arbitrary = [typeof(SmallestRemedyTests)], MaxTest = 8)]
    public void The_first_remedy_is_as_small_as_any_change_that_helps(Sung sung)
    {
        var (drill, singers) = sung;
        var all = Enumerable.Range(1, drill.Expand().Lines.Count).ToValueList();
        var was = Faults(drill.ToScore(), singers, all);
        var smallest = was.Select(f => (f.Singer, f.Code)).Distinct().ToDictionary(k => k, _ => int.MaxValue);
        foreach (var remedy in Changes(drill, singers, was).OrderBy(r => Size(drill, r)).TakeWhile(_ => smallest.ContainsValue(int.MaxValue)))
        {
            if (!TryChange(drill, remedy, out var score))
            {
                continue;
            }

            var left = Faults(score, singers, remedy is FewerLines fewer ? fewer.Lines : all);
            if (left.TrueForAll(now => was.Exists(f => f.At == now.At && now.Amount <= f.Amount + 1e-6)))
            {
                foreach (var kind in smallest.Keys.Where(k => !left.Exists(f => (f.Singer, f.Code) == k)))
                {
                    smallest[kind] = Math.Min(smallest[kind], Size(drill, remedy));
                }
            }
        }

        foreach (var advice in drill.Advise(singers))
        {
            // Other scales count 20 and more, and are not among the changes here.
            var least = smallest[(advice.Singer.Alias, advice.Finding.Code)];
            Assert.True(least >= 20 || (!advice.Remedies.IsEmpty && Size(drill, advice.Remedies[0]) == least), $"{sung}: one change of size {least} clears {advice}");
        }
    }

    private static bool TryChange(Drill drill, Remedy remedy, [NotNullWhen(true)] out Score? score)
    {
        score = null;
        if (remedy.Apply(drill).TryToScore(out var changed, out _))
        {
            score = remedy.Apply(changed);
        }

        return score is not null;
    }

    /// <summary>All single changes but other scales.</summary>
    private static List<Remedy> Changes(Drill drill, ValueList<Singer> singers, List<Fault> was)
    {
        var (delivery, tempo, lines) = (drill.Delivery, drill.Tempo, drill.Expand().Lines.Count);
        var changes = new List<Remedy> { new PlannedBreaths(BreathNeed.Of(singers)) };
        changes.AddRange(Enumerable.Range(-24, 49).Where(by => by != 0 && drill.Tonic.Midi + by is >= 24 and <= 96).Select(by => new OtherTonic(Tonic.FromMidi(drill.Tonic.Midi + by))));
        changes.AddRange(Enumerable.Range(10, 391).Select(t => new OtherTempo(t)));
        foreach (var between in Enumerable.Range(10, 391).Where(t => tempo.Step.Sign > 0 && t > tempo.Start && t < tempo.Ceiling))
        {
            changes.Add(new OtherTempo(new TempoRamp(tempo.Start, tempo.Step, between)));
            changes.Add(new OtherTempo(new TempoRamp(between, tempo.Step, tempo.Ceiling)));
        }

        if (drill.Speeds.Count == 1)
        {
            changes.AddRange(Enumerable.Range(1, 4).Where(k => k != drill.Speeds[0].Kalam).Select(k => new OtherSpeeds([new Speed(k, drill.Speeds[0].Gati)])));
        }

        foreach (var most in drill.Speeds.Select(s => s.NotesPerAkshara))
        {
            changes.AddRange(((ValueList<Speed>[])[drill.Speeds.Where(s => s.NotesPerAkshara <= most).ToValueList(), drill.Speeds.Where(s => s.NotesPerAkshara >= most).ToValueList()])
                .Where(kept => kept.Count < drill.Speeds.Count).Select(kept => new OtherSpeeds(kept)));
        }

        changes.AddRange(Enumerable.Range(1, lines - 1).Where(kept => 2 * kept >= lines).Select(kept => new FewerLines(Enumerable.Range(1, kept).ToValueList())));
        foreach (var faulty in (IEnumerable<IEnumerable<Fault>>)[.. was.GroupBy(f => (f.Singer, f.Code)), .. was.GroupBy(f => f.Code), was])
        {
            var kept = Enumerable.Range(1, lines).Except(faulty.Select(f => f.Line)).ToValueList();
            changes.AddRange(2 * kept.Count >= lines && kept.Count < lines ? [new FewerLines(kept)] : (ReadOnlySpan<Remedy>)[]);
        }

        changes.AddRange(delivery.IsLineByLine ? [] : (ReadOnlySpan<Remedy>)[new OtherDelivery(isLineByLine: true)]);
        changes.AddRange(Enumerable.Range(1, 20).Where(h => delivery.IsLineByLine && new Rational(h, 2) > delivery.BreathSeconds).Select(h => new LongerBreath(new Rational(h, 2))));
        if (!drill.Meter.IsFree)
        {
            changes.AddRange(Enum.GetValues<Fill>().Where(f => f != delivery.Fill && (f != Fill.None || delivery.FillBy == FillBy.Room)).Select(f => new OtherFill(f)));
            changes.AddRange(Enum.GetValues<FillBy>().Where(b => b != delivery.FillBy && delivery.Fill != Fill.None).Select(b => new OtherFillBy(b)));
        }

        return changes;
    }

    private static int Size(Drill drill, Remedy remedy) => remedy switch
    {
        OtherTonic other => Math.Abs(other.Tonic.Midi - drill.Tonic.Midi) is var by && by % 12 == 0 ? by / 2 : by,
        OtherTempo other => Twentieths(drill.Tempo.Start, other.Tempo.Start) + Twentieths(drill.Tempo.Ceiling, other.Tempo.Ceiling),
        OtherSpeeds other => 8 * Math.Max(1, other.Speeds.Count == drill.Speeds.Count ? Math.Abs(other.Speeds[0].Kalam - drill.Speeds[0].Kalam) : drill.Speeds.Count - other.Speeds.Count),
        FewerLines fewer => (int)new Rational(20 * (drill.Expand().Lines.Count - fewer.Lines.Count), drill.Expand().Lines.Count).Ceiling(),
        LongerBreath longer => (int)(longer.Seconds - drill.Delivery.BreathSeconds).Ceiling(),
        PlannedBreaths => 2,
        OtherFill or OtherFillBy => 3,
        OtherDelivery => 4,
        _ => 20,
    };

    private static int Twentieths(Rational a, Rational b) => (int)(20 * (Rational.Max(a, b) - Rational.Min(a, b)) / Rational.Min(a, b)).Ceiling();

    /// <summary>What the checks find, by the numbers that the lines had before some were left out.</summary>
    private static List<Fault> Faults(Score score, ValueList<Singer> singers, ValueList<int> lines) => [.. singers.SelectMany(s => score.Check(s)).Select(f =>
        new Fault(f.Singer!, f.Code, lines[(f.Place!.Value.Line - 1) % lines.Count], Math.Abs((f.Measured ?? 0) - (f.Limit ?? 0))))];

    /// <summary>A drill and those who sing it.</summary>
    public sealed record Sung(Drill Drill, ValueList<Singer> Singers)
    {
        public override string ToString() => $"{Drill}, {string.Join("; ", Singers)}";
    }

    private sealed record Fault(string Singer, string Code, int Line, double Amount)
    {
        public (string Singer, string Code, int Line) At => (Singer, Code, Line);
    }
}

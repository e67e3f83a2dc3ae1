using Warmup.Plans;

namespace Warmup.Packages.Tests;

/// <summary>Values at the long end of what is allowed, made as a caller makes them: long names and titles, many lines, singers and days.</summary>
internal static class LongSamples
{
    private static readonly Scale LongNamed = new(new string('n', 100), Catalogue.Default.Parent(15).Scale.Ascent);

    private static readonly Pattern Many = Pattern.Sum([.. Enumerable.Range(1, 40).Select(n => Pattern.Ladder.Repeat(1 + (n % 2)))]);

    private static readonly Drill Drill = new()
    {
        Scale = LongNamed,
        Pattern = Many,
        Tonic = Tonic.FromMidi(60),
        Title = string.Concat(Enumerable.Repeat("a long title, ", 600)),
        Speeds = [.. Enumerable.Range(0, 60).Select(i => new Speed(1 + (i % 3)))],
        Tempo = new TempoRamp(60, 5, 90),
        Delivery = Delivery.LineByLine,
        Syllables = Syllables.Custom(new string('o', 20), [.. Enumerable.Range(0, 7).Select(i => new string((char)('a' + i), 20))]),
    };

    private static readonly ValueList<Singer> People =
        [.. Enumerable.Range(0, 60).Select(i => new Singer($"{new string('s', 55)} {i}", NoteName.FromMidi(50 + (i % 12)), NoteName.FromMidi(70 + (i % 9)), 5 + (i % 9)))];

    public static IEnumerable<object> All()
    {
        var small = Drill with { Pattern = Pattern.Ladder, Speeds = [Speed.First], Tonic = Tonic.FromMidi(70), Tempo = 300 };
        var score = (Drill with { Pattern = Pattern.Ladder }).ToScore();
        var one = small.ToScore();
        yield return Drill;
        yield return score;
        yield return Many;
        yield return Many.Expand(LongNamed);
        yield return new Climb { Drill = small };
        yield return Difficulty.Of(one);
        yield return RangeUse.Of(score, People[0]);
        yield return one.Check(People[0]);
        yield return one.RankTonics(People);
        yield return ClassReport.Of([small, small with { Tempo = 100 }], People);
        yield return TempoWindow.OfSpeeds(small, People);
        yield return small.Advise([People[0], People[1]])[0];
        yield return new FewerLines(Enumerable.Range(1, 100).Select(l => 2 * l).ToValueList());
        yield return new OtherSpeeds(Drill.Speeds);
        yield return new TwoRemedies(new OtherScale(LongNamed), new OtherSpeeds(Drill.Speeds));
        yield return new ScaleQuery { Text = new string('q', 100), NotesUp = 7 };
        yield return new Finding(FindingCode.PatternRefused, Severity.Error, new string('p', 1_000), new string('m', 1_000));
        if (BreathPlan.TryMake(one, new BreathNeed(12, 1), out var plan, out var refusal))
        {
            yield return plan;
        }
        else
        {
            yield return refusal;
        }

        yield return WarmupPlan.Make(new PlanRequest
        {
            Singers = [.. Enumerable.Range(0, 3).Select(i => new Singer($"{new string('s', 55)} {i}", NoteName.FromMidi(55), NoteName.FromMidi(76), 14))],
            Scales = [.. Enumerable.Range(1, 40).Select(n => new Scale($"{new string('n', 90)} {n}", Catalogue.Default.Parent(n).Scale.Ascent))],
            Start = new DateOnly(2026, 12, 1),
            Days = 30,
        });
    }
}

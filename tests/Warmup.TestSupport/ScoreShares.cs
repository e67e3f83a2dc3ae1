using System.Globalization;
using FsCheck;
using FsCheck.Fluent;

namespace Warmup.TestSupport;

/// <summary>How many of a fixed number of generated scores have what a law could pass empty without.</summary>
public static class ScoreShares
{
    private static readonly (string Name, int LeastPercent, Func<Sung, bool> Has)[] All =
    [
        ("several sections", 30, s => s.Score.Sections.Count > 1),
        ("sections of different meters", 10, s => s.Score.Sections.Select(x => x.Meter).Distinct().Skip(1).Any()),
        ("free meter", 10, s => s.Score.Sections.Any(x => x.Meter.IsFree)),
        ("a tala or a time signature besides Adi", 20, s => s.Score.Sections.Any(x => !x.Meter.IsFree && x.Meter != Meter.Adi)),
        ("a ramp", 20, s => s.Score.Sections.Any(x => !x.TempoChanges.IsEmpty)),
        ("several speeds", 20, s => s.Score.Sections.Any(x => x.Lines.Select(l => l.Speed).Distinct().Skip(1).Any())),
        ("several rounds", 10, s => s.Score.Sections.Any(x => x.Rounds > 1)),
        ("a count-in", 20, s => s.Score.Sections.Any(x => x.CountIn > 0)),
        ("breaths", 20, s => s.Score.Sections.Any(x => !x.Breaths.IsEmpty)),
        ("answers", 5, s => s.Score.Sections.Any(x => x.Lines.Any(l => l.Answer > 0))),
    ];

    /// <summary>Prints the shares and fails where one is too small.</summary>
    public static void AssertEnough(Gen<Sung> scores, int cases, ulong seed, Action<string> print)
    {
        var sample = scores.Sample(cases, new Rnd(seed), 50);
        var shares = All.Select(a => (a.Name, a.LeastPercent, Percent: sample.Count(a.Has) * 100.0 / cases)).ToList();
        print(string.Create(CultureInfo.InvariantCulture, $"{cases} scores of seed {seed}:"));
        shares.ForEach(s => print(string.Create(CultureInfo.InvariantCulture, $"{s.Percent,5:0.0} % have {s.Name} (at least {s.LeastPercent})")));
        Assert.All(shares, s => Assert.InRange(s.Percent, s.LeastPercent, 100));
    }
}

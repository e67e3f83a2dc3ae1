namespace Warmup.Plans.Tests;
public class DemoTests(ITestOutputHelper output)
{
    [Fact]
    public void Show()
    {
        var sw = System.Diagnostics.Stopwatch.StartNew();
        foreach (var level in Level.All) {
        try {
        var r = WarmupPlan.Make(Requests.Usual with { Level = level });
        output.WriteLine($"{level.Name} {sw.ElapsedMilliseconds} ms tonic {r.Plan.Tonic} octaves {r.Octaves} left {string.Join("|", r.LeftOut)} drills {r.Plan.Drills.Count}");
        foreach (var d in ((IEnumerable<PlanDrill>)r.Plan.Drills).Where(d => d.Scale.Name == "Mohanam")) output.WriteLine($"   {d.Role} {d.Exercise} {d.Meter} {d.Grade} {d.Span}");
        foreach (var d in r.Plan.Days) output.WriteLine($"{d.Date:yyyy-MM-dd} {d.Seconds.ToDouble():0.0} {string.Join(" | ", d.Drills.ConvertAll(x => $"{r.Plan.Drills[x.Drill].Scale.Name}:{r.Plan.Drills[x.Drill].Exercise}@{x.Tempo}({r.Plan.Drills[x.Drill].Grade})"))} left {d.LeftOut.Count}");
        } catch (PlanImpossibleException e) { output.WriteLine(level.Name + ": " + e.Message); }
        }
    }
}

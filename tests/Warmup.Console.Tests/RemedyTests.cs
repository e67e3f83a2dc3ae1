using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Cli.Tests;

/// <summary>
/// Source: the promise that a remedy, typed as its options say, clears its finding and brings no new one. The lines are followed here a second
/// time: by their number modulo the lines of the drill, and by the numbers that <c>--lines</c> names.
/// </summary>
public class RemedyTests
{
    private static readonly OptionReader Reader = new();

    public static Arbitrary<RemedyCase> Cases() => RemedyCases.All.ToArbitrary();

    [Property(Arbitrary = [typeof(RemedyTests)], MaxTest = 20)]
    public void Every_remedy_typed_as_its_options_clears_its_finding_and_brings_no_new_one(RemedyCase asked)
    {
        string[] line = [.. asked.Options, .. asked.IsPlanned ? [BreathOption.Name] : Array.Empty<string>()];
        var parsed = Reader.Parse(line);
        if (!TryRead(parsed, out var drill))
        {
            return;
        }

        var advice = drill.Advise(asked.Singers, planned: asked.IsPlanned ? BreathNeed.Of(asked.Singers) : null);
        var written = Reader.ToScore(parsed, asked.Singers);
        Assert.Equal(asked.Singers.SelectMany(s => written.Check(s)), advice.Select(a => a.Finding));
        var before = Faults(written, asked.Singers, drill.Expand().Lines.Count, null);
        foreach (var one in advice)
        {
            Assert.NotEqual(one.Remedies.IsEmpty, one.Otherwise.Length == 0);
            foreach (var remedy in one.Remedies)
            {
                Holds(line, remedy, drill, before, one.Finding, asked.Singers, $"{asked}: {one.Describe(drill)}");
            }

            foreach (var remedy in one.Alone)
            {
                var alone = Reader.ToScore(parsed, [one.Singer]);
                Holds(line, remedy, drill, Faults(alone, [one.Singer], drill.Expand().Lines.Count, null), one.Finding, [one.Singer], $"alone: {asked}: {one.Describe(drill)}");
            }
        }
    }

    /// <summary>
    /// The table of docs/voices.md: how often a remedy exists. Run it by its name; it prints the table, and the seed is fixed so that the run
    /// can be made again.
    /// </summary>
    [Fact(Explicit = true)]
    public void How_often_there_is_a_remedy()
    {
        var counts = new SortedDictionary<(string Code, bool IsClass), int[]>();
        var kinds = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var asked in RemedyCases.All.Sample(1_000, new Rnd(15), 100))
        {
            if (!TryRead(Reader.Parse(asked.Options), out var drill) || asked.IsPlanned)
            {
                continue;
            }

            foreach (var group in drill.Advise(asked.Singers).GroupBy(a => (a.Finding.Code, a.Singer)))
            {
                var key = (group.Key.Code, asked.Singers.Count > 1);
                var row = counts.TryGetValue(key, out var known) ? known : counts[key] = new int[5];
                var worst = group.MinBy(a => a.Remedies.Count)!;
                row[0]++;
                row[worst.Remedies.IsEmpty ? worst.Alone.IsEmpty ? 4 : 3 : worst.Remedies[0] is TwoRemedies ? 2 : 1]++;
                foreach (var kind in worst.Remedies.Select(r => r.GetType().Name))
                {
                    kinds[kind] = kinds.GetValueOrDefault(kind) + 1;
                }
            }
        }

        var output = TestContext.Current.TestOutputHelper!;
        foreach (var (key, row) in counts)
        {
            output.WriteLine($"| `{key.Code}`, {(key.IsClass ? "2 or 3 singers" : "1 singer")} | {string.Join(" | ", row)} |");
        }

        output.WriteLine(string.Join(", ", kinds.OrderByDescending(k => k.Value).Select(k => $"{k.Key} {k.Value}")));
        Assert.NotEmpty(counts);
    }

    private static bool TryRead(System.CommandLine.ParseResult parsed, out Drill drill)
    {
        try
        {
            drill = Reader.Read(parsed);
            return drill.TryToScore(out _, out _);
        }
        catch (Exception refused) when (refused is InputException or PatternException)
        {
            drill = null!;
            return false;
        }
    }

    private static void Holds(
        string[] line, Remedy remedy, Drill drill, Dictionary<(string, string, int), double> before, Finding finding, ValueList<Singer> singers, string what)
    {
        var options = Reader.ToOptions(remedy, Reader.Parse(line));
        var parsed = Reader.Parse(OptionReader.Joined(line, options));
        var lines = drill.Expand().Lines.Count;
        var kept = Kept(line, options);
        var score = Reader.ToScore(parsed, singers);

        // The typed drill is the applied one: the same notes at the same times.
        var applied = remedy.ToScore(drill);
        applied = line.Contains(BreathOption.Name) ? new PlannedBreaths(BreathNeed.Of(singers)).Apply(applied) : applied;
        Assert.True(applied.Sections[0].Notes == score.Sections[0].Notes && applied.Sections[0].Pitches == score.Sections[0].Pitches, $"{what}: {remedy} is not {string.Join(' ', options)}");

        var after = Faults(score, singers, kept?.Count ?? Reader.Read(parsed).Expand().Lines.Count, kept);
        Assert.False(after.ContainsKey((finding.Singer!, finding.Code, (finding.Place!.Value.Line - 1) % lines)), $"{what}: still there with {string.Join(' ', options)}");
        foreach (var (fault, amount) in after)
        {
            Assert.True(before.TryGetValue(fault, out var was) && amount <= was + 1e-6, $"{what}: {fault} is new or worse with {string.Join(' ', options)}");
        }
    }

    /// <summary>The numbers of the lines that stay, from 0 among those of the drill before; <see langword="null"/> where all stay.</summary>
    private static List<int>? Kept(string[] line, IReadOnlyList<string> options)
    {
        var at = options.ToList().IndexOf("--lines");
        if (at < 0)
        {
            return null;
        }

        var before = Array.IndexOf(line, "--lines");
        var numbers = Numbers(options[at + 1]);
        return before < 0 ? numbers.ConvertAll(n => n - 1) : numbers.ConvertAll(n => Numbers(line[before + 1]).IndexOf(n));
    }

    private static List<int> Numbers(string text) => text.Split(',').SelectMany(part =>
    {
        var ends = part.Split('-').Select(e => int.Parse(e, CultureInfo.InvariantCulture)).ToArray();
        return Enumerable.Range(ends[0], ends[^1] - ends[0] + 1);
    }).ToList();

    private static Dictionary<(string Singer, string Code, int Line), double> Faults(Score score, ValueList<Singer> singers, int lines, List<int>? kept)
    {
        var faults = new Dictionary<(string, string, int), double>();
        foreach (var finding in singers.SelectMany(s => score.Check(s)))
        {
            var line = (finding.Place!.Value.Line - 1) % lines;
            var key = (finding.Singer!, finding.Code, kept?[line] ?? line);
            faults[key] = Math.Max(faults.GetValueOrDefault(key), Math.Abs(finding.Measured!.Value - finding.Limit!.Value));
        }

        return faults;
    }
}

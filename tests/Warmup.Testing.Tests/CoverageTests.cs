using System.Globalization;
using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Testing.Tests;

/// <summary>What a report says of its cases: of what kinds they were, which is the smallest, and how to see it again.</summary>
public partial class CoverageTests
{
    private static readonly LawOptions Options = new() { Cases = 300, Seed = "7,9" };

    private static readonly PatternRule Held = PatternRule.Of("top held", p => p.Hold(1));

    [Fact]
    public void The_shares_of_a_group_are_of_all_cases_in_which_the_law_spoke()
    {
        var report = LawSuite.Check(Held, Options, PatternLaws.KeepsNotes)[0];
        Assert.Equal(["scales", "notes of a scale", "parts of a pattern", "lines"], report.Coverage.Shares.Select(s => s.Group).Distinct());
        Assert.All(report.Coverage.Shares.GroupBy(s => s.Group), g =>
        {
            Assert.Equal(report.Cases, g.Sum(s => s.Count));
            Assert.All(g, s => Assert.Equal(report.Cases, s.Cases));
            Assert.Equal(1, g.Sum(s => s.Share), 9);
            Assert.Equal(g.Select(s => s.Count).OrderDescending(), g.Select(s => s.Count));
        });
        Assert.Equal(report.Coverage.Shares[0].Share, report.Coverage.ShareOf("scales", report.Coverage.Shares[0].Kind));
        Assert.Equal(0, report.Coverage.ShareOf("scales", "square"));
    }

    // The generators' own promise (docs/laws.md): at least 30 % of the scales differ up and down, at least 20 % zigzag; a zigzag can do both.
    [Fact]
    public void The_usual_scales_reach_the_promised_shares()
    {
        var coverage = LawSuite.Check(Held, Options with { Cases = 2_000 }, PatternLaws.KeepsEmpty)[0].Coverage;
        Assert.InRange(coverage.ShareOf("scales", "zigzag"), 0.2, 0.5);
        Assert.InRange(coverage.ShareOf("scales", "differ up and down") + coverage.ShareOf("scales", "zigzag"), 0.3, 0.9);
    }

    [Theory]
    [InlineData("same both ways")]
    [InlineData("differ up and down")]
    [InlineData("zigzag")]
    [InlineData("without upper tonic")]
    public void A_generator_of_one_shape_covers_that_shape_alone(string shape)
    {
        Gen<Scale> scales = shape switch { "same both ways" => ScaleGenerators.Symmetric, "differ up and down" => ScaleGenerators.Asymmetric, "zigzag" => ScaleGenerators.Vakra, _ => ScaleGenerators.WithoutUpperTonic };
        var coverage = LawSuite.Check(Held, Options with { Cases = 40, Scales = scales }, PatternLaws.KeepsEmpty)[0].Coverage;
        Assert.Equal(1, coverage.ShareOf("scales", shape));
    }

    [Fact]
    public void A_kept_law_prints_its_shares_and_a_broken_one_counts_no_case_of_the_shrinking()
    {
        var report = LawSuite.Check(Held, Options, PatternLaws.KeepsNotes)[0];
        var lines = report.Describe().Split('\n');
        Assert.Equal(5, lines.Length);
        Assert.Matches("^  scales: [0-9]+ % [a-z ]+(, [0-9]+ % [a-z ]+){3}$", lines[1]);
        var broken = LawSuite.Check(Held, Options, new PatternLaw("is false", "-", "-", (_, _, _, _) => LawVerdict.Broken))[0];
        Assert.True(broken.Failure!.Shrinks > 0);
        Assert.All(broken.Coverage.Shares, s => Assert.Equal((1, 1), (s.Count, s.Cases)));
    }

    [Fact]
    public void The_sung_cases_cover_sections_and_talas()
    {
        var report = LawSuite.CheckSung(Held, Options, ScoreLaws.StaysInRange)[0];
        Assert.True(report.IsKept, report.Describe());
        var sections = report.Coverage.Shares.Where(s => s.Group == "sections").ToList();
        Assert.Equal(["1", "2", "3"], sections.Select(s => s.Kind).Order());
        Assert.All(sections, s => Assert.Equal(report.Cases, s.Cases));

        // Each drill of a case has its tala: Adi, the other families, chapus, time signatures and none.
        var talas = report.Coverage.Shares.Where(s => s.Group == "talas").ToList();
        Assert.Equal(sections.Sum(s => s.Count * int.Parse(s.Kind, CultureInfo.InvariantCulture)), talas[0].Cases);
        Assert.InRange(talas.Count, 9, 11);
        Assert.All((string[])["free", "adi", "chapu", "time signature", "eka"], tala => Assert.InRange(report.Coverage.ShareOf("talas", tala), 0.01, 0.4));
        Assert.Contains("talas: ", report.Describe(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_law_of_scores_that_is_broken_is_shrunk_to_the_smallest_drill()
    {
        // One unit more at the end of each line moves the lines after the first: the smallest drill has two lines of one note.
        var report = LawSuite.CheckSung(Held, Options, ScoreLaws.KeepsLineStarts)[0];
        var drill = Assert.Single(report.Failure!.Drills);
        Assert.Equal(2, drill.Expand().Lines.Count);
        Assert.True(drill.Meter.IsFree);
        Assert.Equal((Delivery.Continuous, "C4", 1), (drill.Delivery, drill.Tonic.ToString(), drill.Speeds.Count));
        Assert.InRange(drill.Pattern.Nodes, 1, 3);
        Assert.Contains($"tala {Meter.Free.Name}", report.Describe(), StringComparison.Ordinal);
        Assert.Contains(drill.Pattern.ToString(), report.Describe(), StringComparison.Ordinal);
    }

    // Which laws hold follows from what the words do.
    [Theory]
    [InlineData("last-first", "keeps the length", true)]
    [InlineData("last-first", "stays in the range", true)]
    [InlineData("backwards", "stays in the range", false)]
    [InlineData("each-note(2)", "stays in the range", true)]
    [InlineData("each-note(2)", "keeps the length", false)]
    [InlineData("above(1)", "stays in the range", false)]
    [InlineData("glide", "keeps the starts of lines", true)]
    [InlineData("stretch(2)", "keeps the starts of lines", false)]
    [InlineData("hold(1)", "keeps whole avartanas", false)]
    [InlineData("glide", "keeps whole avartanas", true)]
    public void Laws_of_scores_tell_the_words_apart(string word, string law, bool holds)
    {
        var rule = PatternRule.Of(word, p => Pattern.Parse($"({p}).{word}"));
        var report = LawSuite.CheckSung(rule, Options with { Cases = 100 }, ScoreLaws.All.First(l => l.Name == law))[0];
        Assert.True(report.IsKept == holds, report.Describe());
    }

    [Fact]
    public void A_replay_line_holds_the_options_that_give_the_case_again()
    {
        var failure = LawSuite.Check(Held, Options, PatternLaws.IsIdempotent)[0].Failure!;
        var again = LawSuite.Check(Held, new LawOptions { Cases = 1, Seed = SeedOf(failure.ReplayLine, "Check") }, PatternLaws.IsIdempotent);
        Assert.Equal((failure.Pattern, failure.Scale.ToNotesText()), (again[0].Failure!.Pattern, again[0].Failure!.Scale.ToNotesText()));
        Assert.Contains(failure.Pattern.ToString(), Assert.Throws<LawBrokenException>(() => again.ThrowIfBroken()).Message, StringComparison.Ordinal);

        var sung = LawSuite.CheckSung(Held, Options, ScoreLaws.KeepsLineStarts)[0].Failure!;
        var sungAgain = LawSuite.CheckSung(Held, new LawOptions { Cases = 1, Seed = SeedOf(sung.ReplayLine, "CheckSung") }, ScoreLaws.KeepsLineStarts);
        Assert.Equal(sung.Drills, sungAgain[0].Failure!.Drills);
        Assert.Contains(sung.ReplayLine, Assert.Throws<LawBrokenException>(() => sungAgain.ThrowIfBroken()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_suite_of_scores_without_a_law_is_refused_and_a_silent_law_does_not_pass()
    {
        Assert.Throws<ArgumentException>(() => LawSuite.CheckSung(Held, Options));
        var silent = LawSuite.CheckSung(Held, new LawOptions { Cases = 5 }, new ScoreLaw("says nothing", "-", "-", (_, _) => LawVerdict.SaysNothing))[0];
        Assert.False(silent.IsKept);
        Assert.Contains("never tried in 0 cases", silent.Describe(), StringComparison.Ordinal);
        Assert.Empty(silent.Coverage.Shares);
    }

    private static string SeedOf(string line, string method)
    {
        var match = Replay().Match(line);
        Assert.True(match.Success && match.Groups["method"].Value == method, line);
        return match.Groups["seed"].Value;
    }

    [GeneratedRegex("""^LawSuite\.(?<method>\w+)\(rule, new LawOptions \{ Cases = 1, Seed = "(?<seed>[0-9,]+)" \}, law\)\.ThrowIfBroken\(\);$""")]
    private static partial Regex Replay();
}

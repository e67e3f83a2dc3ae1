namespace Warmup.Testing.Tests;

/// <summary>
/// The suite held against rules whose laws are known beforehand: right ones must pass, wrong ones must be caught, shrunk and replayable.
/// </summary>
public class LawSuiteTests
{
    private static readonly LawOptions Options = new() { Cases = 200, Seed = "7,9" };

    // A wrong rule: it means to sing each line twice, and drops the last note of lines of more than three.
    private static readonly PatternRule Wrong = PatternRule.OfLines("sing twice", lines => lines.ConvertAll(
        line => line.Notes.Count > 3 ? new Line(line.Notes.Take(line.Notes.Count - 1).ToValueList()) : line));

    [Fact]
    public void A_right_rule_passes_in_five_lines()
    {
        var rule = PatternRule.Of("top held", p => p.Hold(1));
        var reports = LawSuite.Check(rule, Options, PatternLaws.IsTotal, PatternLaws.KeepsNotes, PatternLaws.WorksPartByPart, PatternLaws.WorksLineByLine, PatternLaws.KeepsEmpty, PatternLaws.StaysInTheScale);
        Assert.All(reports.ToArray(), r => Assert.True(r.IsKept, r.Describe()));
        Assert.All(reports.ToArray(), r => Assert.True(r.Cases >= 200, r.Describe()));
        reports.ThrowIfBroken();
    }

    [Fact]
    public void A_wrong_rule_is_caught_and_shrunk_to_its_smallest_case()
    {
        var report = LawSuite.Check(Wrong, Options, PatternLaws.KeepsNoteCount)[0];
        Assert.False(report.IsKept);
        var failure = report.Failure!;

        // Four notes in one line are the least that breaks it: the run of a scale of three notes, or of two without its upper tonic and less.
        Assert.Equal(1, failure.Pattern.Nodes);
        Assert.Equal(4, failure.Pattern.Expand(failure.Scale).Lines.Max(l => l.Notes.Count));
        Assert.True(failure.Scale.IsSymmetric);
        Assert.True(failure.Shrinks > 0);
    }

    [Fact]
    public void A_broken_law_prints_the_pattern_the_scale_and_a_seed_that_gives_it_again()
    {
        var report = LawSuite.Check(Wrong, Options, PatternLaws.KeepsNoteCount)[0];
        var text = report.Describe();
        Assert.Contains("BROKEN", text, StringComparison.Ordinal);
        Assert.Contains(report.Failure!.Pattern.ToString(), text, StringComparison.Ordinal);
        Assert.Contains(report.Failure.Scale.ToNotesText(), text, StringComparison.Ordinal);
        Assert.Contains(report.Failure.Seed, text, StringComparison.Ordinal);
        var again = LawSuite.Check(Wrong, new LawOptions { Cases = 1, Seed = report.Failure.Seed }, PatternLaws.KeepsNoteCount)[0];
        Assert.Equal(report.Failure.Pattern, again.Failure!.Pattern);
        Assert.Equal(report.Failure.Scale.ToNotesText(), again.Failure.Scale.ToNotesText());
    }

    [Fact]
    public void Throwing_carries_every_broken_report()
    {
        var reports = LawSuite.Check(Wrong, Options, PatternLaws.KeepsNoteCount, PatternLaws.KeepsLineCount, PatternLaws.KeepsNotes);
        var thrown = Assert.Throws<LawBrokenException>(() => reports.ThrowIfBroken());
        Assert.Contains(PatternLaws.KeepsNoteCount.Algebra, thrown.Message, StringComparison.Ordinal);
        Assert.Contains(PatternLaws.KeepsNotes.Algebra, thrown.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(PatternLaws.KeepsLineCount.Algebra, thrown.Message, StringComparison.Ordinal);
    }

    // Which of the suite's laws hold of some of the library's own words follows from docs/laws.md.
    [Theory]
    [InlineData("reversed", "undoes itself", true)]
    [InlineData("reversed", "keeps the number of lines", false)]
    [InlineData("reversed", "works part by part", true)]
    [InlineData("ends", "is idempotent", true)]
    [InlineData("ends", "keeps the notes", false)]
    [InlineData("ends", "works line by line", true)]
    [InlineData("last-first", "undoes itself", true)]
    [InlineData("last-first", "keeps the notes", true)]
    [InlineData("last-first", "works part by part", false)]
    [InlineData("last-first", "works line by line", false)]
    [InlineData("join", "is idempotent", true)]
    [InlineData("join", "keeps the notes", true)]
    [InlineData("join", "keeps the number of lines", false)]
    [InlineData("up-down", "keeps the empty pattern", true)]
    [InlineData("up-down", "is idempotent", false)]
    [InlineData("transposed(1)", "stays in the scale", true)]
    [InlineData("backwards", "is total", true)]
    [InlineData("backwards", "keeps the number of notes", false)]
    public void Laws_tell_the_words_apart(string word, string law, bool holds)
    {
        var rule = PatternRule.Of(word, p => Pattern.Parse($"({p}).{word}"));
        var report = LawSuite.Check(rule, Options, PatternLaws.All.First(l => l.Name == law))[0];
        Assert.True(report.IsKept == holds, report.Describe());
    }

    [Fact]
    public void A_rule_that_throws_is_not_total()
    {
        var rule = PatternRule.OfLines("first two", lines => [lines[0], lines[1]]);
        Assert.False(LawSuite.Check(rule, Options, PatternLaws.IsTotal)[0].IsKept);
    }

    [Fact]
    public void A_mistake_in_a_rule_of_patterns_is_not_taken_for_a_pattern_that_is_too_large()
    {
        var rule = PatternRule.Of("the first none", p => p.Take(0));
        Assert.False(LawSuite.Check(rule, Options, PatternLaws.IsTotal)[0].IsKept);
        var large = PatternRule.Of("a thousand times", p => p.Repeat(1_000).Repeat(1_000));
        Assert.Equal(LawVerdict.SaysNothing, PatternLaws.IsTotal.Check(large, Pattern.Ladder, Pattern.Run, Catalogue.Default.Read("mohanam")));
    }

    [Fact]
    public void A_suite_without_a_law_is_refused() => Assert.Throws<ArgumentException>(() => LawSuite.Check(Wrong, Options));

    [Fact]
    public void What_a_report_prints_of_itself_is_one_short_line()
    {
        var name = new string('n', 60);
        var broken = new PatternLaw(name, "-", "-", (_, _, _, _) => LawVerdict.Broken);
        var report = LawSuite.Check(PatternRule.Of(name, p => p), Options, broken)[0];
        foreach (var text in (string[])[report.ToString(), report.Failure!.ToString(), broken.ToString(), Options.ToString()])
        {
            Assert.InRange(text.Length, 1, 200);
            Assert.DoesNotContain('\n', text);
        }
    }

    [Fact]
    public void Changing_places_is_a_law_too()
    {
        var rule = PatternRule.Of("ends", p => p.Ends());
        Assert.True(LawSuite.Check(rule, Options, PatternLaws.ChangesPlacesWith("reversed", p => p.Reversed()))[0].IsKept);
        Assert.False(LawSuite.Check(rule, Options, PatternLaws.ChangesPlacesWith("windows(2)", p => p.Windows(2)))[0].IsKept);
    }

    [Fact]
    public void A_law_that_never_speaks_does_not_pass()
    {
        var silent = new PatternLaw("says nothing", "-", "-", (_, _, _, _) => LawVerdict.SaysNothing);
        var report = LawSuite.Check(Wrong, new LawOptions { Cases = 10 }, silent)[0];
        Assert.False(report.IsKept);
        Assert.Contains("never tried", report.Describe(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("x")]
    [InlineData("1")]
    [InlineData("1,2,3,4")]
    [InlineData("1,2")]
    [InlineData("1,3,x")]
    public void A_seed_that_is_none_is_refused(string seed) => Assert.Contains(
        $"'{seed}'", Assert.Throws<ArgumentException>(() => LawSuite.Check(Wrong, new LawOptions { Seed = seed }, PatternLaws.IsTotal)).Message, StringComparison.Ordinal);
}

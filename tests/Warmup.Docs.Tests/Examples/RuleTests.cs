using Warmup.Testing;

namespace Warmup.Docs.Tests.Examples;

/// <summary>The page on testing a rule. Its classes for NUnit and MSTest are called here as their frameworks call them.</summary>
public sealed class RuleTests
{
    [Fact]
    public void A_law_that_is_broken_says_how_to_see_it_again()
    {
        using var said = new StringWriter { NewLine = "\n" };
        #region rule that breaks a law
        var rule = PatternRule.Of("top held", p => p.Hold(1));
        var law = ScoreLaws.KeepsLineStarts;
        var reports = LawSuite.CheckSung(rule, new LawOptions { Seed = "7,9" }, law);
        said.WriteLine(reports[0].Describe());
        #endregion

        Xunit.Assert.Contains("```text\n" + said + "```\n", Repository.Pages.Single(p => p.Path == "docs/test-a-rule.md").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_shares_on_the_page_are_those_of_a_run()
    {
        var report = LawSuite.CheckSung(PatternRule.Of("top held", p => p.Hold(1)), new LawOptions { Seed = "7,9" }, ScoreLaws.StaysInRange)[0];
        Xunit.Assert.Contains($"```text\n{report.Describe()}\n```\n", Repository.Pages.Single(p => p.Path == "docs/test-a-rule.md").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_line_that_was_printed_gives_the_case_again()
    {
        var thrown = Xunit.Assert.Throws<LawBrokenException>(() =>
        {
            #region rule replayed
            var rule = PatternRule.Of("top held", p => p.Hold(1));
            var law = ScoreLaws.KeepsLineStarts;
            LawSuite.CheckSung(rule, new LawOptions { Cases = 1, Seed = "15673735954724858045,9007279174066727645,1" }, law).ThrowIfBroken();
            #endregion
        });
        Xunit.Assert.Contains("BROKEN", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_share_of_the_cases_can_be_asked_for()
    {
        #region rule and its coverage
        var report = LawSuite.Check(PatternRule.Of("top held", p => p.Hold(1)), PatternLaws.KeepsNotes)[0];
        if (report.Coverage.ShareOf("scales", "zigzag") < 0.1)
        {
            throw new LawBrokenException($"too few zigzag scales:\n{report.Coverage.Describe()}");
        }
        #endregion
    }

    [Fact]
    public void The_classes_for_the_other_frameworks_pass()
    {
        foreach (var law in (PatternLaw[])[PatternLaws.KeepsNotes, PatternLaws.WorksLineByLine, PatternLaws.StaysInTheScale])
        {
            new TopHeldFixture().It_keeps(law);
        }

        Xunit.Assert.All(TopHeldClass.Laws, laws => new TopHeldClass().It_keeps((PatternLaw)laws[0]));
        new TopHeldFixture().It_is_sung_in_the_same_range();
        new TopHeldClass().It_is_sung_in_the_same_range();
    }
}

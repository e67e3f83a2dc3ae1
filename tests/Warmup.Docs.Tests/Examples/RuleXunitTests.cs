using Warmup.Testing;

namespace Warmup.Docs.Tests.Examples;

#region rule in xunit
/// <summary>The rule in xunit: a case for each law.</summary>
public sealed class TopHeldTests
{
    private static readonly PatternRule Rule = PatternRule.Of("top held", p => p.Hold(1));

    public static TheoryData<string> Laws => [PatternLaws.KeepsNotes.Name, PatternLaws.WorksLineByLine.Name, PatternLaws.StaysInTheScale.Name];

    [Theory]
    [MemberData(nameof(Laws))]
    public void It_keeps(string law) => LawSuite.Check(Rule, PatternLaws.All.Single(l => l.Name == law)).ThrowIfBroken();

    [Fact]
    public void It_is_sung_in_the_same_range() => LawSuite.CheckSung(Rule, ScoreLaws.StaysInRange).ThrowIfBroken();
}
#endregion

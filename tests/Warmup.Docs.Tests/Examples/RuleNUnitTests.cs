using NUnit.Framework;
using Warmup.Testing;

namespace Warmup.Docs.Tests.Examples;

#region rule in NUnit
/// <summary>The rule in NUnit: a case for each law.</summary>
[TestFixture]
public sealed class TopHeldFixture
{
    private static readonly PatternRule Rule = PatternRule.Of("top held", p => p.Hold(1));

    private static IEnumerable<PatternLaw> Laws => [PatternLaws.KeepsNotes, PatternLaws.WorksLineByLine, PatternLaws.StaysInTheScale];

    [TestCaseSource(nameof(Laws))]
    public void It_keeps(PatternLaw law) => LawSuite.Check(Rule, law).ThrowIfBroken();

    [Test]
    public void It_is_sung_in_the_same_range() => LawSuite.CheckSung(Rule, ScoreLaws.StaysInRange).ThrowIfBroken();
}
#endregion

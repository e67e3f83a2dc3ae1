using Microsoft.VisualStudio.TestTools.UnitTesting;
using Warmup.Testing;

// The global usings have an attribute of the same name, of xunit.
using TestClassAttribute = Microsoft.VisualStudio.TestTools.UnitTesting.TestClassAttribute;

namespace Warmup.Docs.Tests.Examples;

#region rule in MSTest
/// <summary>The rule in MSTest: a case for each law.</summary>
[TestClass]
public sealed class TopHeldClass
{
    private static readonly PatternRule Rule = PatternRule.Of("top held", p => p.Hold(1));

    public static IEnumerable<object[]> Laws => [[PatternLaws.KeepsNotes], [PatternLaws.WorksLineByLine], [PatternLaws.StaysInTheScale]];

    [TestMethod]
    [DynamicData(nameof(Laws))]
    public void It_keeps(PatternLaw law) => LawSuite.Check(Rule, law).ThrowIfBroken();

    [TestMethod]
    public void It_is_sung_in_the_same_range() => LawSuite.CheckSung(Rule, ScoreLaws.StaysInRange).ThrowIfBroken();
}
#endregion

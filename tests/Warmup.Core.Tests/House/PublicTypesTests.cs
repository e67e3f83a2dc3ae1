namespace Warmup.Tests;

/// <summary>
/// Source: the library's own promise that every public type is an immutable value, safe to share. Walks all public types, so that a new
/// one cannot be forgotten. That every public member is documented is ensured by the build.
/// </summary>
public class PublicTypesTests
{
    private static readonly Type[] All = typeof(Scale).Assembly.GetExportedTypes();

    public static TheoryData<string> Types => [.. All.Select(t => t.FullName!)];

    public static TheoryData<string> Values => [.. All.Where(PublicTypeChecks.IsValue).Select(t => t.FullName!)];

    public static TheoryData<string> Structs => [.. All.Where(PublicTypeChecks.IsStruct).Select(t => t.FullName!)];

    private static Type Named(string name) => typeof(Scale).Assembly.GetType(name, true)!;

    [Fact]
    public void There_are_types_to_walk()
    {
        Assert.Contains(typeof(Rational), All);
        Assert.True(All.Length > 40, All.Length.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.True(All.Count(PublicTypeChecks.IsValue) > 25);
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Types_are_closed_for_inheritance(string name) => PublicTypeChecks.IsClosedForInheritance(Named(name), name.StartsWith("Warmup.Research.", StringComparison.Ordinal) ? "Warmup.Research" : "Warmup");

    [Theory]
    [MemberData(nameof(Types))]
    public void Nothing_can_be_changed_from_outside(string name) => PublicTypeChecks.CannotBeChangedFromOutside(Named(name));

    [Theory]
    [MemberData(nameof(Structs))]
    public void The_default_of_a_struct_is_valid(string name) => PublicTypeChecks.HasAValidDefault(Named(name));

    [Theory]
    [MemberData(nameof(Values))]
    public void Values_built_twice_are_equal_and_different_ones_are_not(string name) => PublicTypeChecks.ComparesByContent(Named(name), Samples.ByType);

    [Fact]
    public void Classes_that_are_no_values_are_few_and_known() => Assert.Equal(
        [
            "CarriedDrill", "Catalogue", "CatalogueEntry", "Caution", "Climb", "CombinatorInput", "Exercise", "ExportException", "ModalShift", "OrderedParallel", "OrderedParallelException", "PatternEnumeration", "PatternException", "ScaleQuery", "Sruti", "TextJsonConverter`1", "UnsupportedJsonConverter`1", "ValueListJsonConverter", "WarmupFormatException",
        ],
        All.Where(t => t is { IsClass: true } && !(t.IsAbstract && t.IsSealed) && !PublicTypeChecks.IsValue(t)).Select(t => t.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_finding_code_differs()
    {
        var codes = typeof(FindingCode).GetFields(PublicTypeChecks.Public).Select(f => (string)f.GetRawConstantValue()!).ToList();
        Assert.True(codes.Count >= 9);
        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.All(codes, c => Assert.Matches(@"^[a-z]+\.[a-z]+$", c));
    }

    [Fact]
    public void Exceptions_carry_what_they_are_given()
    {
        var inner = new InvalidOperationException();
        var error = new TextError(2, 3, "b");
        Assert.Same(error, new WarmupFormatException(error).Error);
        Assert.Contains("line 2", new WarmupFormatException(error).Message, StringComparison.Ordinal);
        Assert.Same(error, error.ToException().Error);
        var finding = new Finding(FindingCode.PatternEmpty, Severity.Error, "c", "d");
        Assert.Same(finding, new PatternException(finding).Finding);
        Assert.Throws<ArgumentNullException>("finding", () => new PatternException(null!));
        Assert.Same(inner, new ExportException("e", inner).InnerException);
        Assert.Equal("e", new ExportException("e").Message);
        var failed = new OrderedParallelException(7, inner);
        Assert.Same(inner, failed.InnerException);
        Assert.Equal(7, failed.Index);
        Assert.Contains("item 7 ", failed.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>("innerException", () => new OrderedParallelException(7, null!));
    }
}

using System.Reflection;

namespace Warmup.Packages.Tests;

/// <summary>
/// Source: the libraries' own promise that every public type is an immutable value, safe to share. Walks the public types of all libraries
/// but the core, whose own tests do the same. That every public member is documented is ensured by the build.
/// </summary>
public class LibraryTypesTests
{
    private static readonly Type[] All = [.. PackedLibraries.Names.Where(n => n != "Warmup.Core").SelectMany(n => Assembly.Load(n).GetExportedTypes())];

    public static TheoryData<string> Types => [.. All.Select(t => t.FullName!)];

    public static TheoryData<string> Values => [.. All.Where(t => PublicTypeChecks.IsValue(t) && !t.IsAbstract).Select(t => t.FullName!)];

    private static Type Named(string name) => All.Single(t => t.FullName == name);

    [Fact]
    public void Each_library_has_types_to_walk() => Assert.Equal(
        PackedLibraries.Names.Where(n => n != "Warmup.Core"),
        All.Select(t => t.Assembly.GetName().Name!).Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Types))]
    public void Types_are_closed_for_inheritance(string name) => PublicTypeChecks.IsClosedForInheritance(Named(name), Named(name).Assembly.GetName().Name!);

    [Theory]
    [MemberData(nameof(Types))]
    public void Nothing_can_be_changed_from_outside(string name) => PublicTypeChecks.CannotBeChangedFromOutside(Named(name));

    [Fact]
    public void The_default_of_a_struct_is_valid() => Assert.All(All.Where(PublicTypeChecks.IsStruct), PublicTypeChecks.HasAValidDefault);

    [Theory]
    [MemberData(nameof(Values))]
    public void Values_built_twice_are_equal_and_different_ones_are_not(string name) => PublicTypeChecks.ComparesByContent(Named(name), LibrarySamples.ByType);

    [Fact]
    public void Classes_that_are_no_values_are_formats_exceptions_and_a_few_that_are_known() => Assert.Equal(
        ["DayScores", "MonthPage", "PatternRule", "PlanDraw", "ScoreCheck", "SoundSource"],
        All.Where(t => t is { IsClass: true } && !(t.IsAbstract && t.IsSealed) && !PublicTypeChecks.IsValue(t))
            .Where(t => !typeof(IScoreFormat).IsAssignableFrom(t) && !typeof(Exception).IsAssignableFrom(t))
            .Select(t => t.Name)
            .Order(StringComparer.Ordinal));

    [Fact]
    public void A_format_keeps_nothing_that_changes() => Assert.All(
        All.Where(t => typeof(IScoreFormat).IsAssignableFrom(t)).SelectMany(t => t.GetFields(BindingFlags.NonPublic | BindingFlags.Instance)),
        f => Assert.True(f.IsInitOnly, $"{f.DeclaringType}.{f.Name} can be set"));
}

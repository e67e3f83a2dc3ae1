using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace Warmup.Tests;

/// <summary>
/// Source: the library's own promise that every public type is an immutable value, safe to share. Walks all public types, so that a new
/// one cannot be forgotten. That every public member is documented is ensured by the build.
/// </summary>
public class PublicTypesTests
{
    private const BindingFlags Public = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] All = typeof(Scale).Assembly.GetExportedTypes();

    public static TheoryData<string> Types => [.. All.Select(t => t.FullName!)];

    public static TheoryData<string> Values => [.. All.Where(IsValue).Select(t => t.FullName!)];

    public static TheoryData<string> Structs => [.. All.Where(t => t.IsValueType && !t.IsEnum).Select(t => t.FullName!)];

    private static Type Named(string name) => typeof(Scale).Assembly.GetType(name, true)!;

    /// <summary>Types that compare by content: structs and records.</summary>
    private static bool IsValue(Type type) =>
        !type.IsEnum && !type.IsInterface && !IsEnumerator(type)
        && (type.IsValueType || type.GetMethod("<Clone>$", BindingFlags.Public | BindingFlags.Instance) is not null);

    private static bool IsEnumerator(Type type) => type.IsNested && type.Name == "Enumerator";

    private static Type Closed(Type type) => type.IsGenericTypeDefinition ? type.MakeGenericType([.. type.GetGenericArguments().Select(_ => typeof(int))]) : type;

    [Fact]
    public void There_are_types_to_walk()
    {
        Assert.Contains(typeof(Rational), All);
        Assert.True(All.Length > 40, All.Length.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.True(All.Count(IsValue) > 25);
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Types_are_closed_for_inheritance(string name)
    {
        var type = Named(name);
        Assert.True(type.IsSealed || type.IsAbstract || type.IsInterface || type.IsValueType || type.IsEnum, name);
        Assert.Equal("Warmup", type.Namespace);
        if (type is { IsAbstract: true, IsSealed: false, IsInterface: false })
        {
            // An abstract type is a closed family: nobody outside can add to it.
            Assert.All(type.GetConstructors(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance), c => Assert.False(c.IsPublic, name));
        }
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Nothing_can_be_changed_from_outside(string name)
    {
        var type = Named(name);
        foreach (var property in type.GetProperties(Public))
        {
            if (property.SetMethod is { IsPublic: true } set)
            {
                Assert.True(
                    set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)),
                    $"{name}.{property.Name} can be set");
            }

            Assert.False(IsMutable(property.PropertyType), $"{name}.{property.Name} is a {property.PropertyType.Name}");
        }

        Assert.All(type.GetFields(Public), f => Assert.True(f.IsInitOnly || f.IsLiteral || type.IsEnum, $"{name}.{f.Name} can be set"));
        Assert.All(type.GetFields(Public), f => Assert.False(IsMutable(f.FieldType), $"{name}.{f.Name} is a {f.FieldType.Name}"));
        Assert.All(
            type.GetFields(BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly),
            f => Assert.True(f.IsInitOnly || f.IsLiteral || f.Name.Contains('<', StringComparison.Ordinal), $"{name}.{f.Name} is mutable static state"));
    }

    private static bool IsMutable(Type type) =>
        type.IsArray
        || (type.IsGenericType && typeof(IEnumerable).IsAssignableFrom(type) && type.GetGenericTypeDefinition() != typeof(ValueList<>))
        || (typeof(ICollection).IsAssignableFrom(type) && type != typeof(string));

    [Theory]
    [MemberData(nameof(Structs))]
    public void The_default_of_a_struct_is_valid(string name)
    {
        var type = Closed(Named(name));
        var one = RuntimeHelpers.GetUninitializedObject(type);
        var other = RuntimeHelpers.GetUninitializedObject(type);
        Assert.NotNull(one.ToString());
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.True(one.Equals(other));
        if (IsEnumerator(Named(name)))
        {
            return; // an enumerator has no current item before its first move
        }

        foreach (var property in type.GetProperties(Public).Where(p => p.GetIndexParameters().Length == 0))
        {
            property.GetValue(one);
        }
    }

    [Theory]
    [MemberData(nameof(Values))]
    public void Values_built_twice_are_equal_and_different_ones_are_not(string name)
    {
        var type = Named(name);
        var makers = Samples.ByType.GetValueOrDefault(type) ?? PositionalSamples.Of(type);
        Assert.True(makers is { Length: >= 2 }, $"no sample of {name}: add one");
        for (var i = 0; i < makers.Length; i++)
        {
            var one = makers[i]();
            Assert.True(type.IsGenericTypeDefinition ? one.GetType().GetGenericTypeDefinition() == type : type.IsInstanceOfType(one));
            for (var j = 0; j < makers.Length; j++)
            {
                var other = makers[j]();
                Assert.True(one.Equals(other) == (i == j), $"{one} and {other}");
                Assert.True(other.Equals(one) == (i == j), $"{other} and {one}");
                if (i == j)
                {
                    Assert.Equal(one.GetHashCode(), other.GetHashCode());
                    Assert.Equal(one.ToString(), other.ToString());
                }

                if (type.GetMethod("op_Equality") is { } equality && !type.IsGenericTypeDefinition)
                {
                    Assert.Equal(i == j, equality.Invoke(null, [one, other]));
                    Assert.Equal(i != j, type.GetMethod("op_Inequality")!.Invoke(null, [one, other]));
                }
            }

            Assert.False(one.Equals(null));
            Assert.False(one.Equals("something else"));
        }
    }

    [Fact]
    public void Classes_that_are_no_values_are_few_and_known() => Assert.Equal(
        ["Catalogue", "ExportException", "PatternEnumeration", "PatternException", "StreamBuffer", "WarmupFormatException"],
        All.Where(t => t is { IsClass: true } && !(t.IsAbstract && t.IsSealed) && !IsValue(t)).Select(t => t.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_finding_code_differs()
    {
        var codes = typeof(FindingCode).GetFields(Public).Select(f => (string)f.GetRawConstantValue()!).ToList();
        Assert.True(codes.Count >= 10);
        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.All(codes, c => Assert.Matches(@"^[a-z]+\.[a-z]+$", c));
    }

    [Fact]
    public void Exceptions_carry_what_they_are_given()
    {
        var inner = new InvalidOperationException();
        Assert.Equal("a", new WarmupFormatException("a").Error.Message);
        Assert.Same(inner, new WarmupFormatException("a", inner).InnerException);
        Assert.NotEmpty(new WarmupFormatException().Message);
        var error = new TextError(2, 3, "b");
        Assert.Same(error, new WarmupFormatException(error).Error);
        Assert.Contains("line 2", new WarmupFormatException(error).Message, StringComparison.Ordinal);
        Assert.Same(error, error.ToException().Error);
        var finding = new Finding(FindingCode.PatternEmpty, Severity.Error, "c", "d");
        Assert.Same(finding, new PatternException(finding).Finding);
        Assert.NotNull(new PatternException("e").Finding);
        Assert.NotNull(new PatternException().Finding);
        Assert.Same(inner, new PatternException("e", inner).InnerException);
        Assert.Same(inner, new ExportException("e", inner).InnerException);
        Assert.NotEmpty(new ExportException().Message);
    }
}

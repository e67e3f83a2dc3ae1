using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace Warmup.TestSupport;

/// <summary>What holds for every public type of every library: immutable, safe to share, compared by content where it is a value.</summary>
public static class PublicTypeChecks
{
    public const BindingFlags Public = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Types that compare by content: structs, records, and classes that say so.</summary>
    public static bool IsValue(Type type) =>
        !type.IsEnum && !type.IsInterface && !IsEnumerator(type)
        && (type.IsValueType
            || type.GetMethod("<Clone>$", BindingFlags.Public | BindingFlags.Instance) is not null
            || typeof(IEquatable<>).MakeGenericType(type).IsAssignableFrom(type));

    public static bool IsStruct(Type type) => type.IsValueType && !type.IsEnum;

    private static bool IsEnumerator(Type type) => type.IsNested && type.Name == "Enumerator";

    private static Type Closed(Type type) => type.IsGenericTypeDefinition ? type.MakeGenericType([.. type.GetGenericArguments().Select(_ => typeof(int))]) : type;

    public static void IsClosedForInheritance(Type type, params string[] namespaces)
    {
        var name = type.FullName!;
        Assert.True(type.IsSealed || type.IsAbstract || type.IsInterface || type.IsValueType || type.IsEnum, name);
        Assert.Contains(type.Namespace!, namespaces);
        if (type is { IsAbstract: true, IsSealed: false, IsInterface: false })
        {
            // An abstract type is a closed family: nobody outside can add to it.
            Assert.All(type.GetConstructors(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance), c => Assert.False(c.IsPublic, name));
        }
    }

    public static void CannotBeChangedFromOutside(Type type)
    {
        var name = type.FullName!;
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
        Assert.All(type.GetMethods(Public), m => Assert.False(IsMutable(m.ReturnType) && IsNamed(m.ReturnType), $"{name}.{m.Name} gives a {m.ReturnType.Name}"));
        Assert.All(
            type.GetFields(BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.DeclaredOnly),
            f => Assert.True(f.IsInitOnly || f.IsLiteral || f.Name.Contains('<', StringComparison.Ordinal), $"{name}.{f.Name} is mutable static state"));
    }

    private static bool IsMutable(Type type) =>
        type.IsArray
        || (type.IsGenericType && typeof(IEnumerable).IsAssignableFrom(type) && type.GetGenericTypeDefinition() != typeof(ValueList<>))
        || (typeof(ICollection).IsAssignableFrom(type) && type != typeof(string));

    /// <summary>A sequence that a method makes as it is read is no collection that could be changed.</summary>
    private static bool IsNamed(Type type) => !type.IsGenericType || type.GetGenericTypeDefinition() != typeof(IEnumerable<>);

    public static void HasAValidDefault(Type open)
    {
        var type = Closed(open);
        var one = RuntimeHelpers.GetUninitializedObject(type);
        var other = RuntimeHelpers.GetUninitializedObject(type);
        Assert.NotNull(one.ToString());
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.True(one.Equals(other));
        if (IsEnumerator(open))
        {
            return; // an enumerator has no current item before its first move
        }

        foreach (var property in type.GetProperties(Public).Where(p => p.GetIndexParameters().Length == 0))
        {
            property.GetValue(one);
        }
    }

    /// <summary>Values built twice, separately, are equal and hash alike; different ones are not equal.</summary>
    public static void ComparesByContent(Type type, IReadOnlyDictionary<Type, Func<object>[]> samples)
    {
        var makers = samples.GetValueOrDefault(type) ?? PositionalSamples.Of(type, samples);
        Assert.True(makers is { Length: >= 2 }, $"no sample of {type.FullName}: add one");
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
                    SaysTheSameInEveryCulture(one);
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

    /// <summary>A reader in another country sees the same numbers and dates.</summary>
    private static void SaysTheSameInEveryCulture(object value)
    {
        var before = CultureInfo.CurrentCulture;
        var other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (other.NumberFormat.NumberDecimalSeparator, other.NumberFormat.NegativeSign, other.DateTimeFormat.ShortDatePattern) = ("\u00b7", "\u2212", "dd.MM.yyyy");
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            var expected = value.ToString();
            CultureInfo.CurrentCulture = other;
            Assert.Equal(expected, value.ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}

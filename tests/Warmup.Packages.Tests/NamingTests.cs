using System.Reflection;
using System.Text.RegularExpressions;

namespace Warmup.Packages.Tests;

/// <summary>
/// Source: the .NET design guidelines (a Boolean property's name begins with Is, Has or Can where that adds something; constants are
/// values that can never change, since callers compile them in).
/// </summary>
public sealed partial class NamingTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    // No settings: the pitch of ISO 16, and the largest divisions of MIDI's clock that MusicXML allows.
    private static readonly string[] Facts = [];

    private static IEnumerable<Type> Exported => PackedLibraries.Names.SelectMany(n => Assembly.Load(n).GetExportedTypes());

    [Fact]
    public void A_property_that_is_true_or_false_begins_with_Is_Has_or_Can() => AssertNone(Exported.SelectMany(Misnamed));

    [Fact]
    public void A_setting_is_a_static_property() => AssertNone(Exported.SelectMany(Settings).Except(Facts));

    [Fact]
    public void What_is_called_a_fact_is_a_constant() => Assert.Empty(Facts.Except(Exported.SelectMany(Settings)));

    /// <summary>That the tests can fail.</summary>
    [Fact]
    public void Other_names_and_constants_are_named()
    {
        Assert.Equal(["Named.Fits", "Named.Issued", "Named.Runs"], Misnamed(typeof(Named)));
        Assert.Equal(["Named.Most"], Settings(typeof(Named)));
    }

    private static void AssertNone(IEnumerable<string> names)
    {
        var all = names.Order(StringComparer.Ordinal).ToList();
        Assert.True(all.Count == 0, $"{all.Count}:{Environment.NewLine}{string.Join(Environment.NewLine, all)}");
    }

    private static IEnumerable<string> Misnamed(Type type) => type.GetProperties(Declared)
        .Where(p => p.PropertyType == typeof(bool) || p.PropertyType == typeof(bool?))
        .Where(p => !Prefix().IsMatch(p.Name) && !p.Name.Contains('.', StringComparison.Ordinal))
        .Select(p => $"{type.Name}.{p.Name}")
        .Order(StringComparer.Ordinal);

    /// <summary>Numbers that are compiled into callers. A name, a code or an enum's value is what it is for ever.</summary>
    private static IEnumerable<string> Settings(Type type) => type.IsEnum
        ? []
        : type.GetFields(Declared).Where(f => f.IsLiteral && f.FieldType != typeof(string)).Select(f => $"{type.Name}.{f.Name}");

    [GeneratedRegex("^(Is|Has|Can)[A-Z]")]
    private static partial Regex Prefix();

    /// <summary>Made up for the test that the tests can fail.</summary>
    public sealed class Named
    {
        public const int Most = 3;

        public const string Schema = "urn:made-up:1";

        public bool IsNamed { get; } = true;

        public bool CanFit { get; } = true;

        public bool? HasAny { get; }

        public bool Fits { get; } = true;

        public bool? Runs { get; }

        public bool Issued { get; } = true;
    }
}

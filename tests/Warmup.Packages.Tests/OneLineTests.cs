using System.Collections;
using System.Globalization;
using System.Reflection;

namespace Warmup.Packages.Tests;

/// <summary>
/// Source: the libraries' own promise that a value's text is one line of at most 200 characters, however long its title or its list is;
/// but a text that the type's own Parse reads back may be as long as the value. A debugger, a log and a failing test print it.
/// </summary>
public class OneLineTests
{
    private const int Longest = 200;
    private const int Deepest = 6;

    [Fact]
    public void The_text_of_every_value_is_one_short_line()
    {
        var seen = new Dictionary<Type, HashSet<string>>();
        foreach (var sample in LibrarySamples.ByType.Values.SelectMany(makers => makers.Select(m => m())).Concat(Positional()).Concat(LongSamples.All()))
        {
            Walk(sample, seen, Deepest);
        }

        Assert.Empty(Values.Where(t => !t.IsAbstract).Except(seen.Keys).Select(t => $"no sample of {t.FullName}"));
        var failures = seen.OrderBy(s => s.Key.FullName, StringComparer.Ordinal).Select(s => Failure(s.Key, s.Value)).OfType<string>().ToList();
        Assert.True(failures.Count == 0, $"{failures.Count} of {seen.Count} types:{Environment.NewLine}{string.Join(Environment.NewLine, failures)}");
    }

    /// <summary>That the test can fail.</summary>
    [Theory]
    [InlineData("two\nlines", false, "is 2 lines")]
    [InlineData("201", false, "201 characters")]
    [InlineData("200", false, null)]
    [InlineData("201", true, null)]
    public void A_long_text_and_a_second_line_are_named(string text, bool readBack, string? said)
    {
        var shown = int.TryParse(text, CultureInfo.InvariantCulture, out var length) ? new string('a', length) : text;
        var seen = new Dictionary<Type, HashSet<string>>();
        object value = readBack ? ReadBack.Parse(shown) : new Shown(shown);
        Walk(value, seen, Deepest);
        Assert.Equal(said is not null, seen.Select(s => Failure(s.Key, s.Value)).OfType<string>().SingleOrDefault() is { } failure && failure.Contains(said!, StringComparison.Ordinal));
    }

    private static IEnumerable<Type> Values => PackedLibraries.Names.SelectMany(n => Assembly.Load(n).GetExportedTypes()).Where(PublicTypeChecks.IsValue);

    private static IEnumerable<object> Positional() => Values
        .Where(t => !t.IsAbstract && !LibrarySamples.ByType.ContainsKey(t) && !t.IsGenericTypeDefinition)
        .SelectMany(t => (PositionalSamples.Of(t, LibrarySamples.ByType) ?? []).Select(m => m()));

    /// <summary>The value itself and what its properties and lists give, each type's texts once.</summary>
    private static void Walk(object? value, Dictionary<Type, HashSet<string>> seen, int depth)
    {
        if (value is null || depth == 0 || value is string)
        {
            return;
        }

        if (value is IEnumerable items && value.GetType().Name.StartsWith("ValueList", StringComparison.Ordinal))
        {
            var all = items.Cast<object>().ToList();
            foreach (var item in all.Take(3).Concat(all.TakeLast(1)))
            {
                Walk(item, seen, depth - 1);
            }
        }

        var type = value.GetType();
        if (type.Assembly.GetName().Name is not { } library || !library.StartsWith("Warmup", StringComparison.Ordinal) || type.IsEnum)
        {
            return;
        }

        var told = type;
        while (told is { IsPublic: false, IsNestedPublic: false, BaseType: { } above })
        {
            told = above;
        }

        told = told.IsGenericType ? told.GetGenericTypeDefinition() : told;
        seen.TryAdd(told, []);
        if (!seen[told].Add(IsReadBack(value, type) ? string.Empty : value.ToString()!) && depth < Deepest)
        {
            return;
        }

        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0 && !p.PropertyType.IsByRefLike))
        {
            Walk(property.GetValue(value), seen, depth - 1);
        }
    }

    /// <summary>Whether the type's own reader gives an equal value from the text.</summary>
    private static bool IsReadBack(object value, Type type)
    {
        for (var reader = type; reader is not null; reader = reader.BaseType)
        {
            foreach (var parse in reader.GetMethods(BindingFlags.Public | BindingFlags.Static).Where(m => m.Name is "Parse" or "TryParse" && m.GetParameters()[0].ParameterType == typeof(string)))
            {
                var parameters = parse.GetParameters();
                object?[] arguments = [value.ToString(), .. parameters.Skip(1).Select(p => p.HasDefaultValue ? p.DefaultValue : null)];
                try
                {
                    var result = parse.Invoke(null, arguments);
                    if (value.Equals(parse.Name == "Parse" ? result : arguments[1]) || value.Equals(arguments[^1]))
                    {
                        return true;
                    }
                }
                catch (TargetInvocationException)
                {
                    // It does not read this text.
                }
            }
        }

        return false;
    }

    private static string? Failure(Type type, IEnumerable<string> texts) =>
        texts.FirstOrDefault(t => t.AsSpan().IndexOfAny('\r', '\n') >= 0) is { } broken ? $"{type.FullName} is {broken.Split('\n').Length} lines: {Start(broken)}"
        : texts.MaxBy(t => t.Length) is { } longest && longest.Length > Longest ? $"{type.FullName} has {longest.Length} characters: {Start(longest)}"
        : null;

    private static string Start(string text) => text[..Math.Min(70, text.Length)].ReplaceLineEndings(" | ");

    private sealed record Shown(string Text)
    {
        public override string ToString() => Text;
    }

    private sealed record ReadBack(string Text)
    {
        public static ReadBack Parse(string text) => new(text);

        public override string ToString() => Text;
    }
}

using System.Reflection;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Source: the library's own promise that every text form is read back to an equal value, and that .NET's own readers find it: by
/// <see cref="ISpanParsable{TSelf}"/>, and by the name under which ASP.NET's minimal APIs look for <see cref="IParsable{TSelf}"/>.
/// </summary>
[Properties(Arbitrary = [typeof(TextFormGen)], MaxTest = 300)]
public class TextFormTests
{
    private static readonly Type[] TextTypes =
    [
        .. typeof(Scale).Assembly.GetExportedTypes().Where(t => t.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(ISpanParsable<>))),
    ];

    public static TheoryData<string> Types => [.. TextTypes.Select(t => t.FullName!)];

    [Property]
    public void Fractions(Rational value) => ReadBack(value);

    [Property]
    public void Degrees(Degree value) => ReadBack(value);

    [Property]
    public void Tones(ScaleTone value) => ReadBack(value);

    [Property]
    public void Notes(NoteName value) => ReadBack(value);

    [Property]
    public void Intervals(Interval value) => ReadBack(value);

    [Property]
    public void Tonics(Tonic value) => ReadBack(value);

    [Property]
    public void Speeds(Speed value) => ReadBack(value);

    [Property]
    public void Tempi(TempoRamp value) => ReadBack(value);

    [Property]
    public void Angas(Anga value) => ReadBack(value);

    [Property]
    public void Meters(Meter value)
    {
        ReadBack(value);

        // What is printed for people is read too; for a tala of one's own the gestures are not in it.
        if (Meter.TryParse(value.Name, out var named, out _) && named == value)
        {
            Assert.Equal(value, Meter.Parse(value.ToString()));
        }
    }

    [Property]
    public void Kinds_of_scales(ScaleKind value) => ReadBack(value);

    [Property]
    public void Scales(Scale value)
    {
        ReadBack(value);
        ReadBack(Scale.Parse(value.ToNotesText()));
        Assert.Equal(value, Catalogue.Default.Read(value.ToText()));
    }

    [Property]
    public void Tunings(Tuning value) => ReadBack(value);

    [Property]
    public void Kinds_of_syllables(Syllables value) => ReadBack(value);

    [Property]
    public void Scala_files(ScalaFile value) => ReadBack(value, isSpaced: false);

    [Property]
    public void Patterns(Pattern value) => ReadBack(value);

    [Property]
    public void Vocabularies(PatternVocabulary value) => ReadBack(value);

    [Fact]
    public void Every_type_with_a_text_form_has_its_property()
    {
        var tried = typeof(TextFormTests).GetMethods().Where(m => m.GetCustomAttribute<PropertyAttribute>() is not null).Select(m => m.GetParameters()[0].ParameterType);
        Assert.Equal(TextTypes.Select(t => t.Name).Order(StringComparer.Ordinal), tried.Select(t => t.Name).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("semitones: 0\v2\0", 1, 15)] // what a fuzzer found: the text was the scale's name, which cannot hold it
    [InlineData("semitones: 0 2\0 12", 1, 15)]
    [InlineData("15\0", 1, 1)]
    public void A_scale_with_a_NUL_is_refused(string text, int line, int column)
    {
        Assert.False(Catalogue.Default.TryRead(text, out _, out var error));
        Assert.Equal((line, column), (error.Line, error.Column));
        Assert.False(Catalogue.Default.TryReadList(text, out _, out _));
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Every_type_is_found_by_its_explicit_interface(string name)
    {
        var type = typeof(Scale).Assembly.GetType(name, true)!;
        var parsable = $"System.IParsable<{name}>.TryParse";
        Assert.NotNull(type.GetMethod(parsable, BindingFlags.NonPublic | BindingFlags.Static, [typeof(string), typeof(IFormatProvider), type.MakeByRefType()]));
        Assert.Equal(1, typeof(TextFormTests).GetMethod(nameof(Refuses), BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(type).Invoke(null, null));
    }

    /// <summary>What is not a value is refused without an exception, or with the one that says what is wrong; null is refused by name.</summary>
    private static int Refuses<T>()
        where T : ISpanParsable<T>
    {
        RefusesText<T>(null);
        foreach (var text in (string[])["\u0001", "no such thing", new string('9', 2_000_000)])
        {
            RefusesText<T>(text);
            Assert.False(T.TryParse(text.AsSpan(), null, out _));
            Assert.True(Assert.Throws<WarmupFormatException>(() => T.Parse(text.AsSpan(), null)).Error.Column > 0);
        }

        return 1;
    }

    // Apart from the above: C# takes the overloads of spans first where a type has both.
    private static void RefusesText<T>(string? text)
        where T : IParsable<T>
    {
        Assert.False(T.TryParse(text, null, out var value));
        Assert.Equal(default, value);
        if (text is null)
        {
            Assert.Throws<ArgumentNullException>(() => T.Parse(text!, null));
        }
        else
        {
            Assert.NotEmpty(Assert.Throws<WarmupFormatException>(() => T.Parse(text, null)).Error.Message);
        }
    }

    private static T AsText<T>(string text)
        where T : IParsable<T> => T.TryParse(text, null, out var value) && T.Parse(text, null).Equals(value) ? value : throw new FormatException(text);

    private static void ReadBack<T>(T value, bool isSpaced = true)
        where T : ISpanParsable<T>, IEquatable<T>
    {
        var text = typeof(T).GetMethod("ToText")?.Invoke(value, null) as string ?? value.ToString()!;
        var space = isSpaced ? " " : string.Empty;
        Assert.True(value.Equals(T.Parse(text, null)), $"{text} is read as another value");
        Assert.True(value.Equals(T.Parse($"{space}{text}{space}".AsSpan(), null)), text);
        Assert.True(T.TryParse(text.AsSpan(), null, out var read) && value.Equals(read));
        Assert.True(value.Equals(AsText<T>(text)));

        // .NET's own readers of numbers pass over NULs at the end.
        Assert.False(T.TryParse((text + "\0").AsSpan(), null, out _), $"{text} is read with a NUL after it");
    }
}

using System.Text.Json;

namespace Warmup.Tests;

/// <summary>
/// Source: the library's own promise that no value is read back from JSON as another one: it is equal, or it is refused. Each type is
/// tried by reflection and by a source-generated context.
/// </summary>
public class JsonTests
{
    private static readonly Type[] All = typeof(Scale).Assembly.GetExportedTypes();

    public static TheoryData<string> Values => [.. All.Where(t => PublicTypeChecks.IsValue(t) && t != typeof(ValueList<>)).Select(t => t.FullName!)];

    public static TheoryData<string> Texts => [.. All.Where(IsText).Select(t => t.FullName!)];

    public static TheoryData<string> Structs => [.. All.Where(t => PublicTypeChecks.IsStruct(t) && PublicTypeChecks.IsValue(t) && !IsText(t) && t != typeof(ValueList<>)).Select(t => t.FullName!)];

    [Theory]
    [MemberData(nameof(Values))]
    public void A_value_is_read_back_equal_or_refused(string name)
    {
        var type = typeof(Scale).Assembly.GetType(name, true)!;
        foreach (var value in SamplesOf(type))
        {
            IsEqualOrRefused(value, type, JsonSerializerOptions.Default);
            IsEqualOrRefused(value, type, CoreJson.Default.Options);
        }
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_value_with_a_text_form_is_a_JSON_string(string name)
    {
        var type = typeof(Scale).Assembly.GetType(name, true)!;
        foreach (var options in (JsonSerializerOptions[])[JsonSerializerOptions.Default, CoreJson.Default.Options])
        {
            Assert.All(SamplesOf(type), value =>
            {
                var json = JsonSerializer.Serialize(value, type, options);
                Assert.StartsWith("\"", json, StringComparison.Ordinal);
                Assert.Equal(value, JsonSerializer.Deserialize(json, type, options));
            });
            foreach (var wrong in (string[])["3", "{}", "[]", "true", "\"no such thing\\u0000\""])
            {
                Assert.Contains(type.Name, Assert.Throws<JsonException>(() => JsonSerializer.Deserialize(wrong, type, options)).Message, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Structs))]
    public void A_struct_without_a_text_form_is_neither_written_nor_read(string name)
    {
        var type = typeof(Scale).Assembly.GetType(name, true)!;
        foreach (var options in (JsonSerializerOptions[])[JsonSerializerOptions.Default, CoreJson.Default.Options])
        {
            Assert.Contains("compute", Assert.Throws<NotSupportedException>(() => JsonSerializer.Serialize(SamplesOf(type).First(), type, options)).Message, StringComparison.Ordinal);
            Assert.Contains("compute", Assert.Throws<NotSupportedException>(() => JsonSerializer.Deserialize("{}", type, options)).Message, StringComparison.Ordinal);
        }
    }

    /// <summary>The errors that were seen before there were converters: 3/4 came back as 0, G3 as C0, R2 as S.</summary>
    [Fact]
    public void What_was_once_read_back_as_the_default_keeps_its_value()
    {
        Assert.Equal("\"3/4\"", JsonSerializer.Serialize(new Rational(3, 4)));
        Assert.Equal(new Rational(3, 4), JsonSerializer.Deserialize<Rational>("\"3/4\""));
        Assert.Equal(NoteName.Parse("G3"), JsonSerializer.Deserialize<NoteName>("\"G3\""));
        Assert.Equal(Degree.Parse("R2"), JsonSerializer.Deserialize<Degree>("\"R2\""));
    }

    [Fact]
    public void A_refused_text_is_said_with_its_place()
    {
        var refused = Assert.Throws<JsonException>(() => JsonSerializer.Deserialize("""{"Scale": "S R2 G9 S'"}""", CoreJson.Default.Kept));
        Assert.Contains("column 6", refused.Message, StringComparison.Ordinal);
        Assert.Contains("'G9'", refused.Message, StringComparison.Ordinal);
        Assert.Equal("$.Scale", refused.Path);
    }

    [Fact]
    public void Values_lists_and_names_of_properties_are_kept_inside_a_callers_own_type()
    {
        var kept = new Kept
        {
            Scale = Catalogue.Default.Read("bilahari"),
            Tempo = new TempoRamp(60, new Rational(5, 2), 90),
            Speeds = [Speed.First, new Speed(2, 3)],
            Words = ["sa", "ri"],
            Cents = new() { [Degree.Parse("R2")] = 7, [Degree.Parse("b5")] = -7 },
            Tonic = null,
        };
        foreach (var options in (JsonSerializerOptions[])[JsonSerializerOptions.Default, CoreJson.Default.Options])
        {
            var json = JsonSerializer.Serialize(kept, options);
            Assert.Contains("\"R2\":7", json, StringComparison.Ordinal);
            Assert.Contains("\"Speeds\":[\"speed 1\",\"tisra nadai, three to two aksharas\"]", json, StringComparison.Ordinal);
            var read = JsonSerializer.Deserialize<Kept>(json, options)!;
            Assert.Equal((kept.Scale, kept.Tempo, kept.Speeds, kept.Words, kept.Tonic), (read.Scale, read.Tempo, read.Speeds, read.Words, read.Tonic));
            Assert.Equal(kept.Cents, read.Cents);
        }

        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<ValueList<Speed>>("\"speed 1\""));
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<ValueList<Speed>>("[\"speed 1\""));
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Dictionary<Degree, int>>("""{"R9": 1}"""));
        Assert.Throws<NotSupportedException>(() => JsonSerializer.Deserialize<ValueList<Uri>>("[]", CoreJson.Default.Options));
    }

    private static bool IsText(Type type) => type.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(ISpanParsable<>));

    private static IEnumerable<object> SamplesOf(Type type) => (Samples.ByType.GetValueOrDefault(type) ?? PositionalSamples.Of(type, Samples.ByType)!).Select(make => make());

    private static void IsEqualOrRefused(object value, Type type, JsonSerializerOptions options)
    {
        string json;
        try
        {
            json = JsonSerializer.Serialize(value, type, options);
        }
        catch (NotSupportedException)
        {
            return;
        }

        object? read;
        try
        {
            read = JsonSerializer.Deserialize(json, type, options);
        }
        catch (Exception refused) when (refused is NotSupportedException or JsonException)
        {
            return;
        }

        Assert.True(value.Equals(read), $"{type.Name} {value} was written as {json} and read back as {read}");
    }
}

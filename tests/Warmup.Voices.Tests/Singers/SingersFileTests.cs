using System.Globalization;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: the documented form of the file (schema urn:warmup:singers:1) and the bounds of a singer; RFC 8259 for JSON.</summary>
public class SingersFileTests
{
    private const string Good = """{"schema":"urn:warmup:singers:1","singers":[{"alias":"Mira","low":"G3","high":"D5","sustainedSeconds":14.5,"experience":"advanced"}]}""";

    private static ValueList<Singer> Read(string json) => SingersFile.Read(Encoding.UTF8.GetBytes(json));

    private static TextError Refused(string json)
    {
        var error = Assert.Throws<WarmupFormatException>(() => Read(json)).Error;
        Assert.True(error.Line >= 1 && error.Column >= 1);
        Assert.DoesNotContain(error.Message, char.IsControl);
        Assert.InRange(error.Message.Length, 1, 500);
        return error;
    }

    private static string With(string member, string value) => string.Join(
        ',',
        new (string Name, string Value)[] { ("alias", "\"Mira\""), ("low", "\"G3\""), ("high", "\"D5\""), ("sustainedSeconds", "14.5"), ("experience", "\"advanced\"") }
            .Select(m => $"\"{m.Name}\":{(m.Name == member ? value : m.Value)}")) is var members
        ? $$"""{"schema":"urn:warmup:singers:1","singers":[{{{members}}}]}"""
        : string.Empty;

    [Fact]
    public void A_class_is_read()
    {
        var singer = Assert.Single(Read(Good));
        Assert.Equal(
            ("Mira", "G3", "D5", new Rational(29, 2), Experience.Advanced),
            (singer.Alias, singer.Low.ToString(), singer.High.ToString(), singer.SustainedSeconds, singer.Experience));
        Assert.Equal(Experience.Beginner, Read(Good.Replace(",\"experience\":\"advanced\"", string.Empty, StringComparison.Ordinal)).Single().Experience);
    }

    [Property]
    public Property A_class_that_is_written_is_read_back() => Prop.ForAll(
        (from count in Gen.Choose(1, 12)
         from aliases in Gen.ArrayOf(Gen.Elements("Mira", "Arun", "Zoë", "மீரா", "\"quoted\"", "back\\slash", "<b>&'x", "a b", "😀"), count)
         from singers in Gen.ArrayOf(
             from low in Gen.Choose(24, 100)
             from span in Gen.Choose(0, 8)
             from flat in Gen.Elements(true, false)
             from hundredths in Gen.Choose(100, 12_000)
             from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
             select (Low: NoteName.FromMidi(low), High: flat ? new NoteName('C', -1, 8) : NoteName.FromMidi(low + span), Seconds: new Rational(hundredths, 100), experience),
             count)
         select aliases.Zip(singers, (a, s) => (a, s)).Select((p, i) => new Singer(p.a + i.ToString(CultureInfo.InvariantCulture), p.s.Low, p.s.High, p.s.Seconds, p.s.experience)).ToValueList())
        .ToArbitrary(),
        singers =>
        {
            using var stream = new MemoryStream();
            SingersFile.Write(singers, stream);
            Assert.True(stream.CanWrite, "the stream is not closed");
            Assert.Equal(singers, SingersFile.Read(stream.ToArray()));
            using var again = new MemoryStream();
            SingersFile.Write(singers, again);
            Assert.Equal(stream.ToArray(), again.ToArray());
            Assert.Contains(SingersFile.Schema, Encoding.UTF8.GetString(stream.ToArray()), StringComparison.Ordinal);
        });

    [Theory]
    [InlineData(4, 3, 1333)]
    [InlineData(22, 7, 3143)]
    [InlineData(120, 1, 120_000)]
    public void A_tone_length_is_kept_to_a_thousandth_of_a_second(int n, int d, int thousandths)
    {
        using var stream = new MemoryStream();
        SingersFile.Write([new Singer("Mira", NoteName.FromMidi(55), NoteName.FromMidi(74), new Rational(n, d))], stream);
        Assert.Equal(new Rational(thousandths, 1000), SingersFile.Read(stream.ToArray()).Single().SustainedSeconds);
    }

    [Fact]
    public void An_empty_class_is_refused() => Assert.Contains("singers", Refused("""{"schema":"urn:warmup:singers:1","singers":[]}""").Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("{", 1)]
    [InlineData("", 1)]
    [InlineData("[]", 1)]
    [InlineData("null", 1)]
    [InlineData("{\n\"schema\": \"urn:warmup:singers:1\",\n\"singers\": [}", 3)]
    [InlineData("{\n\"schema\": \"urn:warmup:singers:1\",\n\n\"singers\": [] x}", 4)]
    [InlineData("\n\n\nnonsense", 4)]
    public void Broken_JSON_is_named_by_line_and_column(string json, int line)
    {
        var error = Refused(json);
        Assert.Equal(line, error.Line);
    }

    [Fact]
    public void The_column_of_broken_JSON_counts_from_1() => Assert.Equal((2, 4), Refused("{\n   ?}") is var e ? (e.Line, e.Column) : default);

    [Theory]
    [InlineData("schema")]
    [InlineData("singers")]
    [InlineData("alias")]
    [InlineData("low")]
    [InlineData("high")]
    [InlineData("sustainedSeconds")]
    public void A_missing_member_is_named(string member)
    {
        var renamed = System.Text.RegularExpressions.Regex.Replace(Good, $"\"{member}\":(\"[^\"]*\"|[0-9.]+|\\[.*\\]),?", string.Empty).Replace(",}", "}", StringComparison.Ordinal);
        Assert.DoesNotContain($"\"{member}\"", renamed, StringComparison.Ordinal);
        Assert.Contains(member, Refused(renamed).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_member_is_named()
    {
        Assert.Contains("nickname", Refused(Good.Replace("\"low\"", "\"nickname\":\"M\",\"low\"", StringComparison.Ordinal)).Message, StringComparison.Ordinal);
        Assert.Contains("teacher", Refused(Good.Replace("\"schema\"", "\"teacher\":1,\"schema\"", StringComparison.Ordinal)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("urn:warmup:singers:2")]
    [InlineData("urn:warmup:plan:1")]
    [InlineData("")]
    public void An_unknown_schema_is_named_with_the_known_one(string schema)
    {
        var error = Refused(Good.Replace(SingersFile.Schema, schema, StringComparison.Ordinal));
        Assert.Contains(schema, error.Message, StringComparison.Ordinal);
        Assert.Contains(SingersFile.Schema, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_range_upside_down_is_named_with_both_notes()
    {
        var error = Refused(With("low", "\"E5\""));
        Assert.Contains("E5", error.Message, StringComparison.Ordinal);
        Assert.Contains("D5", error.Message, StringComparison.Ordinal);
        Assert.Contains("Mira", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0", "0")]
    [InlineData("400", "400")]
    [InlineData("-3", "-3")]
    [InlineData("0.99", "0.99")]
    [InlineData("0.9999", "0.9999")]
    [InlineData("120.0001", "120.0001")]
    [InlineData("1e25", "10000000000000000000000000")]
    [InlineData("120.5", "120.5")]
    public void A_tone_out_of_range_is_named_with_its_value_and_the_range(string seconds, string value)
    {
        var error = Refused(With("sustainedSeconds", seconds));
        Assert.Contains("120", error.Message, StringComparison.Ordinal);
        Assert.Contains("Mira", error.Message, StringComparison.Ordinal);
        Assert.Contains("1 ", error.Message, StringComparison.Ordinal);
        Assert.Contains(value, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("low", "\"H3\"", "H3")]
    [InlineData("low", "\"\"", "low")]
    [InlineData("high", "\"C9\"", "C9")]
    [InlineData("low", "\"C0\"", "C0")]
    [InlineData("experience", "\"expert\"", "expert")]
    [InlineData("sustainedSeconds", "\"14\"", "sustainedSeconds")]
    [InlineData("sustainedSeconds", "1e400", "")]
    [InlineData("sustainedSeconds", "1e25", "")]
    [InlineData("sustainedSeconds", "null", "sustainedSeconds")]
    [InlineData("low", "57", "low")]
    [InlineData("alias", "null", "alias")]
    [InlineData("alias", "\"\"", "alias")]
    [InlineData("alias", "\"a\\u0007b\"", "alias")]
    [InlineData("alias", "\"a\\u202Eb\"", "alias")]
    [InlineData("alias", "\"a\\nb\"", "alias")]
    [InlineData("alias", "\"\\ud800\"", "")]
    public void A_bad_value_is_named(string member, string value, string named) =>
        Assert.Contains(named, Refused(With(member, value)).ToString(), StringComparison.Ordinal);

    [Fact]
    public void A_long_alias_is_refused_with_the_bound()
    {
        Assert.Equal(60, Read(With("alias", $"\"{new string('a', 60)}\"")).Single().Alias.Length);
        Assert.Contains("60", Refused(With("alias", $"\"{new string('a', 61)}\"")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_alias_that_stands_twice_is_named()
    {
        var error = Refused("""{"schema":"urn:warmup:singers:1","singers":[{"alias":"Mira","low":"G3","high":"D5","sustainedSeconds":14},{"alias":"Mira","low":"A3","high":"E5","sustainedSeconds":9}]}""");
        Assert.Contains("Mira", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_singer_that_is_null_is_refused() => Refused("""{"schema":"urn:warmup:singers:1","singers":[null]}""");

    [Fact]
    public void A_comment_is_no_JSON() => Refused(Good + " // class of the morning");

    [Fact]
    public void A_huge_file_is_refused_by_its_size()
    {
        var huge = new byte[SingersFile.LargestFile + 1];
        Array.Fill(huge, (byte)' ');
        var error = Assert.Throws<WarmupFormatException>(() => SingersFile.Read(huge)).Error;
        Assert.Contains("8", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Deep_nesting_is_refused() => Refused(string.Concat(Enumerable.Repeat("[", 100_000)));

    [Fact]
    public void A_byte_order_mark_is_no_fault() =>
        Assert.Single(SingersFile.Read([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Good)]));

    [Fact]
    public void Broken_UTF8_is_refused() =>
        Assert.Throws<WarmupFormatException>(() => SingersFile.Read([.. Encoding.UTF8.GetBytes("{\"schema\":\""), 0xFF, 0xFE, .. Encoding.UTF8.GetBytes("\"}")]));

    [Property(MaxTest = 300)]
    public void A_file_with_one_byte_changed_is_read_or_refused_with_a_place(FsCheck.NonNegativeInt at, byte to)
    {
        var bytes = Encoding.UTF8.GetBytes(Good);
        bytes[at.Get % bytes.Length] = to;
        try
        {
            SingersFile.Read(bytes);
        }
        catch (WarmupFormatException refused)
        {
            Assert.True(refused.Error.Line >= 1 && refused.Error.Column >= 1);
            Assert.DoesNotContain(refused.Error.Message, char.IsControl);
        }
    }

    [Property(MaxTest = 300)]
    public void Random_bytes_are_refused(byte[] bytes) => Assert.Throws<WarmupFormatException>(() => SingersFile.Read(bytes));

    [Fact]
    public void A_singer_out_of_range_is_refused_by_the_constructor_too()
    {
        NoteName low = NoteName.FromMidi(55), high = NoteName.FromMidi(74);
        foreach (Func<object> make in new Func<object>[]
        {
            () => new Singer("a", high, low, 10),
            () => new Singer("a", low, high, 0),
            () => new Singer("a", low, high, 121),
            () => new Singer("", low, high, 10),
            () => new Singer("a\tb", low, high, 10),
            () => new Singer(new string('a', 61), low, high, 10),
            () => new Singer("a", NoteName.FromMidi(23), high, 10),
            () => new Singer("a", low, NoteName.FromMidi(109), 10),
            () => new Singer("a", low, high, 10, (Experience)7),
        })
        {
            Assert.ThrowsAny<ArgumentException>(make);
        }

        Assert.Equal("G3", new Singer("a", low, low, 1).Low.ToString());
    }

    [Fact]
    public void An_unknown_member_is_named_by_line_and_column()
    {
        // The member begins at the fifth character of the third line.
        var error = Refused("{\n\"schema\":\"urn:warmup:singers:1\",\"singers\":[{\n    \"nickname\":\"M\"}]}");
        Assert.Equal((3, 5), (error.Line, error.Column));
        Assert.StartsWith("unknown member 'nickname'; the members of a singer are alias, low, high,", error.Message, StringComparison.Ordinal);
        Assert.EndsWith("voice, fullLow, fullHigh and measurements", error.Message, StringComparison.Ordinal);

        // One that is written with an escape is still known.
        Assert.Equal("Mira", Read(Good.Replace("\"alias\"", "\"\\u0061lias\"", StringComparison.Ordinal)).Single().Alias);
    }

    [Theory]
    [InlineData("alias", "\"  \"", "singer 1: an alias must have 1 to 60 characters, not 0")]
    [InlineData("low", "\"E5\"", "singer 1 ('Mira'): the lowest comfortable note E5 lies above the highest, D5; swap them")]
    [InlineData("low", "\"B0\"", "singer 1 ('Mira'): the lowest comfortable note must be between C1 and C8, not B0")]
    public void A_singer_that_cannot_be_is_refused_with_the_fault_alone(string member, string value, string message) =>
        Assert.Equal(message, Refused(With(member, value)).Message);
}

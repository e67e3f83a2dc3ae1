using System.Text;
using System.Text.Json;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Json.Schema;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>
/// The JSON form against its published schema (docs/schemas/pattern-2.json; JSON Schema, draft 2020-12), held by an independent validator,
/// and the plain-English sentence.
/// </summary>
public class PatternFileTests
{
    private static readonly JsonSchema Schema = ReadSchema();

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 200)]
    public bool What_is_written_keeps_to_the_schema(Pattern pattern)
    {
        using var document = JsonDocument.Parse(Written(pattern.Sung("a", "é")));
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    [Theory]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"ladder"}}""", "ladder")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"take","numbers":[2],"of":{"word":"figure","numbers":[1,2]}}}""", "figure(1 2).take(2)")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"sum":[{"word":"run"},{"lines":["S R ,","0_"]}]}}""", null)]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"sum":[{"word":"run"},{"lines":["S R ,","G"]}]}}""", "run + [S R , / G]")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"weave","of":{"word":"run"},"with":{"word":"run"}}}""", "run.weave(run)")]
    public void Nodes_are_read(string json, string? text)
    {
        if (text is null)
        {
            Assert.Throws<WarmupFormatException>(() => Read(json));
            return;
        }

        Assert.Equal(Pattern.Parse(text), Read(json));
        using var document = JsonDocument.Parse(json);
        Assert.True(Schema.Evaluate(document.RootElement).IsValid);
    }

    [Theory]
    [InlineData("""{"pattern":{"word":"ladder"}}""", "lacks \"schema\"")]
    [InlineData("""{"schema":"urn:warmup:pattern:1","pattern":{"word":"ladder"}}""", "this library reads urn:warmup:pattern:2, in which figures and written lines count from 1")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"figure","numbers":[0,1,-1]}}""", "what counted from 0 is now 1 2 -1")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"lines":["0 1"]}}""", "what counted from 0 is now 1 2", true)]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"figure","numbers":[26]}}""", "places from -24 to 25")]
    [InlineData("""{"schema":"urn:warmup:pattern:2"}""", "pattern is missing")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"ladr"}}""", "unknown word 'ladr'")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"ends"}}""", "'ends' needs \"of\"")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"ladder","of":{"word":"run"}}}""", "'ladder' takes no \"of\"")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"take","of":{"word":"run"}}}""", "'take' needs \"numbers\"")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"take","numbers":[0],"of":{"word":"run"}}}""", "pattern: 'take' takes a number from 1 to 10000, not 0")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"take","numbers":[1,2],"of":{"word":"run"}}}""", "'take' takes a number from 1 to 10000, not two numbers")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"run","sum":[]}}""", "exactly one of")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"sum":[{"word":"run"}]}}""", "2 to 1000 nodes, not 1")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"run","extra":1}}""", "unknown member")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","more":1,"pattern":{"word":"run"}}""", "the file: unknown member 'more'; the members are schema and pattern")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"every","numbers":[2],"of":{"word":"run"}}}""", "pattern: the word 'every' is now called 'every-nth'")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"reach","numbers":[1,0],"of":{"word":"run"}}}""", "pattern: the word 'reach' is now called 'span'")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"notes","numbers":[3,2],"of":{"word":"run"}}}""", "the last note of 'notes' must be between 3 and 1000, not 2", true)]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"take","numbers":[1.5],"of":{"word":"run"}}}""", "pattern.numbers must hold whole numbers")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":7}}""", "pattern.word must be text in quotes")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":[]}""", "pattern must be a node")]
    [InlineData("""["urn:warmup:pattern:2"]""", "the file must be an object")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"word":"sung","texts":["a1"],"of":{"word":"run"}}}""", "not 'a1'", true)]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"sum":[{"word":"run"},{"word":"ends","of":{"word":"x"}}]}}""", "pattern.sum[1].of")]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":{"lines":["S r"]}}""", "small and capital", true)]
    [InlineData("""{"schema":"urn:warmup:pattern:2","pattern":""", "the text is not JSON")]
    public void An_error_names_the_place_the_value_and_the_fix(string json, string expected, bool schemaAllowsIt = false)
    {
        Assert.Contains(expected, Assert.Throws<WarmupFormatException>(() => Read(json)).Message, StringComparison.Ordinal);
        if (json.EndsWith('}'))
        {
            using var document = JsonDocument.Parse(json);
            // The schema cannot know the letters' rules and how numbers depend on each other; everything else it refuses too.
            Assert.Equal(schemaAllowsIt, Schema.Evaluate(document.RootElement).IsValid);
        }
    }

    [Theory]
    [InlineData("{\n  \"schema\": \"urn:warmup:pattern:2\",\n  \"pattern\": {\"word\": \"ends\", \"of\": {\"word\": \"x\"}}\n}", 3, 37, "pattern.of: unknown word 'x'")]
    [InlineData("{\n  \"schema\": \"urn:warmup:pattern:2\",\n  \"pattern\": {\"word\" \"ends\"}\n}", 3, 22, "not JSON")]
    [InlineData("{\"schema\": \"urn:warmup:pattern:2\", \"pattern\": {\"word\": \"run\", \"word\": \"run\"}}", 1, 63, "pattern: the member \"word\" stands there twice")]
    [InlineData("{\"schema\": \"urn:warmup:pattern:2\", \"é\": 1}", 1, 36, "unknown member 'é'")]
    [InlineData("{\"schema\": \"urn:warmup:pattern:2\", \"pattern\": {\"word\": \"\\ud800\"}}", 1, 56, "not valid UTF-8")]
    [InlineData("", 1, 1, "not JSON")]
    [InlineData("{\n\n  \"schema\": \"urn:warmup:pattern:2\",\n\"é\" 1}", 4, 5, "not JSON")]
    [InlineData("{\n\"schema\": \"urn:warmup:pattern:2\",\n\"pattern\": {\"sum\": [{\"word\": \"run\"},\n   {\"word\": \"x\"}]}}", 4, 4, "pattern.sum[1]: unknown word 'x'")]
    public void An_error_has_its_line_and_column(string json, int line, int column, string expected)
    {
        var error = Assert.Throws<WarmupFormatException>(() => Read(json)).Error;
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
        Assert.Equal((line, column), (error.Line, error.Column));
    }

    private static readonly (string Node, string Expected)[] Faults =
    [
        ("""{}""", "pattern: a node must have exactly one of \"word\", \"sum\" and \"lines\", not 0"),
        ("""{"word":"run","lines":["S"]}""", "not 2"),
        ("""{"word":"run","sum":[],"lines":["S"]}""", "not 3"),
        ("""{"sum":[{"word":"run"},{"word":"run"}],"of":{"word":"run"}}""", "\"sum\" stands alone; put a node with \"of\" around it"),
        ("""{"sum":[{"word":"run"},{"word":"run"}],"numbers":[1]}""", "\"sum\" stands alone"),
        ("""{"lines":["S"],"with":{"word":"run"}}""", "\"lines\" stands alone; put a node with \"of\" around it"),
        ("""{"lines":["S"],"texts":["a"]}""", "\"lines\" stands alone"),
        ("""{"word":"ladder","numbers":[1]}""", "'ladder' takes no \"numbers\""),
        ("""{"word":"ladder","with":{"word":"run"}}""", "'ladder' takes no \"with\""),
        ("""{"word":"ladder","texts":["a"]}""", "'ladder' takes no \"texts\""),
        ("""{"word":"weave","of":{"word":"run"}}""", "'weave' needs \"with\""),
        ("""{"word":"sung","of":{"word":"run"}}""", "'sung' needs \"texts\""),
        ("""{"word":"sung","texts":[],"of":{"word":"run"}}""", "1 to 64 words can be sung, not 0"),
        ("""{"word":"ladr"}""", "unknown word 'ladr', perhaps ladder"),
        ("""{"word":"ladder2","of":{"word":"run"}}""", "unknown word 'ladder2'; the words that can stand here are reversed, "), // a word that works on another
        ("""{"word":"returning","numbers":[0],"of":{"word":"run"}}""", "so there is no 0"),
        ("""{"word":"returning","numbers":[26],"of":{"word":"run"}}""", "'returning' takes a place from -24 to 25"),
        ("""{"word":"order","numbers":[1,1],"of":{"word":"run"}}""", "must hold each number from 1 to 2 once"),
        ("""{"lines":["S","1"]}""", "letters and numbers are mixed"),
        ("""{"lines":[]}""", "has no notes"),
        ("""{"word":"repeat","numbers":[10000],"of":{"word":"repeat","numbers":[2],"of":{"word":"run"}}}""", "pattern: a pattern must have at most 100000 notes in a seven-note scale, not 160000"),
        ("""{"word":"take","numbers":3,"of":{"word":"run"}}""", "pattern.numbers must be a list of whole numbers"),
        ("""{"word":"take","numbers":["3"],"of":{"word":"run"}}""", "pattern.numbers must be a list of whole numbers"),
        ("""{"word":"take","numbers":[9999999999],"of":{"word":"run"}}""", "whole numbers of at most nine digits"),
        ("""{"lines":"S"}""", "pattern.lines must be a list of texts"),
        ("""{"lines":[1]}""", "pattern.lines must be text in quotes"),
        ("""{"sum":{"word":"run"}}""", "pattern.sum must be a list of nodes"),
        ("""{"sum":[{"word":"run"},3]}""", "pattern.sum[1] must be a node such as"),
        ("""{"word":"weave","of":{"word":"run"},"with":7}""", "pattern.with must be a node"),
        ("""{"word":"run","word":"run"}""", "the member \"word\" stands there twice"),
        ("""{"word":"take","numbers":[1],"of":{"word":"run"},"numbers":[1]}""", "the member \"numbers\" stands there twice"),
        ("""{"word":"sung","texts":["a"],"of":{"word":"run"},"texts":["a"]}""", "the member \"texts\" stands there twice"),
        ("""{"word":"ends","of":{"word":"run"},"of":{"word":"run"}}""", "the member \"of\" stands there twice"),
        ("""{"word":"weave","of":{"word":"run"},"with":{"word":"run"},"with":{"word":"run"}}""", "the member \"with\" stands there twice"),
        ("""{"sum":[{"word":"run"},{"word":"run"}],"sum":[]}""", "the member \"sum\" stands there twice"),
        ("""{"lines":["S"],"lines":["S"]}""", "the member \"lines\" stands there twice"),
    ];

    [Fact]
    public void A_node_has_the_members_that_its_kind_needs_once_each_and_no_others() => Assert.All(Faults, row => Assert.Contains(
        row.Expected,
        Assert.Throws<WarmupFormatException>(() => Read($$"""{"schema":"urn:warmup:pattern:2","pattern":{{row.Node}}}""")).Message,
        StringComparison.Ordinal));

    [Fact]
    public void A_member_that_is_null_is_as_good_as_none_and_the_order_makes_no_difference()
    {
        Assert.Equal(Pattern.Run, Read("""{"pattern":{"word":"run","numbers":null,"texts":null,"of":null,"with":null,"sum":null,"lines":null},"schema":"urn:warmup:pattern:2"}"""));
        Assert.Equal(Pattern.Parse("run.sung(a)"), Read("""{"schema":"urn:warmup:pattern:2","pattern":{"of":{"word":"run"},"texts":["a"],"word":"sung"}}"""));
        Assert.Contains("lacks \"schema\"", Assert.Throws<WarmupFormatException>(() => Read("""{"schema":null,"pattern":{"word":"run"}}""")).Message, StringComparison.Ordinal);
        Assert.Contains("lacks \"schema\"", Assert.Throws<WarmupFormatException>(() => Read("""{"schema":"urn:other:1","pattern":{"word":"run"}}""")).Message, StringComparison.Ordinal);
        Assert.Contains("pattern is missing", Assert.Throws<WarmupFormatException>(() => Read("""{"schema":"urn:warmup:pattern:2","pattern":null}""")).Message, StringComparison.Ordinal);
        Assert.Contains("the member \"schema\" stands there twice", Assert.Throws<WarmupFormatException>(() => Read("""{"schema":"urn:warmup:pattern:2","schema":"urn:warmup:pattern:2"}""")).Message, StringComparison.Ordinal);
    }

    /// <summary>64 levels are the most; in JSON a level may be a node within a list within a node.</summary>
    [Fact]
    public void A_pattern_of_64_levels_is_written_and_read()
    {
        var deepest = Enumerable.Range(0, 31).Aggregate(Pattern.Run, (p, _) => (p + Pattern.Run).Ends()).Reversed();
        Assert.Equal(deepest, PatternFile.Read(Written(deepest)));
        var text = Encoding.UTF8.GetString(Written(deepest)).Replace("\"word\": \"reversed\",", "\"word\": \"ends\", \"of\": {\"word\": \"reversed\",", StringComparison.Ordinal);
        var closed = text.TrimEnd()[..^1] + "}}";
        Assert.Contains("at most 64 levels", Assert.Throws<WarmupFormatException>(() => Read(closed)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_million_bytes_are_read_and_one_more_is_not()
    {
        var json = """{"schema":"urn:warmup:pattern:2","pattern":{"word":"run"}}""";
        Assert.Equal(Pattern.Run, Read(json.PadRight(1_000_000)));
        Assert.Contains("at most 1000000 bytes long, not 1000001", Assert.Throws<WarmupFormatException>(() => Read(json.PadRight(1_000_001))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_byte_order_mark_is_skipped_and_bytes_that_are_no_text_are_refused()
    {
        var json = """{"schema":"urn:warmup:pattern:2","pattern":{"word":"run"}}"""u8.ToArray();
        Assert.Equal(Pattern.Run, PatternFile.Read([0xEF, 0xBB, 0xBF, .. json]));
        json[^5] = 0xFF;
        Assert.Throws<WarmupFormatException>(() => PatternFile.Read(json));
        Assert.Contains("at most 1000000 bytes", Assert.Throws<WarmupFormatException>(() => PatternFile.Read(new byte[1_000_001])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_schema_knows_every_word()
    {
        using var document = JsonDocument.Parse(SchemaText());
        var words = document.RootElement.GetProperty("$defs").GetProperty("node").GetProperty("oneOf").EnumerateArray()
            .Where(n => n.GetProperty("properties").TryGetProperty("word", out _))
            .Select(n => n.GetProperty("properties").GetProperty("word").GetProperty("const").GetString()!);
        Assert.Equal(PatternLanguage.Standard.Words.ConvertAll(w => w.Name).Order(), words.Order());
    }

    [Theory]
    [InlineData("ladder.backwards", "S R2 G3 M1 P D2 N3 S'", "seven lines; each line starts on the tonic and adds one note until the upper tonic is reached; every line is then sung backwards")]
    [InlineData("ladder", null, "each line starts on the tonic and adds one note until the upper tonic is reached")]
    [InlineData("figure(1 2 3).take(1)", "S R2 G3 P D2 S'", "one line; the figure 1 2 3 is sung from the tonic, then from each next degree, until it reaches the upper tonic; only the first line is kept")]
    [InlineData("[S R / G].hold(2).repeat(3)", null, "the written lines are S R / G; the last note of each line is held two units longer; the whole is sung three times")]
    [InlineData("run + ladder.ends", null, "one line goes over the whole scale from the tonic to the upper tonic; then (each line starts on the tonic and adds one note until the upper tonic is reached; only the first and the last note of each line are kept)")]
    [InlineData("run.sung(a e)", null, "one line goes over the whole scale from the tonic to the upper tonic; the notes are sung on a, e in turn")]
    [InlineData("[S R G M].order(2 1)", "S R2 G3 P D2 S'", "the written line is S R G M; the first two lines are sung in the order 2 and 1")]
    public void A_sentence_says_what_is_sung(string pattern, string? scale, string sentence) =>
        Assert.Equal(sentence, Pattern.Parse(pattern).Describe(scale is null ? null : Scale.Parse(scale)));

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 200)]
    public bool Every_pattern_has_a_sentence_without_open_places(Pattern pattern) =>
        pattern.Describe() is { Length: > 5 } sentence && !sentence.Contains('{', StringComparison.Ordinal) && !sentence.Contains(";;", StringComparison.Ordinal);

    private static byte[] Written(Pattern pattern)
    {
        using var stream = new MemoryStream();
        PatternFile.Write(pattern, stream);
        return stream.ToArray();
    }

    private static Pattern Read(string json) => PatternFile.Read(Encoding.UTF8.GetBytes(json));

    private static JsonSchema ReadSchema() => JsonSchema.FromText(SchemaText());

    private static string SchemaText()
    {
        using var reader = new StreamReader(typeof(PatternFileTests).Assembly.GetManifestResourceStream("pattern-2.json")!);
        return reader.ReadToEnd();
    }
}

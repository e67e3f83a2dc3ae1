using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A pattern as JSON: <c>{"schema": "urn:warmup:pattern:1", "pattern": {"word": "ends", "of": {"word": "ladder"}}}</c>.</summary>
/// <remarks>
/// A node is a word with its <c>numbers</c> or <c>texts</c>, the pattern it is applied to (<c>of</c>) and the other pattern (<c>with</c>);
/// or a <c>sum</c> of nodes; or written <c>lines</c>. The published schema is docs/schemas/pattern-1.json (JSON Schema, draft 2020-12).
/// </remarks>
public static class PatternFile
{
    /// <summary>The name of the format and its version.</summary>
    public const string Schema = "urn:warmup:pattern:1";

    /// <summary>The largest file that is read, in bytes.</summary>
    public const int LargestFile = 1_000_000;

    // A level of a pattern is at most a node in a list of nodes, hence twice the deepest nesting and a little for the file around it.
    internal const int DeepestJson = (2 * Pattern.DeepestNesting) + 4;

    private const string SchemaStem = "urn:warmup:pattern:";

    /// <summary>Reads a pattern.</summary>
    /// <param name="json">The file's text in UTF-8, at most 1,000,000 bytes.</param>
    /// <exception cref="WarmupFormatException">The text is no pattern: the error names the place, the value and the fix.</exception>
    public static Pattern Read(ReadOnlySpan<byte> json)
    {
        if (json.Length > LargestFile)
        {
            throw Fail(string.Create(CultureInfo.InvariantCulture, $"a pattern must be at most {LargestFile} bytes long, not {json.Length}"));
        }

        if (json.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            json = json[3..];
        }

        PatternFileDto? file;
        try
        {
            // Read through once without keeping anything, so that nesting too deep costs no memory.
            var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = DeepestJson });
            while (reader.Read())
            {
            }

            file = JsonSerializer.Deserialize(json, PatternJson.Default.PatternFileDto);
        }
        catch (JsonException broken)
        {
            throw new WarmupFormatException(new TextError((int)(broken.LineNumber ?? 0) + 1, (int)(broken.BytePositionInLine ?? 0) + 1, Explain(broken)));
        }

        if (file?.Schema is not Schema)
        {
            throw Fail(file?.Schema is { } other && other.StartsWith(SchemaStem, StringComparison.Ordinal)
                ? $"the pattern is of version {TextError.Quote(other)}; this library reads {Schema}"
                : $"the pattern lacks \"schema\": \"{Schema}\" at its beginning");
        }

        return ToPattern(file.Pattern, "pattern");
    }

    /// <summary>Writes a pattern; <see cref="Read"/> gives an equal one back.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="destination">Where the bytes go (UTF-8, line feeds); it is not closed.</param>
    public static void Write(Pattern pattern, Stream destination)
    {
        var text = JsonSerializer.Serialize(new PatternFileDto { Schema = Schema, Pattern = ToNode(pattern) }, PatternJson.Default.PatternFileDto);
        destination.Write(Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n") + "\n"));
    }

    private static PatternNodeDto ToNode(Pattern pattern) => pattern switch
    {
        PrimitivePattern primitive => ToNode(primitive.Operation),
        UnaryPattern unary => With(ToNode(unary.Operation), unary.Inner, null),
        BinaryPattern binary => With(new PatternNodeDto { Word = binary.Connective.Name }, binary.First, binary.Second),
        SumPattern sum => new PatternNodeDto { Sum = [.. sum.Parts.ConvertAll(ToNode)] },
        WrittenPattern written => new PatternNodeDto { Lines = [.. written.WrittenLines] },
        _ => throw new InvalidOperationException($"the pattern {pattern} has no JSON form"),
    };

    private static PatternNodeDto ToNode(Operation operation) => new()
    {
        Word = operation.Word.Name,
        Numbers = operation.Numbers.IsEmpty ? null : [.. operation.Numbers],
        Texts = operation.Texts.IsEmpty ? null : [.. operation.Texts],
    };

    private static PatternNodeDto With(PatternNodeDto node, Pattern of, Pattern? with)
    {
        node.Of = ToNode(of);
        node.With = with is null ? null : ToNode(with);
        return node;
    }

    private static Pattern ToPattern(PatternNodeDto? node, string place)
    {
        if (node is null)
        {
            throw Fail($"{place} is missing; expected a node such as {{\"word\": \"ladder\"}}");
        }

        var kinds = (node.Word is null ? 0 : 1) + (node.Sum is null ? 0 : 1) + (node.Lines is null ? 0 : 1);
        if (kinds != 1)
        {
            throw Fail($"{place} must have exactly one of \"word\", \"sum\" and \"lines\", not {kinds}");
        }

        try
        {
            return node.Word is { } name ? ToWord(node, name, place) : node.Sum is { } sum ? ToSum(node, sum, place) : ToLines(node, node.Lines!, place);
        }
        catch (ArgumentException refused)
        {
            throw Fail($"{place}: {refused.Message.Split(" (Parameter", 2)[0]}");
        }
    }

    private static Pattern ToWord(PatternNodeDto node, string name, string place)
    {
        var word = PatternWord.Find(name) ?? throw Fail(
            $"{place}: unknown word {TextError.Quote(name)}; the words are {string.Join(", ", ((IEnumerable<PatternWord>)PatternWord.All).Select(w => w.Name))}");
        Require(word.TakesPattern == node.Of is not null, place, name, "of", word.TakesPattern);
        Require(word.Takes == WordTakes.Pattern == node.With is not null, place, name, "with", word.Takes == WordTakes.Pattern);
        Require(word.Takes == WordTakes.Numbers == node.Numbers is not null, place, name, "numbers", word.Takes == WordTakes.Numbers);
        Require(word.Takes == WordTakes.Texts == node.Texts is not null, place, name, "texts", word.Takes == WordTakes.Texts);
        var count = node.Numbers?.Count ?? node.Texts?.Count ?? 0;
        if (count < word.Fewest || count > word.Most)
        {
            throw Fail(string.Create(CultureInfo.InvariantCulture, $"{place}: '{name}' takes {word.Fewest} to {word.Most} numbers or texts, not {count}"));
        }

        foreach (var number in node.Numbers ?? [])
        {
            if (number < word.Lowest || number > word.Highest)
            {
                throw Fail(string.Create(CultureInfo.InvariantCulture, $"{place}: a number of '{name}' must be between {word.Lowest} and {word.Highest}, not {number}"));
            }
        }

        return word.Build(new WordParts(
            node.Of is null ? null : ToPattern(node.Of, place + ".of"),
            (node.Numbers ?? []).ToValueList(),
            node.With is null ? null : ToPattern(node.With, place + ".with"),
            (node.Texts ?? []).Select(t => t ?? string.Empty).ToValueList()));
    }

    private static Pattern ToSum(PatternNodeDto node, List<PatternNodeDto?> sum, string place)
    {
        if (sum.Count < 2 || sum.Count > Pattern.MostNodes)
        {
            throw Fail(string.Create(CultureInfo.InvariantCulture, $"{place}: a sum has 2 to {Pattern.MostNodes} nodes, not {sum.Count}"));
        }

        Alone(node, place, "sum");
        var parts = new List<Pattern>(sum.Count);
        foreach (var part in sum)
        {
            parts.Add(ToPattern(part, string.Create(CultureInfo.InvariantCulture, $"{place}.sum[{parts.Count}]")));
        }

        return Pattern.Sum([.. parts]);
    }

    private static Pattern ToLines(PatternNodeDto node, List<string?> lines, string place)
    {
        Alone(node, place, "lines");
        var text = string.Join(" / ", lines);
        return WrittenText.TryRead(text, 0, text.Length, out var written, out var error) ? written! : throw Fail($"{place}: {error!.Message}");
    }

    private static void Alone(PatternNodeDto node, string place, string member)
    {
        if (node.Of is not null || node.With is not null || node.Numbers is not null || node.Texts is not null)
        {
            throw Fail($"{place}: \"{member}\" stands alone; put a node with \"of\" around it");
        }
    }

    private static void Require(bool right, string place, string name, string member, bool wanted)
    {
        if (!right)
        {
            throw Fail($"{place}: '{name}' {(wanted ? "needs" : "takes no")} \"{member}\"");
        }
    }

    private static string Explain(JsonException broken)
    {
        var place = string.IsNullOrEmpty(broken.Path) || broken.Path == "$" ? string.Empty : $" at {TextError.Quote(broken.Path)}";
        return broken.Message.Contains("could not be mapped", StringComparison.Ordinal)
            ? $"unknown member{place}; the members of a node are word, numbers, texts, of, with, sum and lines"
            : broken.Message.Contains("maximum", StringComparison.OrdinalIgnoreCase)
                ? string.Create(CultureInfo.InvariantCulture, $"the nodes are nested too deeply; a pattern has at most {Pattern.DeepestNesting} levels")
                : $"the text is not the JSON of a pattern{place}: check brackets, commas, quotes and that numbers are whole numbers";
    }

    private static WarmupFormatException Fail(string message) => new(TextError.At(1, message));
}

/// <summary>The file as JSON has it.</summary>
internal sealed class PatternFileDto
{
    public string? Schema { get; set; }

    public PatternNodeDto? Pattern { get; set; }
}

/// <summary>A node as JSON has it.</summary>
internal sealed class PatternNodeDto
{
    public string? Word { get; set; }

    public List<int>? Numbers { get; set; }

    public List<string?>? Texts { get; set; }

    public PatternNodeDto? Of { get; set; }

    public PatternNodeDto? With { get; set; }

    public List<PatternNodeDto?>? Sum { get; set; }

    public List<string?>? Lines { get; set; }
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    MaxDepth = PatternFile.DeepestJson)]
[JsonSerializable(typeof(PatternFileDto))]
internal sealed partial class PatternJson : JsonSerializerContext;

using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Warmup;

/// <summary>
/// Reads the JSON of a pattern member by member, so that a refusal has its place: an unknown or repeated member, a value of another
/// kind, nodes that are nested too deeply.
/// </summary>
internal ref struct PatternJsonReader
{
    // A level of a pattern is at most a node in a list of nodes; then a little for the file around it.
    public const int Deepest = (2 * PatternLimits.Levels) + 4;

    private const string SchemaStem = "urn:warmup:pattern:";

    // The reader's own limit is wider than ours, so that ours is the one that is met.
    private static readonly JsonReaderOptions Options = new() { MaxDepth = PatternFile.LargestBytes };

    private readonly ReadOnlySpan<byte> _bytes;
    private Utf8JsonReader _json;
    private long _name;

    private PatternJsonReader(ReadOnlySpan<byte> json)
    {
        _bytes = json;
        _json = new Utf8JsonReader(json, Options);
    }

    /// <summary>The pattern's outermost node.</summary>
    public static PatternNode Read(ReadOnlySpan<byte> json)
    {
        try
        {
            CheckDepth(json);
            var reader = new PatternJsonReader(json);
            reader._json.Read();
            return reader.Document();
        }
        catch (JsonException broken)
        {
            var line = (int)(broken.LineNumber ?? 0);
            throw Fail(json, LineStart(json, line) + (broken.BytePositionInLine ?? 0), "the text is not JSON: check brackets, commas and quotes");
        }
    }

    /// <summary>What is wrong at a byte of the text.</summary>
    public static WarmupFormatException Fail(ReadOnlySpan<byte> json, long at, string message)
    {
        var before = json[..(int)Math.Min(at, json.Length)];
        var column = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
        return new WarmupFormatException(new TextError(before.Count((byte)'\n') + 1, column, message));
    }

    // Goes through all of it without keeping anything, so that nodes nested too deeply cost no memory.
    private static void CheckDepth(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json, Options);
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray && reader.CurrentDepth >= Deepest)
            {
                throw Fail(json, reader.TokenStartIndex, string.Create(CultureInfo.InvariantCulture, $"the nodes are nested too deeply; a pattern has at most {PatternLimits.Levels} levels"));
            }
        }
    }

    private static int LineStart(ReadOnlySpan<byte> json, int line)
    {
        var start = 0;
        for (; line > 0 && json[start..].IndexOf((byte)'\n') is var next and >= 0; line--)
        {
            start += next + 1;
        }

        return start;
    }

    private PatternNode Document()
    {
        Expect(JsonTokenType.StartObject, "the file", "an object with \"schema\" and \"pattern\"");
        var seen = 0;
        var hasSchema = false;
        PatternNode? pattern = null;
        while (Member() is { } name)
        {
            Once(ref seen, name switch { "schema" => 1, "pattern" => 2, _ => 0 }, "the file", name, "schema and pattern");
            if (name == "schema")
            {
                hasSchema = _json.TokenType != JsonTokenType.Null;
                if (hasSchema && Text("schema") is var schema && schema != PatternFile.Schema)
                {
                    throw Fail(schema.StartsWith(SchemaStem, StringComparison.Ordinal)
                        ? $"the pattern is of version {TextError.Quote(schema)}; this library reads {PatternFile.Schema}, in which figures and written lines count from 1, the tonic: add 1 to each number in them that is not below 0"
                        : NoSchema);
                }
            }
            else if (_json.TokenType != JsonTokenType.Null)
            {
                pattern = Node("pattern");
            }
        }

        return !hasSchema ? throw Fail(NoSchema) : pattern ?? throw Fail("pattern is missing; expected a node such as {\"word\": \"ladder\"}");
    }

    private static string NoSchema => $"the pattern lacks \"schema\": \"{PatternFile.Schema}\" at its beginning";

    private PatternNode Node(string place)
    {
        Expect(JsonTokenType.StartObject, place, "a node such as {\"word\": \"ladder\"}");
        var node = new PatternNode { Place = place, Start = _json.TokenStartIndex };
        var seen = 0;
        while (Member() is { } name)
        {
            var member = name switch { "word" => 1, "numbers" => 2, "texts" => 4, "of" => 8, "with" => 16, "sum" => 32, "lines" => 64, _ => 0 };
            Once(ref seen, member, place, name, "word, numbers, texts, of, with, sum and lines");
            if (_json.TokenType == JsonTokenType.Null)
            {
                continue;
            }

            switch (name)
            {
                case "word":
                    node.Word = Text($"{place}.word");
                    break;
                case "numbers":
                    node.Numbers = Numbers($"{place}.numbers");
                    break;
                case "texts":
                    node.Texts = Texts($"{place}.texts");
                    break;
                case "of":
                    node.Of = Node($"{place}.of");
                    break;
                case "with":
                    node.With = Node($"{place}.with");
                    break;
                case "sum":
                    node.Sum = Nodes($"{place}.sum");
                    break;
                default:
                    node.Lines = Texts($"{place}.lines");
                    break;
            }
        }

        return node;
    }

    private List<PatternNode> Nodes(string place)
    {
        Expect(JsonTokenType.StartArray, place, "a list of nodes");
        var nodes = new List<PatternNode>();
        while (Item())
        {
            nodes.Add(Node(string.Create(CultureInfo.InvariantCulture, $"{place}[{nodes.Count}]")));
        }

        return nodes;
    }

    private List<int> Numbers(string place)
    {
        Expect(JsonTokenType.StartArray, place, "a list of whole numbers");
        var numbers = new List<int>();
        while (Item())
        {
            Expect(JsonTokenType.Number, place, "a list of whole numbers");
            numbers.Add(_json.TryGetInt32(out var number) ? number : throw Fail($"{place} must hold whole numbers of at most nine digits"));
        }

        return numbers;
    }

    private List<string> Texts(string place)
    {
        Expect(JsonTokenType.StartArray, place, "a list of texts");
        var texts = new List<string>();
        while (Item())
        {
            texts.Add(Text(place));
        }

        return texts;
    }

    private readonly string Text(string place)
    {
        Expect(JsonTokenType.String, place, "text in quotes");
        try
        {
            return _json.GetString()!;
        }
        catch (InvalidOperationException)
        {
            throw Fail($"{place} holds a character that is not valid UTF-8");
        }
    }

    /// <summary>The name of the next member, with the reader on its value; <see langword="null"/> where the object ends.</summary>
    private string? Member()
    {
        _json.Read();
        if (_json.TokenType == JsonTokenType.EndObject)
        {
            return null;
        }

        string name;
        _name = _json.TokenStartIndex;
        try
        {
            name = _json.GetString()!;
        }
        catch (InvalidOperationException)
        {
            throw Fail("a member's name holds a character that is not valid UTF-8");
        }

        _json.Read();
        return name;
    }

    /// <summary>Goes to the next item of a list; false where the list ends.</summary>
    private bool Item()
    {
        _json.Read();
        return _json.TokenType != JsonTokenType.EndArray;
    }

    private readonly void Expect(JsonTokenType kind, string place, string what)
    {
        if (_json.TokenType != kind)
        {
            throw Fail($"{place} must be {what}");
        }
    }

    private readonly void Once(ref int seen, int member, string place, string name, string members)
    {
        if (member == 0)
        {
            throw Fail(_bytes, _name, $"{place}: unknown member {TextError.Quote(name)}; the members are {members}");
        }

        seen = (seen & member) == 0 ? seen | member : throw Fail(_bytes, _name, $"{place}: the member \"{name}\" stands there twice");
    }

    private readonly WarmupFormatException Fail(string message) => Fail(_bytes, _json.TokenStartIndex, message);
}

using System.Text;
using System.Text.Json;

namespace Warmup.Samples;

/// <summary>
/// The columns as a Table Schema and a table's file with its origin as a Data Package (version 2.0 of both, datapackage.org). <c>unit</c> and
/// <c>origin</c> are this project's own members, which the standards allow.
/// </summary>
internal static class TableSchema
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as JSON.</summary>
    public static string ToJson() => Text(json => Write(json));

    /// <summary>What stands beside a CSV file: its schema, its bytes and where they come from.</summary>
    /// <param name="file">The name of the file, without its folder.</param>
    /// <param name="bytes">How long it is.</param>
    /// <param name="sha256">The hash of its bytes, in small hexadecimal digits.</param>
    /// <param name="origin">Where its rows come from.</param>
    public static string Package(string file, long bytes, string sha256, TableOrigin origin) => Text(json =>
    {
        json.WriteStartObject();
        json.WriteString("$schema", "https://datapackage.org/profiles/2.0/datapackage.json");
        json.WriteString("name", "warmup-patterns");
        json.WriteStartArray("resources");
        json.WriteStartObject();
        json.WriteString("name", "patterns");
        json.WriteString("type", "table");
        json.WriteString("path", file);
        json.WriteString("format", "csv");
        json.WriteString("mediatype", "text/csv");
        json.WriteString("encoding", "utf-8");
        json.WriteNumber("bytes", bytes);
        json.WriteString("hash", "sha256:" + sha256);
        json.WritePropertyName("schema");
        Write(json);
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteStartObject("origin");
        foreach (var (name, text) in origin.Entries)
        {
            json.WriteString(name, text);
        }

        json.WriteEndObject();
        json.WriteEndObject();
    });

    private static void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("$schema", "https://datapackage.org/profiles/2.0/tableschema.json");
        json.WriteStartArray("fields");
        foreach (var column in TableColumns.All)
        {
            json.WriteStartObject();
            json.WriteString("name", column.Name);
            json.WriteString("type", column.Type);
            if (column.Unit.Length > 0)
            {
                json.WriteString("unit", column.Unit);
            }

            json.WriteString("description", column.Meaning);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("missingValues");
        json.WriteStringValue(string.Empty);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static string Text(Action<Utf8JsonWriter> write)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Options))
        {
            write(json);
        }

        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length) + "\n";
    }
}

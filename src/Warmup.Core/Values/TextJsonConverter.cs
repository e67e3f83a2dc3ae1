using System.Text.Json;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>
/// Reads and writes a value as a JSON string that holds its text form: <c>"3/2"</c>, <c>"R2"</c>, <c>"60 to 90 by 5"</c>. Also as the
/// name of a property.
/// </summary>
/// <typeparam name="T">A type whose text form is read by its <c>Parse</c> and written by its <c>ToText</c>, or by its <c>ToString</c> where it has no <c>ToText</c>.</typeparam>
/// <remarks>
/// All types of the library that have a text form carry this converter. It works with source-generated contexts and ahead-of-time
/// compilation. Immutable, safe to share between threads.
/// </remarks>
public sealed class TextJsonConverter<T> : JsonConverter<T>
    where T : ISpanParsable<T>
{
    /// <inheritdoc/>
    /// <exception cref="JsonException">The JSON is not a string, or its text is not such a value; the message says what is wrong and where.</exception>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType == JsonTokenType.String
        ? Read(ref reader)
        : throw new JsonException($"{typeof(T).Name} is written as a JSON string, not as {reader.TokenType}");

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(TextForm.Of(value));
    }

    /// <inheritdoc/>
    /// <exception cref="JsonException">The text is not such a value; the message says what is wrong and where.</exception>
    public override T ReadAsPropertyName(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Read(ref reader);

    /// <inheritdoc/>
    public override void WriteAsPropertyName(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WritePropertyName(TextForm.Of(value));
    }

    private static T Read(ref Utf8JsonReader reader)
    {
        try
        {
            return T.Parse(reader.GetString()!, null);
        }
        catch (FormatException refused)
        {
            throw new JsonException($"{typeof(T).Name}: {refused.Message}", refused);
        }
    }
}

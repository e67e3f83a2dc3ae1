using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Warmup;

/// <summary>Reads and writes a <see cref="ValueList{T}"/> as a JSON array of its items.</summary>
/// <remarks>
/// The items are read and written as the serializer's options say for their type; a source-generated context must name that type too.
/// Immutable, safe to share between threads.
/// </remarks>
public sealed class ValueListJsonConverter : JsonConverterFactory
{
    /// <inheritdoc/>
    public override bool CanConvert(Type typeToConvert) => typeof(IValueList).IsAssignableFrom(typeToConvert);

    /// <inheritdoc/>
    [UnconditionalSuppressMessage("Trimming", "IL2067", Justification = "The default of a struct, the empty list, needs no constructor.")]
    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options)
    {
        // The empty list knows the type of its items, so that no generic type has to be made while the program runs.
        ArgumentNullException.ThrowIfNull(typeToConvert);
        return ((IValueList)RuntimeHelpers.GetUninitializedObject(typeToConvert)).MakeConverter();
    }

    /// <summary>A list that makes the converter for lists like itself.</summary>
    internal interface IValueList
    {
        JsonConverter MakeConverter();
    }

    internal sealed class Of<T> : JsonConverter<ValueList<T>>
    {
        public override ValueList<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            if (reader.TokenType != JsonTokenType.StartArray)
            {
                throw new JsonException($"a list is written as a JSON array, not as {reader.TokenType}");
            }

            var item = (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T));
            var items = new List<T>();
            while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
            {
                items.Add(JsonSerializer.Deserialize(ref reader, item)!);
            }

            return items.ToValueList();
        }

        public override void Write(Utf8JsonWriter writer, ValueList<T> value, JsonSerializerOptions options)
        {
            var item = (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T));
            writer.WriteStartArray();
            foreach (var each in value)
            {
                JsonSerializer.Serialize(writer, each, item);
            }

            writer.WriteEndArray();
        }
    }
}

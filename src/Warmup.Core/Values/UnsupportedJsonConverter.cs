using System.Text.Json;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>Refuses to read or write a value as JSON, so that none is read back as another value.</summary>
/// <typeparam name="T">A type that the library computes and that has no text form.</typeparam>
/// <remarks>
/// Keep what the value was computed from instead, as text: the scale, the pattern, the tonic, the tuning, the meter and the tempo each
/// have a <c>ToText</c> or <c>ToString</c> that their <c>Parse</c> reads back.
/// </remarks>
public sealed class UnsupportedJsonConverter<T> : JsonConverter<T>
{
    /// <inheritdoc/>
    /// <exception cref="NotSupportedException">Always.</exception>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => throw Refusal();

    /// <inheritdoc/>
    /// <exception cref="NotSupportedException">Always.</exception>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => throw Refusal();

    private static NotSupportedException Refusal() => new(
        $"{typeof(T).Name} is computed and has no JSON form; keep the texts of what it is computed from, such as the scale, the pattern, the tonic, the meter and the tempo, and compute it again");
}

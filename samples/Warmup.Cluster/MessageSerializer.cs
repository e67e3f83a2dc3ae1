using System.Runtime.Serialization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Akka.Actor;
using Akka.Configuration;
using Akka.Serialization;

namespace Warmup.ManyMachines;

/// <summary>
/// The messages as JSON, through generated code: only the types listed here are ever made from bytes, and no message is longer than
/// <see cref="LongestMessage"/> bytes.
/// </summary>
internal sealed class MessageSerializer(ExtendedActorSystem system) : SerializerWithStringManifest(system)
{
    public const int LongestMessage = 16_384;

    private static readonly (string Manifest, JsonTypeInfo Type)[] Types =
    [
        ("ready", MessageJson.Default.Ready),
        ("working", MessageJson.Default.Working),
        ("finished", MessageJson.Default.Finished),
        ("failed", MessageJson.Default.Failed),
        ("work", MessageJson.Default.Work),
        ("heard", MessageJson.Default.Heard),
        ("enough", MessageJson.Default.Enough),
    ];

    /// <summary>Akka.NET keeps 0 to 40 for itself.</summary>
    public override int Identifier => 1_907;

    public override string Manifest(object o) => Types.First(t => t.Type.Type == o.GetType()).Manifest;

    public override byte[] ToBinary(object obj)
    {
        var bytes = JsonSerializer.SerializeToUtf8Bytes(obj, Types.First(t => t.Type.Type == obj.GetType()).Type);
        return bytes.Length <= LongestMessage ? bytes : throw new SerializationException($"a message must have at most {LongestMessage} bytes, not {bytes.Length}");
    }

    public override object FromBinary(byte[] bytes, string manifest)
    {
        var type = Types.FirstOrDefault(t => t.Manifest == manifest).Type ?? throw new SerializationException("a message of an unknown kind");
        if (bytes.Length > LongestMessage)
        {
            throw new SerializationException($"a message must have at most {LongestMessage} bytes, not {bytes.Length}");
        }

        try
        {
            return JsonSerializer.Deserialize(bytes, type) ?? throw new SerializationException("a message is null");
        }
        catch (JsonException wrong)
        {
            throw new SerializationException("a message cannot be read", wrong);
        }
    }
}

/// <summary>
/// Takes the place of the serializer with which Akka.NET can make any type by its name: nothing here needs that, and what is sent to it from
/// outside is refused.
/// </summary>
internal sealed class NoOtherTypes : Serializer
{
    /// <summary>The engine makes it so; the settings are those of the serializer it replaces.</summary>
    public NoOtherTypes(ExtendedActorSystem system, Config settings)
        : base(system) => _ = settings;

    /// <summary>The number of the serializer it replaces.</summary>
    public override int Identifier => 1;

    public override bool IncludeManifest => false;

    public override byte[] ToBinary(object obj) => throw new SerializationException($"{obj.GetType()} is not a message of this program");

    public override object FromBinary(byte[] bytes, Type type) => throw new SerializationException("not a message of this program");
}

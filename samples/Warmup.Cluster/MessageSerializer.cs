using System.Runtime.Serialization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Akka.Actor;
using Akka.Configuration;
using Akka.Serialization;

namespace Warmup.ManyMachines;

/// <summary>A few types as JSON, through generated code: only these are ever made from bytes, and nothing is longer than allowed.</summary>
internal abstract class ListedTypesSerializer(ExtendedActorSystem system, int longest, (string Manifest, JsonTypeInfo Type)[] types) : SerializerWithStringManifest(system)
{
    public override string Manifest(object o) => types.First(t => t.Type.Type == o.GetType()).Manifest;

    public override byte[] ToBinary(object obj)
    {
        var bytes = JsonSerializer.SerializeToUtf8Bytes(obj, types.First(t => t.Type.Type == obj.GetType()).Type);
        return bytes.Length <= longest ? bytes : throw TooLong(bytes.Length);
    }

    public override object FromBinary(byte[] bytes, string manifest)
    {
        var type = types.FirstOrDefault(t => t.Manifest == manifest).Type ?? throw new SerializationException("a message of an unknown kind");
        if (bytes.Length > longest)
        {
            throw TooLong(bytes.Length);
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

    private SerializationException TooLong(int length) => new($"a message must have at most {longest} bytes, not {length}");
}

/// <summary>What nodes tell each other, of at most <see cref="LongestMessage"/> bytes.</summary>
internal sealed class MessageSerializer(ExtendedActorSystem system) : ListedTypesSerializer(
    system,
    LongestMessage,
    [
        ("ready", MessageJson.Default.Ready),
        ("working", MessageJson.Default.Working),
        ("finished", MessageJson.Default.Finished),
        ("failed", MessageJson.Default.Failed),
        ("leaving", MessageJson.Default.Leaving),
        ("work", MessageJson.Default.Work),
        ("heard", MessageJson.Default.Heard),
        ("enough", MessageJson.Default.Enough),
    ])
{
    public const int LongestMessage = 16_384;

    /// <summary>Akka.NET keeps 0 to 40 for itself.</summary>
    public override int Identifier => 1_907;
}

/// <summary>What the coordinator writes into its journal, of at most <see cref="LongestRecord"/> bytes.</summary>
internal sealed class RecordSerializer(ExtendedActorSystem system) : ListedTypesSerializer(
    system,
    LongestRecord,
    [
        ("begun", MessageJson.Default.Begun),
        ("done", MessageJson.Default.Done),
        ("standing", MessageJson.Default.Standing),
    ])
{
    public const int LongestRecord = 1_000_000;

    public override int Identifier => 1_908;
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

using System.Text.Json.Serialization;

namespace Warmup.ManyMachines;

/// <summary>What the coordinator and the workers tell each other. Each message stands alone and may come twice.</summary>
internal interface IMessage;

/// <summary>Worker: I have nothing to do.</summary>
internal sealed record Ready : IMessage;

/// <summary>Worker: I am still working on this range.</summary>
internal sealed record Working(int Range) : IMessage;

/// <summary>Worker: a range is done.</summary>
internal sealed record Finished(int Range, Tally Tally) : IMessage;

/// <summary>Worker: nobody can do this range.</summary>
internal sealed record Failed(int Range, string Why) : IMessage;

/// <summary>Coordinator: do this range.</summary>
internal sealed record Work(PatternJob Job, int Range) : IMessage;

/// <summary>Coordinator: I have heard you, and have nothing for you now.</summary>
internal sealed record Heard : IMessage;

/// <summary>Coordinator: everything is done; leave.</summary>
internal sealed record Enough : IMessage;

[JsonSerializable(typeof(Ready))]
[JsonSerializable(typeof(Working))]
[JsonSerializable(typeof(Finished))]
[JsonSerializable(typeof(Failed))]
[JsonSerializable(typeof(Work))]
[JsonSerializable(typeof(Heard))]
[JsonSerializable(typeof(Enough))]
[JsonSourceGenerationOptions(UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow, RespectNullableAnnotations = true)]
internal sealed partial class MessageJson : JsonSerializerContext;

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

/// <summary>Worker: I am leaving; whatever I had is for another.</summary>
internal sealed record Leaving : IMessage;

/// <summary>Coordinator: do this range.</summary>
internal sealed record Work(PatternJob Job, int Range) : IMessage;

/// <summary>Coordinator: I have heard you, and have nothing for you now.</summary>
internal sealed record Heard : IMessage;

/// <summary>Coordinator: everything is done; leave.</summary>
internal sealed record Enough : IMessage;

/// <summary>What the coordinator writes into its journal.</summary>
internal interface IRecord;

/// <summary>The first record: which job the journal is about.</summary>
internal sealed record Begun(PatternJob Job) : IRecord;

/// <summary>Ranges that are done, each for the first time.</summary>
internal sealed record Done(IReadOnlyList<Finished> Ranges) : IRecord;

/// <summary>All that the records before it say, so that they need not be read again. <paramref name="Stretches"/> are first and last ranges that are done.</summary>
internal sealed record Standing(PatternJob Job, Tally Sum, IReadOnlyList<int[]> Stretches) : IRecord;

[JsonSerializable(typeof(Ready))]
[JsonSerializable(typeof(Working))]
[JsonSerializable(typeof(Finished))]
[JsonSerializable(typeof(Failed))]
[JsonSerializable(typeof(Leaving))]
[JsonSerializable(typeof(Work))]
[JsonSerializable(typeof(Heard))]
[JsonSerializable(typeof(Enough))]
[JsonSerializable(typeof(Begun))]
[JsonSerializable(typeof(Done))]
[JsonSerializable(typeof(Standing))]
[JsonSourceGenerationOptions(UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow, RespectNullableAnnotations = true)]
internal sealed partial class MessageJson : JsonSerializerContext;

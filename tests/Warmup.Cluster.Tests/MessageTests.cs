using System.Runtime.Serialization;
using System.Text;
using Akka.Actor;
using Akka.Serialization;

namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the sample's own promise that nodes read its messages and nothing else from the network.</summary>
public sealed class MessageTests : IDisposable
{
    private static readonly PatternJob Job = new() { Words = "ladder", Size = 2, Scales = "Mohanam", RangeLength = 7, First = 8, Most = 9 };

    private static readonly IMessage[] All =
    [
        new Ready(), new Working(3), new Finished(4, new Tally { Patterns = 1, Refused = 2, Lines = 3, Notes = 4, Palindromes = 5, Broken = 6, Checksum = ulong.MaxValue }),
        new Failed(5, "why"), new Leaving(), new Work(Job, 6), new Heard(), new Enough(),
    ];

    private readonly TestFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private ActorSystem Start() => new ClusterSettings { Certificate = _folder.Worker }.StartWorker();

    [Fact]
    public async Task Messages_come_back_as_they_were_sent_and_by_our_serializer()
    {
        using var system = Start();
        Assert.Equal(typeof(IMessage).Assembly.GetTypes().Count(t => t.IsAssignableTo(typeof(IMessage)) && t.IsClass), All.Length);
        foreach (var message in All)
        {
            var serializer = Assert.IsType<MessageSerializer>(system.Serialization.FindSerializerFor(message));
            var bytes = serializer.ToBinary(message);
            Assert.InRange(bytes.Length, 2, 1_000);
            Assert.Equal(message, system.Serialization.Deserialize(bytes, serializer.Identifier, serializer.Manifest(message)));
        }

        await system.Terminate();
    }

    [Fact]
    public async Task Records_come_back_as_they_were_written()
    {
        using var system = Start();
        IRecord[] records = [new Begun(Job), new Done([new Finished(1, new Tally { Patterns = 2 }), new Finished(0, Tally.Empty)]), new Standing(Job, new Tally { Notes = 3 }, [[0, 4], [7, 7]])];
        Assert.Equal(typeof(IRecord).Assembly.GetTypes().Count(t => t.IsAssignableTo(typeof(IRecord)) && t.IsClass), records.Length);
        foreach (var record in records)
        {
            var serializer = Assert.IsType<RecordSerializer>(system.Serialization.FindSerializerFor(record));
            var read = system.Serialization.Deserialize(serializer.ToBinary(record), serializer.Identifier, serializer.Manifest(record));
            Assert.Equivalent(record, read, strict: true);
        }

        // The longest that the coordinator writes.
        var most = Enumerable.Range(9_999_500, 500).Select(r => new Finished(r, new Tally { Patterns = 1_000_000, Refused = 16_000_000, Lines = long.MaxValue, Notes = long.MaxValue, Palindromes = 16_000_000, Checksum = ulong.MaxValue })).ToList();
        Assert.NotEmpty(system.Serialization.FindSerializerFor(records[1]).ToBinary(new Done(most)));
        var standing = new Standing(Job, Tally.Empty, Enumerable.Range(0, 10_000).Select(i => (int[])[9_000_000 + (2 * i), 9_000_000 + (2 * i)]).ToList());
        Assert.NotEmpty(system.Serialization.FindSerializerFor(standing).ToBinary(standing));
        await system.Terminate();
    }

    [Fact]
    public async Task Other_types_longer_messages_and_unknown_members_are_refused()
    {
        using var system = Start();
        var serialization = system.Serialization;
        var own = (SerializerWithStringManifest)serialization.FindSerializerForType(typeof(Ready));
        Assert.Throws<SerializationException>(() => own.FromBinary("{}"u8.ToArray(), "System.Object"));
        Assert.Throws<SerializationException>(() => own.FromBinary("{\"more\":1}"u8.ToArray(), "ready"));
        Assert.Throws<SerializationException>(() => own.FromBinary("null"u8.ToArray(), "ready"));
        Assert.Throws<SerializationException>(() => own.FromBinary(Encoding.UTF8.GetBytes(new string(' ', MessageSerializer.LongestMessage) + "{}"), "ready"));
        Assert.Throws<SerializationException>(() => own.ToBinary(new Failed(0, new string('x', MessageSerializer.LongestMessage))));

        // Number 1 is where the engine has its serializer of any type by its name.
        const string Named = "System.Diagnostics.ProcessStartInfo, System.Diagnostics.Process";
        Assert.ThrowsAny<Exception>(() => serialization.Deserialize("{\"$type\":\"System.Object\"}"u8.ToArray(), 1, Named));
        Assert.IsType<NoOtherTypes>(serialization.FindSerializerForType(typeof(object)));
        await system.Terminate();
    }

    [Fact]
    public async Task The_largest_job_fits_a_message()
    {
        using var system = Start();
        var text = new string('\u0DFF', PatternJob.LongestText);
        var largest = new Work(new PatternJob { Words = text, Scales = text, Size = 12, First = long.MaxValue }, int.MaxValue);
        Assert.InRange(system.Serialization.FindSerializerFor(largest).ToBinary(largest).Length, 1, MessageSerializer.LongestMessage);
        await system.Terminate();
    }
}

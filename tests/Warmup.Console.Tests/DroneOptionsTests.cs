using System.Buffers;
using Warmup.Midi;

namespace Warmup.Cli.Tests;

/// <summary>The drone and the call and response as chosen at a shell: the file is the one that the library writes of such a drill.</summary>
public sealed class DroneOptionsTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    public static TheoryData<string, string?, DroneStyle?> Drones => new()
    {
        { "tanpura", null, DroneStyle.Tanpura },
        { "Tanpura", "M1", DroneStyle.Tanpura with { First = new Degree(4) } },
        { "tanpura-5", null, DroneStyle.Tanpura with { StringCount = 5 } },
        { "sruti-box", null, DroneStyle.SrutiBox },
        { "sruti-box", "M1", DroneStyle.SrutiBox with { First = new Degree(4) } },
        { "none", null, null },
    };

    [Theory]
    [MemberData(nameof(Drones), DisableDiscoveryEnumeration = true)]
    public void The_drone_is_the_one_that_was_named(string drone, string? first, DroneStyle? style)
    {
        string[] options = ["--drone", drone, .. first is null ? (string[])[] : ["--drone-string", first]];
        Assert.Equal((0, string.Empty), Run(options));
        var drill = Mohanam();
        Assert.Equal(Bytes((style is null ? drill with { HasDrone = false } : drill with { DroneStyle = style }).ToScore()), Written());
    }

    [Fact]
    public void A_call_and_response_is_written_with_answers()
    {
        Assert.Equal((0, string.Empty), Run("--call-and-response"));
        Assert.Equal(Bytes(Mohanam().ToScore().WithAnswers()), Written());
    }

    [Theory]
    [InlineData("--drone must be tanpura or tanpura-5 or sruti-box or none, not 'harp'", "--drone", "harp")]
    [InlineData("--drone-string must be a svara such as P, M1 or N3, not 'X'", "--drone-string", "X")]
    [InlineData("--drone-string needs a drone", "--drone", "none", "--drone-string", "P")]
    public void What_cannot_be_used_is_refused_by_name(string message, params string[] options)
    {
        var (code, error) = Run(options);
        Assert.Equal(2, code);
        Assert.Contains(message, error, StringComparison.Ordinal);
        Assert.Empty(_shell.Files);
    }

    private static Drill Mohanam() => new()
    {
        Scale = Catalogue.Default.Read("mohanam"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("G3"),
        Tempo = 60,
        Tuning = Tuning.Just,
    };

    private static byte[] Bytes(Score score)
    {
        var buffer = new ArrayBufferWriter<byte>();
        new MidiFormat().Write(score, buffer);
        return buffer.WrittenSpan.ToArray();
    }

    private byte[] Written() => File.ReadAllBytes(_shell.At("a.mid"));

    private (int Code, string Error) Run(params string[] options)
    {
        var (code, _, error) = Shell.Run([.. _shell.Drill(("--tuning", "just")), .. options]);
        return (code, error);
    }
}

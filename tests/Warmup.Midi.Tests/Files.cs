using System.Buffers;

namespace Warmup.Midi.Tests;

/// <summary>The drills the tests export, and their bytes.</summary>
public static class Files
{
    public static readonly string[] Scales =
    [
        "S R2 G3 M1 P D2 N3 S'",
        "S R1 G3 M1 P D1 N3 S'",
        "S R1 G1 M2 P D1 N1 S'",
        "S R3 G3 M2 P D3 N3 S'",
        "S R2 G2 M1 P D1 N2 S'",
        "S R2 G3 P D2 S'",
        "S G2 M1 D1 N2 S'",
        "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S",
        "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S",
        "vakra: S R1 M1 P N3 S' / S' N3 P M1 R1 G3 M1 R1 S",
    ];

    public static readonly string[] Patterns =
    [
        "ladder",
        "ladder.reversed",
        "ladder.ends",
        "ladder.there-and-back",
        "figure(1 2 3 4 3 2 1)",
        "ladder.mirrored + ladder.ends",
    ];

    public static Drill Drill(string scale = "S R2 G3 M1 P D2 N3 S'", string pattern = "ladder") => new()
    {
        Scale = Scale.Parse(scale),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.FromMidi(60),
        Title = "A drill",
    };

    /// <summary>Drills sung one after the other, with the first one's drone.</summary>
    public static Score Joined(params Drill[] drills)
    {
        var scores = drills.Select(d => d.ToScore()).ToArray();
        return Score.Join(scores[0].Title, scores) with { Drone = scores[0].Drone };
    }

    /// <summary>A note of a part of an akshara, which is the grid, and silence to the akshara's end.</summary>
    public static Score Fine(int resolution) => (Drill() with
    {
        Expansion = new([new Line([default(LineNote) with { Length = new Rational(1, resolution), Rest = new Rational(resolution - 1, resolution) }])]),
    }).ToScore();

    public static byte[] Bytes(Score score, MidiOptions? options = null)
    {
        var buffer = new ArrayBufferWriter<byte>();
        new MidiFormat(options ?? MidiOptions.Default).Write(score, buffer);
        return buffer.WrittenSpan.ToArray();
    }
}

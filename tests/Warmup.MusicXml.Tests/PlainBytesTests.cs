using System.Buffers;
using System.Text;

namespace Warmup.MusicXml.Tests;

/// <summary>
/// The format's bytes are those of a plain writer on System.Xml.XmlWriter, which shares no code with it. XmlWriter puts a space before
/// the end of an empty element; the comparison takes it off.
/// </summary>
public class PlainBytesTests
{
    [Fact]
    public void The_plain_writer_gives_the_same_bytes_for_every_parent_scale_on_every_tonic()
    {
        for (var number = 1; number <= 72; number++)
        {
            for (var tonic = 36; tonic < 84; tonic += 5)
            {
                Same(JobDrills.Drill(number, Tonic.FromMidi(tonic), 60 + number));
            }
        }
    }

    [Theory]
    [InlineData("S R2 G3 P D2 S'", "C3")]
    [InlineData("S R2 G3 M1 P D2 N3 S' / S' N2 D2 P M1 G2 R2 S", "Eb4")]
    [InlineData("S R1 R2 M1 M2 D1 D2 S'", "G#3")]
    [InlineData("S R2 G2 M2 P D1 N3 S'", "F#4")]
    public void Other_scales_give_the_same_bytes_too(string scale, string tonic)
    {
        foreach (var pattern in (string[])["ladder", "ladder.reversed", "figure(1 2 3 2)", "figure(1 3)", "run.grow"])
        {
            Same(JobDrills.Drill(1, Tonic.Parse(tonic), new Rational(145, 2)) with { Scale = Scale.Parse(scale), Pattern = Pattern.Parse(pattern) });
        }
    }

    [Fact]
    public void Text_is_escaped_as_the_plain_writer_escapes_it()
    {
        foreach (var syllables in (Syllables[])[Syllables.Tamil, Syllables.Solfa, Syllables.Vowel("<a> & b")])
        {
            Same(JobDrills.Drill(29, Tonic.Parse("D4"), 90) with { Title = "Up < down & 𝄞 back > again", Syllables = syllables });
        }
    }

    private static void Same(Drill drill)
    {
        var score = drill.ToScore();
        using var plain = new MemoryStream();
        PlainMusicXml.Write(score, plain);
        var ours = new ArrayBufferWriter<byte>();
        new MusicXmlFormat().Write(score, ours);
        Assert.Equal(
            Encoding.UTF8.GetString(plain.ToArray()).Replace(" />", "/>", StringComparison.Ordinal),
            Encoding.UTF8.GetString(ours.WrittenSpan));
    }
}

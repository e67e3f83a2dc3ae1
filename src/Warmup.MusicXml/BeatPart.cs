namespace Warmup.MusicXml;

/// <summary>The part of the beat.</summary>
/// <param name="number">Its number.</param>
internal sealed class BeatPart(int number) : ScorePart(number)
{
    public override (string Name, string Sound) Instrument => ("Wood block", "wood.wood-block");

    public override void Check(Score score) => BeatWriter.Divisions(score);

    public override void Write(XmlByteWriter xml, Score score, MusicXmlOptions options, int divisions, CancellationToken cancellation) =>
        new BeatWriter(xml, options, Number).Write(score, cancellation);

    // Key 77 counted from 1 is General MIDI's high wood block.
    public override void WriteMidi(XmlByteWriter xml) =>
        xml.Raw("        <midi-channel>10</midi-channel>\n        <midi-unpitched>77</midi-unpitched>\n"u8);
}

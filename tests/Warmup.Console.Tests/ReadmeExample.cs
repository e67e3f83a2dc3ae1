using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.Cli.Tests;

/// <summary>The README's example, compiled.</summary>
internal static class ReadmeExample
{
    public static void Run()
    {
        #region README
        var drill = new Drill
        {
            Scale = Catalogue.Default.Read("Mohanam"),
            Pattern = Pattern.Ladder.Reversed(),
            Tonic = Tonic.Parse("G3"),
            Tuning = Tuning.Just,
            Delivery = Delivery.LineByLine,
        };
        var score = drill.ToScore();
        new MidiFormat().Save(score, "mohanam.mid");
        new MusicXmlFormat().Save(score, "mohanam.musicxml");
        #endregion
    }
}

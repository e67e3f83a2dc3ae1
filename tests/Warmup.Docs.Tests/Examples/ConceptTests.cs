using Warmup.Midi;

namespace Warmup.Docs.Tests.Examples;

/// <summary>The page on concepts: how data flows, step by step.</summary>
public sealed class ConceptTests : TemporaryFolder
{
    [Fact]
    public void Data_flows_one_way()
    {
        #region data flow
        // Scale + pattern -> lines
        var scale = Catalogue.Default.Read("Mohanam");
        var pattern = Pattern.Parse("ladder.reversed");
        var lines = pattern.Expand(scale);
        Console.WriteLine(lines.ToLetters()); // R S / G R S / P G R S / D P G R S / S' D P G R S

        // + how it is sung -> score
        var drill = new Drill { Scale = scale, Pattern = pattern, Tonic = Tonic.Parse("G3"), Delivery = Delivery.LineByLine };
        var score = drill.ToScore(lines);
        var held = score.Sections[0].Notes[4]; // the S that ends the second line
        Console.WriteLine($"from akshara {held.Onset}, {held.Length} long"); // from akshara 10, 5 long

        // + singer -> findings
        var badger = new Singer("Badger", new NoteName('G', 0, 2), new NoteName('D', 0, 4), sustainedSeconds: 22);
        foreach (var finding in score.Check(badger))
        {
            Console.WriteLine(finding.Describe());
        }

        // -> files
        new MidiFormat().Save(score, "mohanam.mid");
        #endregion

        // Adi has eight aksharas: the second line begins at 8, its third note at 10, and a breath of a second ends it at 16.
        Assert.Equal("R S / G R S / P G R S / D P G R S / S' D P G R S", lines.ToLetters());
        Assert.Equal((10, 5), (held.Onset, held.Length));

        // From G3 to G4: Badger's D4 is passed by the lines that reach above it, E4 in the fourth and G4 in the fifth.
        Assert.Equal([4, 5], score.Check(badger).Where(f => f.Code == VoiceFindingCode.AboveRange).Select(f => f.Place!.Value.Line).Order());
        Assert.Equal(["mohanam.mid"], Files);
    }
}

using System.Buffers;
using Warmup.Audio;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;
using Warmup.Testing;

namespace Warmup.Docs.Tests.Examples;

/// <summary>The short examples on the pages about formats and laws.</summary>
public sealed class PageTests : TemporaryFolder
{
    private static readonly Singer Wren = new("Wren", new NoteName('G', 0, 3), new NoteName('E', 0, 5), 18);

    private readonly Drill drill = new()
    {
        Scale = Catalogue.Default.Read("Mohanam"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("G3"),
        Delivery = Delivery.LineByLine,
    };

    [Fact]
    public void Of_the_page_on_midi()
    {
        #region midi
        var score = drill.ToScore();
        new MidiFormat().Save(score, "mohanam.mid");
        new MidiFormat(new MidiOptions { HasVoice = false }).Save(score, "drone.mid"); // to sing to
        new MidiFormat().Save(score.WithAnswers(), "answers.mid"); // each line, then silence as long for the singer
        #endregion
        Assert.Equal(["answers.mid", "drone.mid", "mohanam.mid"], Files);
    }

    [Fact]
    public async Task Of_the_page_on_MusicXML()
    {
        var score = drill.ToScore();
        #region musicxml
        var options = new MusicXmlOptions { SecondVoiceSemitones = -12, HasDrone = true, Paper = MusicXmlPaper.Letter };
        await new MusicXmlFormat(options).SaveAsync(score, "class.musicxml");
        #endregion
        Assert.Equal(["class.musicxml"], Files);
    }

    [Fact]
    public void Of_the_page_on_many_drills()
    {
        var drills = Enumerable.Range(57, 12).Select(tonic => drill with { Tonic = Tonic.FromMidi(tonic) }).ToList();
        #region many drills
        var midi = new MidiFormat();
        var run = new OrderedParallel { Workers = Environment.ProcessorCount };
        var lengths = run.Map(drills, () => new ArrayBufferWriter<byte>(), (drill, buffer, stop) =>
        {
            buffer.ResetWrittenCount();
            midi.Write(drill.ToScore(stop), buffer, stop);
            return buffer.WrittenCount;
        });
        Console.WriteLine($"{lengths.Sum(length => (long)length)} bytes of MIDI");
        #endregion
        Assert.Equal(12, lengths.Count());
    }

    [Fact]
    public void Of_the_page_on_sheets()
    {
        var score = drill.ToScore();
        var wren = Wren;
        #region sheets
        new PdfFormat().Save(score, "mohanam.pdf");
        new SvgFormat(new SheetOptions { Letters = Syllables.Kannada }).Save(score, "mohanam.svg");
        new PngFormat(new ContourOptions { Band = wren.Band, DotsPerInch = 200 }).Save(score, "contour.png");
        #endregion
        Assert.Equal(["contour.png", "mohanam.pdf", "mohanam.svg"], Files);
    }

    [Fact]
    public void Of_the_page_on_sound()
    {
        var score = (drill with { Pattern = Pattern.Ladder.Take(2) }).ToScore();
        #region sound
        new WavFormat().Save(score, "mohanam.wav");
        new WavFormat(new WavOptions { DroneSound = DroneSound.Held }).Save(score.WithAnswers(), "answers.wav");
        #endregion
        Assert.Equal(["answers.wav", "mohanam.wav"], Files);
    }

    [Fact]
    public void Of_the_page_on_the_practice_page()
    {
        var score = drill.ToScore();
        var window = TempoWindow.OfSpeeds(drill, [Wren])[0];
        #region practice page
        new HtmlFormat().Save(score, "mohanam.html");
        new HtmlFormat(new HtmlOptions { SlowestPercent = 70, FastestPercent = 120 }).Save(score.WithAnswers(), "answers.html");
        new HtmlFormat(new HtmlOptions { Tempi = window.Intervals[0].Range }).Save(score, "class.html"); // a TempoWindow of the class
        #endregion
        Assert.Equal(["answers.html", "class.html", "mohanam.html"], Files);
    }

    [Fact]
    public void Of_the_page_on_laws()
    {
        #region rule of your own
        var rule = PatternRule.Of("top held twice", p => p.Hold(1).Hold(1));
        var reports = LawSuite.Check(rule, PatternLaws.KeepsNotes, PatternLaws.WorksLineByLine, PatternLaws.KeepsEmpty);
        Console.WriteLine(string.Join('\n', reports));
        reports.ThrowIfBroken();
        #endregion
        Assert.Equal(3, reports.Count);
    }
}

using System.Globalization;

namespace Warmup.MusicXml.Tests;

/// <summary>Slides, hairpins and short notes. Source: the W3C's MusicXML 4.0 documentation of slide, wedge and staccato.</summary>
public class SlideTests
{
    private static ReadScore Read(string pattern, Meter? meter = null, Delivery? delivery = null) => ReadScore.Of((Drills.Of(pattern: pattern) with
    {
        Meter = meter ?? Meter.Adi,
        Delivery = delivery ?? Delivery.Continuous,
    }).ToScore());

    [Fact]
    public void A_slide_goes_from_the_last_piece_of_a_note_to_the_first_of_the_next()
    {
        // The second note is tied over the bar line: its slide begins on its last piece.
        var notes = Read("[S , , , , P , , , , , S , , ,].glide").All("note").Where(n => n.Element("pitch") is not null).ToList();
        var slides = notes.Select((n, i) => (Index: i, Types: n.Descendants("slide").Select(x => (string?)x.Attribute("type")).ToList())).ToList();
        var starts = slides.Where(x => x.Types.Contains("start")).Select(x => x.Index).ToList();
        var stops = slides.Where(x => x.Types.Contains("stop")).Select(x => x.Index).ToList();
        Assert.Equal(2, starts.Count);
        Assert.Equal(starts.Select(i => i + 1), stops);
        bool IsTied(int i, string type) => notes[i].Descendants("tied").Any(t => (string?)t.Attribute("type") == type);
        Assert.All(starts, i => Assert.False(IsTied(i, "start")));
        Assert.All(stops, i => Assert.False(IsTied(i, "stop")));
        Assert.True(IsTied(stops[0], "start"));
    }

    [Fact]
    public void Nothing_slides_from_line_to_line()
    {
        var slides = Read("[S P / G P S].glide").All("slide").Select(s => (string?)s.Attribute("type"));
        Assert.Equal(["start", "stop", "start", "stop", "start", "stop"], slides);
    }

    [Theory]
    [InlineData("[S , , , , , , ,].swell", "0 4 4 8")] // one avartana, two pieces or more
    [InlineData("[S].swell", "0 1/2 1/2 1")]
    [InlineData("[S , ,].swell + [P]", "0 3/2 3/2 3")]
    [InlineData("[S , , , , ,] + [P , , , , ,].swell", "6 9 9 12")] // over the bar line
    [InlineData("[S R].swell", "0 1/2 1/2 1 1 3/2 3/2 2")]
    public void Two_hairpins_meet_in_the_middle_of_the_note(string pattern, string places)
    {
        var read = Read(pattern);
        var divisions = int.Parse(read.All("divisions").First().Value, CultureInfo.InvariantCulture);
        var found = new List<(Rational At, string Type)>();
        var at = 0L;
        foreach (var element in read.Measures.SelectMany(m => m.Element.Elements()))
        {
            at += element.Name == "note" ? long.Parse(element.Element("duration")!.Value, CultureInfo.InvariantCulture) : 0;
            found.AddRange(element.Descendants("wedge").Select(w => (
                new Rational(at + long.Parse(element.Element("offset")?.Value ?? "0", CultureInfo.InvariantCulture), divisions), (string)w.Attribute("type")!)));
            Assert.All(element.Descendants("wedge"), _ => Assert.Equal("above", (string?)element.Attribute("placement")));
        }

        Assert.Equal(places, string.Join(' ', found.Select(f => f.At)));
        Assert.Equal(Enumerable.Repeat<string[]>(["crescendo", "stop", "diminuendo", "stop"], found.Count / 4).SelectMany(t => t), found.Select(f => f.Type));
    }

    [Fact]
    public void A_short_note_has_a_dot_and_a_held_one_has_none()
    {
        var read = Read("[S G P].staccato", delivery: Delivery.LineByLine);
        var notes = read.All("note").Where(n => n.Element("pitch") is not null).ToList();
        Assert.Equal([true, true], notes.Take(2).Select(n => n.Descendants("staccato").Any()));
        Assert.All(notes.Skip(2), n => Assert.Empty(n.Descendants("staccato")));
        Assert.Equal("quarter", notes[0].Element("type")!.Value);
    }

    [Fact]
    public void Other_drills_have_none_of_them() =>
        Assert.All((string[])["slide", "wedge", "staccato", "offset"], name => Assert.Empty(Read("ladder").All(name)));

    [Theory]
    [InlineData("[S , , P , S' , , , , P , S ,].glide.swell")]
    [InlineData("run.staccato.up-down")]
    [InlineData("run.stretch(1 3).swell")]
    public void They_are_valid(string pattern)
    {
        Schema.SkipWhereMissing();
        foreach (var (meter, delivery) in ((Meter, Delivery)[])[(Meter.Adi, Delivery.LineByLine), (Meter.Free, Delivery.Continuous), (Meter.Parse("6/8"), Delivery.Continuous)])
        {
            var score = (Drills.Of(pattern: pattern) with { Meter = meter, Delivery = delivery }).ToScore();
            Assert.Empty(Schema.Errors(ReadScore.Bytes(score)));
            Assert.Empty(Schema.Errors(ReadScore.Bytes(score, new() { SecondVoiceSemitones = -12, HasDrone = true })));
        }
    }
}

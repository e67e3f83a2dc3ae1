namespace Warmup.MusicXml.Tests;

/// <summary>Marks above the staff and the hidden signatures of free rhythm. Source: the W3C's MusicXML 4.0 documentation.</summary>
public class MarkTests
{
    [Fact]
    public void Each_line_has_its_number_right_before_its_first_note()
    {
        // Lines of two and three notes that run on, in one measure.
        var read = ReadScore.Of(Drills.Of(pattern: "ladder.take(2)").ToScore());
        var order = read.Measures[0].Element.Elements().Where(e => e.Descendants("rehearsal").Any() || e.Element("pitch") is not null)
            .Select(e => e.Descendants("rehearsal").SingleOrDefault()?.Value ?? "note");
        Assert.Equal("1 note note 2 note note note", string.Join(' ', order));
        Assert.Empty(ReadScore.Of(Drills.Of().ToScore(), new() { LineMarks = MusicXmlLineMarks.None }).All("rehearsal"));
    }

    [Fact]
    public void The_numbers_begin_again_in_each_section()
    {
        var read = ReadScore.Of(Samples.All["three sections"]);
        Assert.Equal("1 2 3 4 5 6 7 1 2 3 1 2 3", string.Join(' ', read.All("rehearsal").Select(r => r.Value)));
    }

    [Theory]
    [InlineData(MusicXmlDynamics.Pianissimo, "pp")]
    [InlineData(MusicXmlDynamics.Piano, "p")]
    [InlineData(MusicXmlDynamics.MezzoPiano, "mp")]
    [InlineData(MusicXmlDynamics.MezzoForte, "mf")]
    [InlineData(MusicXmlDynamics.Forte, "f")]
    [InlineData(MusicXmlDynamics.Fortissimo, "ff")]
    public void Each_section_begins_as_loud_as_asked_above_the_staff(MusicXmlDynamics dynamics, string mark)
    {
        var read = ReadScore.Of(Samples.All["three sections"], new() { Dynamics = dynamics });
        Assert.Equal([mark, mark, mark], read.All("dynamics").Select(d => d.Elements().Single().Name.LocalName));
        Assert.All(read.All("dynamics"), d => Assert.Equal("above", (string?)d.Ancestors("direction").Single().Attribute("placement")));
        Assert.Empty(ReadScore.Of(Samples.All["three sections"]).All("dynamics"));
    }

    [Fact]
    public void With_a_count_in_the_first_mark_stands_where_the_voice_begins()
    {
        var read = ReadScore.Of((Drills.Of() with { CountIn = 1 }).ToScore(), new() { Dynamics = MusicXmlDynamics.Piano });
        Assert.Empty(read.Measures[0].Element.Descendants("dynamics"));
        Assert.Single(read.Measures[1].Element.Descendants("dynamics"));
    }

    [Fact]
    public void Free_rhythm_has_one_hidden_signature_of_its_longest_bar_on_request()
    {
        // Line by line at the first speed: 2 to 8 notes, the last one held an akshara, a breath of one: bars of 3 to 9.
        var score = (Drills.Of() with { Meter = Meter.Free, Delivery = Delivery.LineByLine }).ToScore();
        Assert.Equal("3 4 5 6 7 8 9", string.Join(' ', ReadScore.Of(score).All("beats").Select(b => b.Value)));
        var read = ReadScore.Of(score, new() { FreeBars = MusicXmlFreeBars.OneSignature });
        Assert.Equal("9", Assert.Single(read.All("beats")).Value);
        Assert.Equal("no", (string?)Assert.Single(read.All("time")).Attribute("print-object"));
        Assert.Equal(ReadScore.Of(score).Sung(), read.Sung());
        var counted = Drills.Of().ToScore();
        Assert.Equal(ReadScore.Bytes(counted), ReadScore.Bytes(counted, new() { FreeBars = MusicXmlFreeBars.OneSignature }));
    }

    [Fact]
    public void Bars_of_free_rhythm_are_of_reasonable_length()
    {
        // A line of 24 notes: the project's own setting divides bars longer than 16 aksharas.
        var steps = string.Join(' ', Enumerable.Repeat("1 2 3 4 5 6 7 8", 3));
        var read = ReadScore.Of((Drills.Of(pattern: $"figure({steps}).take(1)") with { Meter = Meter.Free }).ToScore());
        Assert.All(read.Measures, m => Assert.True(m.Length <= 16));
        Assert.Equal(24, read.Sung().Count);
    }

    [Fact]
    public void A_date_is_written_only_where_it_is_given()
    {
        var read = ReadScore.Of(Drills.Of().ToScore(), new() { Date = new DateOnly(987, 2, 3) });
        Assert.Equal("0987-02-03", Assert.Single(read.All("encoding-date")).Value);
        Assert.Empty(ReadScore.Of(Drills.Of().ToScore()).All("encoding-date"));
    }
}

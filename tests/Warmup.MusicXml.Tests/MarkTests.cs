namespace Warmup.MusicXml.Tests;

/// <summary>Marks above the staff and the hidden signatures of free rhythm. Source: the W3C's MusicXML 4.0 documentation.</summary>
public class MarkTests
{
    [Fact]
    public void Each_line_has_its_number_right_before_its_first_note()
    {
        // Lines of two and three notes that run on, in one measure.
        var read = ReadScore.Of(Drills.Of(pattern: "ladder.take(2)").ToScore());
        var order = read.Measures[0].Element.Elements().Where(e => e.Descendants().Any(ReadScore.IsLineNumber) || e.Element("pitch") is not null)
            .Select(e => e.Descendants().SingleOrDefault(ReadScore.IsLineNumber)?.Value ?? "note");
        Assert.Equal("note note 2 note note note", string.Join(' ', order));
        Assert.Empty(ReadScore.Of(Drills.Of().ToScore(), new() { LineMarks = MusicXmlLineMarks.None }).LineNumbers);
    }

    [Fact]
    public void The_numbers_begin_again_in_each_section()
    {
        var read = ReadScore.Of(Samples.All["three sections"]);
        Assert.Equal("2 3 4 5 6 7 2 3 2 3", string.Join(' ', read.LineNumbers.Select(r => r.Value)));
    }

    [Fact]
    public void Beside_line_numbers_measures_show_none()
    {
        // The standard: implicit is for measures whose number should never appear.
        var score = Drills.Of().ToScore();
        foreach (var options in (MusicXmlOptions[])[new(), new() { Beat = MusicXmlBeat.Strokes, HasDrone = true }])
        {
            Assert.All(ReadScore.Of(score, options).All("measure"), m => Assert.Equal("yes", (string?)m.Attribute("implicit")));
        }

        Assert.All(ReadScore.Of(score, new() { LineMarks = MusicXmlLineMarks.None }).All("measure"), m => Assert.Null(m.Attribute("implicit")));
    }

    [Theory]
    [InlineData("adi", "4 6")]
    [InlineData("khanda chapu", "2")]
    [InlineData("misra-jati jhampa", "7 8")]
    [InlineData("2+2+3/8", "")]
    [InlineData("4/4", "")]
    public void Angas_end_inside_a_measure_with_a_dashed_line_in_every_part(string meter, string ends)
    {
        // One note an akshara, so that no note lies over an anga's end.
        var score = (Drills.Of(pattern: "run.up-down") with { Meter = Meter.Parse(meter), Repetitions = 4 }).ToScore();
        var read = ReadScore.Of(score, new() { HasDrone = true, Beat = MusicXmlBeat.Strokes });
        foreach (var part in read.All("part"))
        {
            var divisions = (int)part.Descendants("divisions").First();
            foreach (var (measure, m) in part.Elements("measure").Select((measure, m) => (measure, m)))
            {
                var at = 0;
                var found = new List<int>();
                foreach (var element in measure.Elements())
                {
                    at += element.Name == "note" && element.Element("chord") is null ? (int)element.Element("duration")! : 0;
                    if (element.Name == "barline" && (string?)element.Attribute("location") == "middle")
                    {
                        Assert.Equal("dashed", element.Element("bar-style")!.Value);
                        found.Add(at / divisions);
                    }
                }

                Assert.Equal(ends, string.Join(' ', found));

                // One editor takes the dashed line for the end of the measure before, until the left line says otherwise.
                var lines = measure.Elements("barline").Where(b => (string?)b.Attribute("location") == "left").Select(b => b.Element("bar-style")!.Value);
                Assert.Equal(ends.Length > 0 && m > 0 ? ["regular"] : [], lines);
            }
        }
    }

    [Theory]
    [InlineData("adi", "svara", "Adi (4+2+2), S = C4, S R2 G3 M1 P D2 N3 S'")]
    [InlineData("4/4", "solfa", "do = C4, S R2 G3 M1 P D2 N3 S'")]
    [InlineData("free", "svara", "free rhythm, S = C4, S R2 G3 M1 P D2 N3 S'")]
    public void Tala_tonic_and_scale_stand_at_the_head_and_again_where_they_change(string meter, string syllables, string head)
    {
        var drill = Drills.Of() with { Meter = Meter.Parse(meter), Syllables = Syllables.Parse(syllables), Title = "Steps" };
        Assert.Equal([head], ReadScore.Of(drill.ToScore()).Words.Select(w => w.Value));
        var read = ReadScore.Of(Drills.Join([drill, drill, drill with { Tonic = Tonic.Parse("D4") }]));
        Assert.Equal([head, head.Replace("C4", "D4", StringComparison.Ordinal)], read.Words.Where(w => w.Attribute("font-weight") is null).Select(w => w.Value));
    }

    [Fact]
    public void A_long_title_ends_at_its_colon_and_is_kept_whole_as_a_field()
    {
        var title = "Mohanam: " + new string('x', 60);
        var read = ReadScore.Of((Drills.Of() with { Title = title }).ToScore());
        Assert.Equal("Mohanam", Assert.Single(read.All("work-title")).Value);
        Assert.Equal(title, Assert.Single(read.All("miscellaneous-field")).Value);
        Assert.Equal("One: two: Mohanam", Assert.Single(ReadScore.Of((Drills.Of() with { Title = $"One: two: {title}" }).ToScore()).All("work-title")).Value);
        Assert.Equal("Mohanam: short", Assert.Single(ReadScore.Of((Drills.Of() with { Title = "Mohanam: short" }).ToScore()).All("work-title")).Value);
    }

    [Fact]
    public void The_letters_of_other_octaves_have_their_dots()
    {
        var drill = Drills.Of(pattern: "[P_ N_ S S' R' S'' ]") with { Title = "Octaves" };
        Assert.Equal(["P\u0323", "\u1E46", "S", "\u1E60", "\u1E58", "S\u0308"], ReadScore.Of(drill.ToScore()).Sung().Select(n => n.Lyric));

        // As a further verse too.
        var vowel = (drill with { Syllables = Syllables.Vowel("a") }).ToScore();
        var notes = ReadScore.Of(vowel, new() { FurtherVerses = [MusicXmlVerse.Of(Syllables.SvaraLetters)] }).Notes.Where(n => !n.IsRest);
        Assert.Equal(["P\u0323", "\u1E46", "S", "\u1E60", "\u1E58", "S\u0308"], notes.Select(n => n.Verse(2)).OfType<string>());
        Assert.Equal(
            ["sol", "ti", "do", "do", "re", "do"], ReadScore.Of((drill with { Syllables = Syllables.Solfa }).ToScore()).Sung().Select(n => n.Lyric));
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

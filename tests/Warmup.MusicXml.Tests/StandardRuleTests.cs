using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Warmup.MusicXml.Tests;

/// <summary>
/// The rules for files that others open, one test each. Source: the W3C's MusicXML 4.0 documentation for what an element means; what
/// readers do with it was seen by opening files in them.
/// </summary>
public class StandardRuleTests
{
    private static readonly Score LineByLine = (Drills.Of() with { Delivery = Delivery.LineByLine }).ToScore();

    // The last of the seven lines fills its avartana and is held for one more.
    private static readonly Score WithHold = (Drills.Of() with { Delivery = Delivery.LineByLine with { FillBy = FillBy.Hold } }).ToScore();

    [Fact]
    public void The_file_is_UTF8_without_a_byte_order_mark_and_begins_with_declaration_doctype_and_version_4()
    {
        var lines = Encoding.UTF8.GetString(ReadScore.Bytes(LineByLine)).Split('\n');
        Assert.StartsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\"", lines[1], StringComparison.Ordinal);
        Assert.Equal("<score-partwise version=\"4.0\">", lines[2]);
    }

    [Fact]
    public void Every_note_and_rest_has_a_voice_and_a_type() => Assert.All(Everything("note"), n =>
    {
        Assert.Equal("1", n.Element("voice")?.Value);
        Assert.NotNull(n.Element("type"));
    });

    [Fact]
    public void Every_lyric_has_the_number_1() => Assert.All(Everything("lyric"), l =>
    {
        Assert.Equal("1", (string?)l.Attribute("number"));
        Assert.Equal("single", l.Element("syllabic")?.Value);
    });

    [Fact]
    public void Beams_are_written_by_akshara()
    {
        // Four sixteenths an akshara: two beams from the first to the fourth, and a new pair for the next akshara.
        var notes = ReadScore.Of((Drills.Of(pattern: "figure(1 2 3 4 5 6 7 8)") with { Speeds = [Speed.Third] }).ToScore()).Notes.Take(8);
        string[] beats = ["begin", "continue", "continue", "end", "begin", "continue", "continue", "end"];
        Assert.Equal(beats.Select(b => $"{b} {b}"), notes.Select(n => string.Join(' ', n.Beams)));
    }

    [Fact]
    public void A_lone_sixteenth_beside_a_dotted_eighth_takes_a_hook()
    {
        // S for a quarter of an akshara, then R held from there: a sixteenth and a dotted eighth in the first akshara.
        var first = ReadScore.Of((Drills.Of() with { Speeds = [Speed.Third], Delivery = Delivery.LineByLine }).ToScore()).Notes.Take(2).ToArray();
        Assert.Equal(["begin", "forward hook"], first[0].Beams);
        Assert.Equal(["end"], first[1].Beams);
    }

    [Fact]
    public void A_direction_has_one_direction_type() => Assert.All(Everything("direction"), d => Assert.Single(d.Elements("direction-type")));

    [Theory]
    [InlineData(60, 1, "60", "60")]
    [InlineData(145, 2, "73", "72.5")]
    [InlineData(301, 4, "75", "75.25")]
    [InlineData(301, 3, "100", "100.333333333333")]
    public void The_metronome_is_a_whole_number_and_the_exact_tempo_stands_in_the_same_direction(long tempo, long over, string shown, string exact)
    {
        var read = ReadScore.Of((Drills.Of() with { Tempo = new Rational(tempo, over) }).ToScore());
        var direction = Assert.Single(read.All("metronome")).Ancestors("direction").Single();
        Assert.Equal(shown, direction.Descendants("per-minute").Single().Value);
        Assert.Equal("quarter", direction.Descendants("beat-unit").Single().Value);
        Assert.Equal(exact, (string?)direction.Elements("sound").Single().Attribute("tempo"));
        Assert.Single(read.All("sound"));
    }

    [Theory]
    [InlineData(3, 1, 3, 2, "half")]
    [InlineData(3, 2, 3, 2, "quarter")]
    [InlineData(3, 3, 3, 2, "eighth")]
    [InlineData(3, 4, 3, 2, "16th")]
    [InlineData(5, 1, 5, 4, "quarter")]
    [InlineData(5, 3, 5, 4, "16th")]
    [InlineData(7, 2, 7, 4, "eighth")]
    [InlineData(7, 3, 7, 4, "16th")]
    [InlineData(9, 3, 9, 8, "32nd")]
    public void A_gati_is_written_as_tuplets_with_a_bracket(int gati, int kalam, int actual, int normal, string type)
    {
        // One line that fills the tuplet: as many notes as the gati, in the time of the power of two below it.
        var steps = string.Join(' ', Enumerable.Range(0, gati).Select(i => ((i % 7) + 1).ToString(CultureInfo.InvariantCulture)));
        var score = (Drills.Of(pattern: $"figure({steps}).take(1)") with { Speeds = [new Speed(kalam, gati)], Meter = Meter.Free }).ToScore();
        var notes = ReadScore.Of(score).Notes.ToArray();
        Assert.Equal(gati, notes.Length);
        Assert.All(notes, n =>
        {
            Assert.Equal((actual, normal, type), n.Modification);
            Assert.Equal(type, n.Type);
        });
        Assert.True(notes[0].TupletStart && notes[^1].TupletStop);
        Assert.All(notes[1..^1], n => Assert.False(n.TupletStart || n.TupletStop));
    }

    [Fact]
    public void Tuplets_are_never_nested()
    {
        // A held note and a breath of 29/24 akshara inside every gati: what could tempt a writer to put a tuplet into a tuplet.
        foreach (var gati in (int[])[3, 5, 7, 9])
        {
            var read = ReadScore.Of((Drills.Of() with { Speeds = [new Speed(3, gati)], Tempo = 72, Delivery = Delivery.LineByLine }).ToScore());
            Checks.TupletsAreWhole(read);
            Assert.All(read.All("tuplet"), t => Assert.Equal("1", (string?)t.Attribute("number")));
            Assert.All(read.Notes, n => Assert.InRange(n.Element.Descendants("tuplet").Count(), 0, 1));
        }
    }

    [Fact]
    public void A_part_has_one_divisions_and_it_is_the_least_that_divides_every_duration()
    {
        Assert.Equal(1, ReadScore.Of(WithHold).Divisions);
        Assert.Equal(2, ReadScore.Of(LineByLine).Divisions); // the last note of a line that fills its avartana: half of it, and half a breath
        Assert.Equal(4, ReadScore.Of((Drills.Of() with { Speeds = [Speed.Third] }).ToScore()).Divisions);
        Assert.Equal(3, ReadScore.Of((Drills.Of(pattern: "figure(1 2 3)") with { Speeds = [new Speed(3, 3)], Meter = Meter.Free }).ToScore()).Divisions);
    }

    [Fact]
    public void Measures_are_full_and_numbered_from_1()
    {
        foreach (var score in Samples.All.Values)
        {
            var read = ReadScore.Of(score);
            Checks.MeasuresAreFull(read);
            Assert.Equal(Enumerable.Range(1, read.Measures.Count), read.Measures.Select(m => (int)m.Element.Attribute("number")!));
        }
    }

    [Fact]
    public void Free_rhythm_has_a_hidden_time_signature_and_no_senza_misura()
    {
        var read = ReadScore.Of(Samples.All["free"]);
        Assert.Empty(read.All("senza-misura"));
        Assert.Equal("no", (string?)read.All("time").First().Attribute("print-object"));
        Assert.All(read.All("time"), t => Assert.Equal("no", (string?)t.Attribute("print-object")));
    }

    [Theory]
    [InlineData("figure(1 2 3)", 1, "3/4")]
    [InlineData("figure(1 2 3)", 2, "3/8")]
    [InlineData("figure(1 2 3)", 3, "3/16")]
    public void A_free_bar_is_counted_in_the_longest_value_that_fits(string pattern, int kalam, string time)
    {
        var read = ReadScore.Of((Drills.Of(pattern: $"{pattern}.take(1)") with { Speeds = [new Speed(kalam)], Meter = Meter.Free }).ToScore());
        var element = Assert.Single(read.All("time"));
        Assert.Equal(time, $"{element.Element("beats")!.Value}/{element.Element("beat-type")!.Value}");
    }

    [Fact]
    public void A_tala_is_a_time_signature_of_its_aksharas()
    {
        var time = Assert.Single(ReadScore.Of(LineByLine).All("time"));
        Assert.Equal("8", Assert.Single(time.Elements("beats")).Value);
        Assert.Equal("4", Assert.Single(time.Elements("beat-type")).Value);
        Assert.Null(time.Attribute("print-object"));
        Assert.Empty(time.Elements("interchangeable"));
    }

    [Fact]
    public void A_breath_is_a_comma_on_a_note_that_ends_early_and_a_rest_behind_it()
    {
        // Adi at 60: S, R held to 7.0, breath from 7.0 to 8.0.
        var notes = ReadScore.Of(LineByLine).Measures[0].Notes;
        Assert.Equal(["comma"], notes[^2].Element.Descendants("breath-mark").Select(b => b.Value));
        Assert.Equal(7, notes[^2].Onset + notes[^2].Length);
        Assert.True(notes[^1].IsRest);
        Assert.Equal(1, notes[^1].Length);
    }

    [Fact]
    public void Each_note_has_a_syllable_of_its_own()
    {
        var syllables = ReadScore.Of(LineByLine).Sung().Select(n => n.Lyric);
        Assert.Equal("S R S R G S R G M S R G M P S R G M P D S R G M P D N S R G M P D N \u1E60".Split(' '), syllables);
    }

    [Theory]
    [InlineData("C4", "G", "2", null)]
    [InlineData("F3", "G", "2", null)]
    [InlineData("E3", "G", "2", "-1")]
    [InlineData("C3", "G", "2", "-1")]
    [InlineData("A2", "G", "2", "-1")]
    [InlineData("C2", "F", "4", null)]
    public void The_clef_follows_the_voice_s_tonic_and_pitches_are_written_as_they_sound(string tonic, string sign, string line, string? change)
    {
        var read = ReadScore.Of(Drills.Of(tonic: tonic).ToScore());
        var clef = Assert.Single(read.All("clef"));
        Assert.Equal((sign, line, change), (clef.Element("sign")!.Value, clef.Element("line")!.Value, clef.Element("clef-octave-change")?.Value));
        Assert.Empty(read.All("transpose"));
        Assert.Equal(int.Parse(tonic[1..], CultureInfo.InvariantCulture), read.Notes.First().Pitch!.Value.Octave);
    }

    [Fact]
    public void Channel_and_program_count_from_1()
    {
        // General MIDI 1 numbers its programs from 1: 53 is choir aahs.
        var read = ReadScore.Of(LineByLine);
        Assert.Equal("1", Assert.Single(read.All("midi-channel")).Value);
        Assert.Equal("53", Assert.Single(read.All("midi-program")).Value);
    }

    [Fact]
    public void A_line_that_begins_a_measure_begins_a_system_but_the_first_does_not_ask_for_one()
    {
        // Line by line each of the seven lines begins a measure; the last takes two.
        var systems = ReadScore.Of(WithHold).Measures.Select(m => m.BeginsSystem);
        Assert.Equal([false, true, true, true, true, true, true, false], systems);
        Assert.DoesNotContain(ReadScore.Of(LineByLine, new() { HasNewSystems = false }).Measures, m => m.BeginsSystem);
    }

    [Fact]
    public void There_is_no_date_no_composer_and_equal_input_gives_equal_bytes()
    {
        var again = (Drills.Of() with { Delivery = Delivery.LineByLine }).ToScore();
        Assert.Equal(ReadScore.Bytes(LineByLine), ReadScore.Bytes(again));
        Assert.Empty(ReadScore.Of(LineByLine).All("encoding-date"));
        Assert.Empty(ReadScore.Of(LineByLine).All("creator"));
    }

    [Fact]
    public void A_held_last_note_has_a_fermata_in_free_rhythm_only()
    {
        Assert.Equal(7, ReadScore.Of(Samples.All["free"]).Sung().Count(n => n.Fermata));
        Assert.DoesNotContain(ReadScore.Of(LineByLine).Notes, n => n.Fermata);
    }

    [Fact]
    public void A_tonic_in_Hz_is_told_in_words_and_its_offset_in_a_field()
    {
        // 200 Hz against G3 = 195.9977 Hz (equal temperament, A4 = 440 Hz): 1200 log2(200 / 195.9977) = 34.995 cents.
        var read = ReadScore.Of(Drills.Of(tonic: "200Hz").ToScore());
        Assert.Equal("Adi (4+2+2), S = G3 +35.0 cents (200.00 Hz), S R2 G3 M1 P D2 N3 S'", Assert.Single(read.Words).Value);
        var field = Assert.Single(read.All("miscellaneous-field"), f => (string?)f.Attribute("name") != "title");
        Assert.Equal("tonic-offset-cents-1", (string?)field.Attribute("name"));
        Assert.Equal(34.995, double.Parse(field.Value, CultureInfo.InvariantCulture), 0.001);
        Assert.Empty(ReadScore.Of((Drills.Of() with { Title = "Steps" }).ToScore()).All("miscellaneous"));
    }

    [Theory]
    [InlineData(MusicXmlPaper.A4, "1200", "1697.14")]
    [InlineData(MusicXmlPaper.Letter, "1233.71", "1596.57")]
    public void The_page_is_given_in_tenths_of_a_staff_space(MusicXmlPaper paper, string width, string height)
    {
        // 210 x 297 mm (ISO 216) and 215.9 x 279.4 mm, times 40 tenths over 7 mm.
        var read = ReadScore.Of(LineByLine, new() { Paper = paper });
        Assert.Equal((width, height), (Assert.Single(read.All("page-width")).Value, Assert.Single(read.All("page-height")).Value));
        Assert.Empty(ReadScore.Of(LineByLine, new() { Paper = MusicXmlPaper.Unspecified }).All("defaults"));
    }

    private static IEnumerable<XElement> Everything(string name) => Samples.All.Values.SelectMany(s => ReadScore.Of(s).All(name));
}

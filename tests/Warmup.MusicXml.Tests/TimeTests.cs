using System.Globalization;
using System.Xml.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.MusicXml.Tests;

/// <summary>
/// Time in the file, read back by the tests' own reader and held to the W3C's schema. Signatures follow from the names of the meters, the
/// lengths from the rules' formula for gati and kalam.
/// </summary>
public class TimeTests
{
    private static readonly int[] Gatis = [3, 4, 5, 7, 9];

    public static TheoryData<string> Talas => [.. Meter.Talas.ConvertAll(m => m.Name), .. Meter.Chapus.ConvertAll(m => m.Name)];

    public static TheoryData<string> Signatures => ["6/8", "9/8", "12/8", "15/8", "6/4", "9/4", "6/2", "12/16", "7/8", "2+2+3/8", "3+3+2/8", "3/2", "5/4", "2/2", "5/16", "1/1", "4/1"];

    /// <summary>Every tala, gati and kalam, with and without breaths: each measure is as long as the meter, and the file is valid.</summary>
    [Theory]
    [MemberData(nameof(Talas), DisableDiscoveryEnumeration = true)]
    public void Every_tala_in_every_gati_and_kalam_fills_its_measures(string name) => EverySpeed(Meter.Parse(name), 4);

    /// <summary>The same for time signatures; the fourth speed of short beats would need notes shorter than a 128th.</summary>
    [Theory]
    [MemberData(nameof(Signatures))]
    public void Every_time_signature_in_every_gati_and_kalam_fills_its_measures(string name) => EverySpeed(Meter.Parse(name), 3);

    // A usual run tries a quarter of the ways for a meter, which quarter depends on its beats; the whole check all.
    private static void EverySpeed(Meter meter, int kalams)
    {
        Schema.SkipWhereMissing();
        var ways =
            from gati in Gatis
            from kalam in Enumerable.Range(1, kalams)
            from delivery in (Delivery[])[Delivery.Continuous, Delivery.LineByLine, Delivery.Continuous with { Fill = Fill.Anga, FillBy = FillBy.Rest }]
            select (Speed: new Speed(kalam, gati), Delivery: delivery);
        foreach (var (speed, delivery) in WholeCheck.OneIn(4, ways, meter.Beats))
        {
            var score = (Drills.Of() with { Meter = meter, Speeds = [speed], Delivery = delivery }).ToScore();
            var bytes = ReadScore.Bytes(score);
            var read = ReadScore.Of(bytes);
            var time = Assert.Single(read.All("time"));
            Assert.Equal(
                (meter.Gestures.IsEmpty ? string.Join('+', meter.SignatureGroups) : meter.Beats.ToString(CultureInfo.InvariantCulture), meter.SignatureType.ToString(CultureInfo.InvariantCulture)),
                (time.Element("beats")!.Value, time.Element("beat-type")!.Value));
            Assert.All(read.Measures, m => Assert.Equal(meter.Beats * meter.BeatValue * 4, m.Length));
            Holds(score, read);
            if (delivery.IsLineByLine)
            {
                Assert.Empty(Schema.Errors(bytes));
            }
        }
    }

    private static void Holds(Score score, ReadScore read)
    {
        Checks.MeasuresAreFull(read);
        Checks.ValuesAgree(read);
        Checks.TupletsAreWhole(read);
        Checks.BeamsAreWhole(read);
        Checks.ReadsBack(score, read);
    }

    [Theory]
    [InlineData(4, 1, 0, 0)]
    [InlineData(3, 3, 3, 2)]
    [InlineData(5, 3, 5, 4)]
    [InlineData(7, 3, 7, 4)]
    [InlineData(9, 3, 9, 8)]
    [InlineData(3, 4, 3, 2)] // six an akshara: two tuplets of three
    public void The_tuplets_are_those_of_the_gati(int gati, int kalam, int actual, int normal)
    {
        // The first line has two notes only, which no tuplet needs to fill: lines of nine.
        var read = ReadScore.Of((Drills.Of(pattern: "figure(1 2 3 4 5 4 3 2 1)") with { Speeds = [new Speed(kalam, gati)] }).ToScore());
        var first = read.Notes.First(n => !n.IsRest);
        Assert.Equal(actual == 0 ? null : (actual, normal), first.Modification is { } m ? (m.Actual, m.Normal) : ((int, int)?)null);
    }

    [Fact]
    public void Speeds_and_gatis_change_inside_a_section_and_each_is_announced()
    {
        var drill = Drills.Of(pattern: "figure(1 2 3 4)") with { Speeds = [Speed.First, Speed.Second, new(3, 3), new(3, 5)], Delivery = Delivery.Continuous with { Fill = Fill.Anga } };
        var read = ReadScore.Of(drill.ToScore());
        Holds(drill.ToScore(), read);
        Assert.EndsWith(", speed 1", read.Words.First().Value, StringComparison.Ordinal);
        Assert.Equal(["speed 2", "tisra nadai, three to the akshara", "khanda nadai, five to the akshara"], read.Words.Skip(1).Select(w => w.Value));
        Assert.DoesNotContain(ReadScore.Of(Drills.Of().ToScore()).All("words"), w => w.Value.StartsWith("speed", StringComparison.Ordinal));
    }

    [Fact]
    public void A_ramp_has_a_tempo_mark_right_before_the_note_where_each_time_through_begins()
    {
        // 35 notes in Adi: the second time begins with the fourth note of the fifth measure.
        var read = ReadScore.Of((Drills.Of() with { Tempo = new TempoRamp(60, new Rational(25, 2), 85) }).ToScore(), new() { LineMarks = MusicXmlLineMarks.None });
        Assert.Equal(["60", "73", "85"], read.All("per-minute").Select(p => p.Value));
        Assert.Equal(["60", "72.5", "85"], read.All("sound").Select(s => (string?)s.Attribute("tempo")));
        var fifth = read.Measures[4].Element.Elements().Where(e => e.Name.LocalName is "note" or "direction").Select(e => e.Name.LocalName);
        Assert.Equal("note note note direction note note note note note", string.Join(' ', fifth));
    }

    [Fact]
    public void A_compound_tempo_counts_the_dotted_beat()
    {
        var read = ReadScore.Of((Drills.Of() with { Meter = Meter.Parse("6/8"), Tempo = 60 }).ToScore());
        var metronome = Assert.Single(read.All("metronome"));
        Assert.Equal(["beat-unit", "beat-unit-dot", "per-minute"], metronome.Elements().Select(e => e.Name.LocalName));
        Assert.Equal(("quarter", "60"), (metronome.Element("beat-unit")!.Value, metronome.Element("per-minute")!.Value));
        Assert.Equal("90", (string?)Assert.Single(read.All("sound")).Attribute("tempo"));
    }

    [Theory]
    [InlineData(1, 4, "quarter.")] // one note a dotted beat
    [InlineData(3, 3, "eighth")] // three notes
    [InlineData(4, 3, "16th")] // six notes
    [InlineData(2, 4, "eighth.")] // two notes
    public void A_compound_beat_is_divided_as_written_music_has_it(int kalam, int gati, string value)
    {
        var read = ReadScore.Of((Drills.Of(pattern: "figure(1 2 3 4 5 6)") with { Meter = Meter.Parse("6/8"), Speeds = [new Speed(kalam, gati)] }).ToScore());
        Assert.All(read.Notes.Where(n => !n.IsRest), n => Assert.Equal(value, n.Type + string.Concat(n.Element.Elements("dot").Select(_ => "."))));
        Assert.Empty(read.All("tuplet"));
    }

    [Fact]
    public void A_count_in_is_measures_of_rest_that_say_so()
    {
        var read = ReadScore.Of((Drills.Of() with { CountIn = 1 }).ToScore());
        Assert.True(read.Measures[0].Notes.TrueForAll(n => n.IsRest));
        Assert.Contains(read.Measures[0].Element.Descendants("words"), w => w.Value == "count-in");
        Assert.Equal(8, read.Sung()[0].Onset);
    }

    [Theory]
    [InlineData("adi", "clap little ring middle clap wave clap wave", "0 4 6")]
    [InlineData("misra-jati jhampa", "clap little ring middle index thumb little clap clap wave", "0 7 8")]
    [InlineData("khanda chapu", "clap - clap clap -", "0 2")]
    [InlineData("7/8", "1 2 3 4 5 6 7", "0")]
    [InlineData("2+2+3/8", "1 2 3 4 5 6 7", "0 2 4")]
    [InlineData("6/8", "1 2", "0")]
    public void The_part_of_the_beat_has_a_stroke_a_beat_the_gestures_and_the_accents(string name, string words, string accents)
    {
        var meter = Meter.Parse(name);
        var score = (Drills.Of() with { Meter = meter, CountIn = 1, Speeds = [new Speed(2, 3)], Delivery = Delivery.LineByLine }).ToScore();
        foreach (var beat in (MusicXmlBeat[])[MusicXmlBeat.Strokes, MusicXmlBeat.Gestures])
        {
            var bytes = ReadScore.Bytes(score, new() { Beat = beat });
            Schema.SkipWhereMissing();
            Assert.Empty(Schema.Errors(bytes));
            Holds(score, ReadScore.Of(bytes));
            var part = ReadScore.Of(bytes).Document.Root!.Elements("part").Last();
            Assert.Equal("P2", (string?)part.Attribute("id"));
            Assert.Equal(score.Sections[0].Measures.Count, part.Elements("measure").Count());
            var divisions = int.Parse(Assert.Single(part.Descendants("divisions")).Value, CultureInfo.InvariantCulture);
            foreach (var measure in part.Elements("measure"))
            {
                var notes = measure.Elements("note").Select(n => ReadNote.Of(n, 0, divisions)).ToList();
                Assert.All(notes, n => Assert.Equal((4 * meter.BeatValue, 4 * meter.BeatValue), (n.Length, n.Written)));
                Assert.Equal(beat == MusicXmlBeat.Gestures ? words : string.Empty, string.Join(' ', notes.Select(n => n.Lyric).OfType<string>()));
                Assert.Equal(accents, string.Join(' ', notes.Index().Where(n => n.Item.Element.Descendants("accent").Any()).Select(n => n.Index)));
            }
        }
    }

    [Fact]
    public void Free_bars_rest_in_the_part_of_the_beat()
    {
        var score = Drills.Join([Drills.Of(), Drills.Of() with { Meter = Meter.Free, Speeds = [Speed.Third], Delivery = Delivery.LineByLine }]);
        var bytes = ReadScore.Bytes(score, new() { Beat = MusicXmlBeat.Gestures });
        Schema.SkipWhereMissing();
        Assert.Empty(Schema.Errors(bytes));
        var part = ReadScore.Of(bytes).Document.Root!.Elements("part").Last();
        var divisions = int.Parse(part.Descendants("divisions").Single().Value, CultureInfo.InvariantCulture);
        var free = score.Sections[1].Measures.ConvertAll(m => m.Length);
        Assert.Equal(free, part.Elements("measure").TakeLast(free.Count).Select(m => ReadNote.Of(m.Elements("note").Single(), 0, divisions).Length));
    }

    [Fact]
    public void A_measure_can_be_an_anga_with_a_double_bar_behind_the_avartana()
    {
        var score = (Drills.Of() with { Meter = Meter.Parse("misra-jati jhampa"), Delivery = Delivery.LineByLine }).ToScore();
        var bytes = ReadScore.Bytes(score, new() { Measure = MusicXmlMeasure.Anga });
        Schema.SkipWhereMissing();
        Assert.Empty(Schema.Errors(bytes));
        var read = ReadScore.Of(bytes);
        Assert.Equal(3 * score.Sections[0].Measures.Count, read.Measures.Count);
        Assert.Equal([7, 1, 2, 7, 1, 2], read.Measures.Take(6).Select(m => m.Length));
        Checks.MeasuresAreFull(read);
        Checks.ValuesAgree(read);
        Assert.Equal(ReadScore.Of(score).Sung(), read.Sung());
        Assert.Equal(
            [null, null, "light-light", null, null, "light-light"],
            read.Measures.Take(6).Select(m => m.Element.Element("barline")?.Element("bar-style")?.Value));
        Assert.Equal("light-heavy", read.Measures[^1].Element.Element("barline")?.Element("bar-style")?.Value);
        Assert.Equal([true, false, false], read.Measures.Skip(3).Take(3).Select(m => m.BeginsSystem));
    }

    /// <summary>Whatever the meter, the speeds one after the other, the delivery and the ramp, as long as lines begin on beats.</summary>
    [Property(MaxTest = 150)]
    public Property Drills_in_time_are_full_whole_and_read_back() => Prop.ForAll(
        (from meter in Gen.Elements<Meter>([.. Meter.Talas, .. Meter.Chapus, Meter.Parse("12/8"), Meter.Parse("6/4"), Meter.Parse("2+2+3/8"), Meter.Parse("5/2")])
         from count in Gen.Choose(1, 3)
         from speeds in (from kalam in Gen.Choose(1, 3) from gati in Gen.Elements(Gatis) select new Speed(kalam, gati)).ArrayOf(count)
         from lineByLine in Gen.Elements(true, false)
         from fill in Gen.Elements(Fill.Anga, Fill.Avartana)
         from fillBy in Gen.Elements(FillBy.Room, FillBy.Hold, FillBy.Rest)
         from step in Gen.Choose(1, 30)
         from rounds in Gen.Choose(0, 2)
         from countIn in Gen.Choose(0, 1)
         from anga in Gen.Elements(true, false)
         select (Anga: anga, Drill: Drills.Of(pattern: "ladder.take(3)") with
         {
             Meter = meter,
             Speeds = speeds.ToValueList(),
             Delivery = (lineByLine ? Delivery.LineByLine : Delivery.Continuous) with { Fill = fill, FillBy = fillBy },
             Tempo = rounds == 0 ? TempoRamp.Constant(60) : new TempoRamp(60, step, 60 + (rounds * step)),
             CountIn = countIn,
         })).ToArbitrary(),
        sample =>
        {
            var score = sample.Drill.ToScore();
            Holds(score, ReadScore.Of(score));
            var read = ReadScore.Of(score, new() { Measure = sample.Anga ? MusicXmlMeasure.Anga : MusicXmlMeasure.Avartana, Beat = MusicXmlBeat.Gestures });
            Checks.MeasuresAreFull(read);
            Checks.ValuesAgree(read);
            Checks.TupletsAreWhole(read);
            Assert.Equal(score.Sections[0].TempoChanges.Count + 1, read.All("per-minute").Count());
        });

    [Fact]
    public void Lines_of_many_gatis_that_run_on_are_refused_where_no_tuplet_can_write_them()
    {
        var drill = Drills.Of(pattern: "ladder.take(3)") with { Speeds = [new(3, 7), new(3, 9), new(3, 5)] };
        var refused = Assert.Throws<ExportException>(() => ReadScore.Bytes(drill.ToScore()));
        Assert.Contains("aksharas needs", refused.Message, StringComparison.Ordinal);
    }
}

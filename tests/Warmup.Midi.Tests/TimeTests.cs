using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using NAudio.Midi;

namespace Warmup.Midi.Tests;

/// <summary>
/// Time as NAudio.Midi, an independent reader, finds it: signatures, tempi, clicks and note lengths. The expectations come from the names
/// of the meters, the rules' formula for gati and kalam, and the tempo's definition (aksharas a minute).
/// </summary>
public class TimeTests
{
    public static TheoryData<string> Meters =>
    [
        .. Meter.Talas.ConvertAll(m => m.Name), .. Meter.Chapus.ConvertAll(m => m.Name), "6/8", "9/8", "12/16", "7/8", "2+2+3/8", "3/2", "6/4", "5/32", "1/1",
    ];

    /// <summary>Every tala, gati and kalam: the measures are as long as the signature says, and each note one unit of its speed.</summary>
    [Theory]
    [MemberData(nameof(Meters), DisableDiscoveryEnumeration = true)]
    public void Measures_and_notes_have_the_lengths_of_meter_and_speed(string name)
    {
        var meter = Meter.Parse(name);
        foreach (var gati in (int[])[3, 4, 5, 7, 9])
        {
            for (var kalam = 1; kalam <= 4; kalam++)
            {
                var heard = Heard.From((Files.Drill() with { Meter = meter, Speeds = [new Speed(kalam, gati)] }).ToScore());
                var signature = Assert.Single(heard.Events.OfType<TimeSignatureEvent>());
                var quarters = new Rational(signature.Numerator * 4, 1 << signature.Denominator);
                Assert.Equal(meter.Beats * meter.BeatValue * 4, quarters);
                Assert.Equal(meter.BeatValue * 96, signature.TicksInMetronomeClick);

                // The last event, the end of the first track, lies on a bar line.
                var bar = quarters * heard.TicksPerQuarter;
                Assert.True((heard.File.Events[0][^1].AbsoluteTime / bar).IsInteger);

                var unit = meter.BeatValue * 4 * heard.TicksPerQuarter * new Rational(4, gati * (1 << (kalam - 1)));
                Assert.Equal(35, heard.Voice.Length);
                Assert.All(heard.Voice.Index(), v => Assert.Equal((unit * v.Index, unit), (v.Item.Tick, (Rational)v.Item.Length)));
            }
        }
    }

    [Theory]
    [InlineData("adi", 60, 1_000_000)]
    [InlineData("6/8", 60, 666_667)] // 60 dotted quarters are 90 quarters
    [InlineData("7/8", 60, 2_000_000)]
    [InlineData("3/2", 60, 500_000)]
    public void The_tempo_counts_the_beat_that_the_meter_names(string meter, int tempo, int microseconds)
    {
        var heard = Heard.From((Files.Drill() with { Meter = Meter.Parse(meter), Tempo = tempo }).ToScore());
        Assert.Equal(microseconds, Assert.Single(heard.Events.OfType<TempoEvent>()).MicrosecondsPerQuarterNote);
    }

    [Fact]
    public void A_ramp_changes_the_tempo_where_each_time_through_begins()
    {
        // 35 notes: the second time begins at akshara 35, inside the fifth avartana.
        var heard = Heard.From((Files.Drill() with { Tempo = new TempoRamp(60, 15, 90), CountIn = 1 }).ToScore());
        var tempi = heard.Events.OfType<TempoEvent>().Select(t => (t.AbsoluteTime / heard.TicksPerQuarter, t.MicrosecondsPerQuarterNote));
        Assert.Equal([(0L, 1_000_000), (43L, 800_000), (78L, 666_667)], tempi);
    }

    [Theory]
    [InlineData("adi", "S..." + "a." + "a.")]
    [InlineData("khanda chapu", "S." + "a..")]
    [InlineData("6/8", "S.")]
    [InlineData("2+2+3/8", "S." + "a." + "a..")]
    public void A_count_in_clicks_each_beat_with_an_accent_on_each_anga(string name, string beats)
    {
        var score = (Files.Drill() with { Meter = Meter.Parse(name), CountIn = 2 }).ToScore();
        var heard = Heard.From(score);
        Assert.Equal(beats + beats, Clicks(heard));
        var beat = score.Sections[0].Meter.BeatValue * 4 * heard.TicksPerQuarter;
        Assert.All(heard.Clicks.Index(), c => Assert.Equal(beat * c.Index, c.Item.Tick));
        Assert.Equal(beat * heard.Clicks.Length, heard.Voice[0].Tick);
        Assert.Contains("Beat", heard.Texts(MetaEventType.SequenceTrackName));
        Assert.Empty(Heard.From(score, new MidiOptions { Click = MidiClick.None }).Clicks);
    }

    [Fact]
    public void Clicks_throughout_go_on_to_the_last_bar_line_and_into_the_next_section()
    {
        // 2 + 3 + 4 notes are two avartanas of Adi, then 2 aksharas in one of 6.
        var score = Files.Joined(
            Files.Drill(pattern: "ladder.take(3)"),
            Files.Drill(pattern: "ladder.take(3)") with { Meter = Meter.Free },
            Files.Drill(pattern: "ladder.take(1)") with { Meter = Meter.Parse("rupaka") });
        foreach (var single in (bool[])[true, false])
        {
            var heard = Heard.From(score, new MidiOptions { Click = MidiClick.Throughout, IsSingleTrack = single });
            Assert.Equal("S...a.a.S...a.a.S.a...", Clicks(heard));
            Assert.Equal(16 + 9, heard.Clicks[16].Tick / heard.TicksPerQuarter);
        }

        Assert.Empty(Heard.From(score).Clicks);
        Assert.DoesNotContain("Beat", Heard.From(score).Texts(MetaEventType.SequenceTrackName));
    }

    /// <summary>General MIDI's percussion: 76 is the high wood block, 77 the low one; which beat is louder is common practice.</summary>
    [Fact]
    public void Clicks_are_wood_blocks_the_first_of_an_avartana_the_loudest_and_each_ends_before_the_next()
    {
        foreach (var meter in (string[])["adi", "6/8", "5/32"])
        {
            var score = (Files.Drill() with { Meter = Meter.Parse(meter) }).ToScore();
            var heard = Heard.From(score, new MidiOptions { Click = MidiClick.Throughout });
            var loudness = heard.Clicks.Zip(Enumerable.Range(0, heard.Clicks.Length), (c, b) => (Accent: score.Sections[0].Meter.AccentOf(b), c.Key, c.Velocity)).ToList();
            Assert.All(loudness, c => Assert.Equal(c.Accent == BeatAccent.None ? 77 : 76, c.Key));
            foreach (var one in loudness)
            {
                Assert.All(loudness, other => Assert.Equal(one.Accent.CompareTo(other.Accent), one.Velocity.CompareTo(other.Velocity)));
            }

            var beat = (score.Sections[0].Meter.BeatValue * 4 * heard.TicksPerQuarter).Floor();
            Assert.All(heard.Clicks, c => Assert.InRange(c.Length, 1, beat - 1));
        }
    }

    [Fact]
    public void Each_of_several_sections_has_its_title_as_a_text_and_one_alone_has_none()
    {
        var two = Files.Joined(Files.Drill() with { Title = "first" }, Files.Drill() with { Title = "second", Tempo = 90 });
        var texts = RawFile.Of(two).Tracks[0].Where(e => e.IsMeta(0x01)).Select(e => (e.Tick / 480, e.Text));
        Assert.Equal([(0L, "first"), (40L, "second")], texts); // 35 aksharas are five avartanas of Adi
        Assert.DoesNotContain(RawFile.Of(Files.Drill().ToScore()).Tracks[0], e => e.IsMeta(0x01));
        Assert.Equal(["first"], RawFile.Of(two).Tracks[0].Where(e => e.IsMeta(0x03)).Select(e => e.Text));
    }

    /// <summary>Drills in several speeds with a ramp: the file's own tempo map gives the score's seconds, but for the rounding of each tempo.</summary>
    [Property(MaxTest = 100)]
    public Property The_tempo_map_gives_the_scores_seconds() => Prop.ForAll(
        (from start in Gen.Choose(40, 80)
         from step in Gen.Choose(1, 30)
         from span in Gen.Choose(0, 60)
         from meter in Gen.Elements("adi", "misra chapu", "6/8", "7/8")
         from countIn in Gen.Choose(0, 1)
         from gati in Gen.Elements(3, 4, 5)
         select Files.Drill(pattern: "ladder.take(4)") with
         {
             Tempo = new TempoRamp(start, step, start + span),
             Meter = Meter.Parse(meter),
             CountIn = countIn,
             Speeds = SpeedSequences.ThreeSpeeds(gati),
         }).ToArbitrary(),
        drill =>
        {
            var score = drill.ToScore();
            var heard = Heard.From(score);
            var tempi = heard.Events.OfType<TempoEvent>().OrderBy(t => t.AbsoluteTime).ToList();
            foreach (var (note, sung) in score.Sections[0].Notes.Zip(heard.Voice))
            {
                var seconds = 0.0;
                for (var i = 0; i < tempi.Count && tempi[i].AbsoluteTime < sung.Tick; i++)
                {
                    var end = i + 1 < tempi.Count ? Math.Min(tempi[i + 1].AbsoluteTime, sung.Tick) : sung.Tick;
                    seconds += (double)(end - tempi[i].AbsoluteTime) / heard.TicksPerQuarter * tempi[i].MicrosecondsPerQuarterNote / 1e6;
                }

                Assert.Equal(score.Sections[0].SecondsAt(note.Onset).ToDouble(), seconds, 1e-6 * (1 + sung.Tick));
            }
        });

    private static string Clicks(Heard heard) => string.Concat(heard.Clicks.Select(c => c.Key == 77 ? '.' : c.Velocity > 100 ? 'S' : 'a'));
}

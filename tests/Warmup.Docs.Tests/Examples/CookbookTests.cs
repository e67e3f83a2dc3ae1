using System.Xml.Linq;
using NAudio.Midi;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Plans;
using Warmup.Sheets;
using Warmup.Testing;

namespace Warmup.Docs.Tests.Examples;

/// <summary>The cookbook's recipes, run; what they must come to is counted by hand from the rules, or read with another reader.</summary>
public sealed class CookbookTests : TemporaryFolder
{
    [Fact]
    public void Three_levels_in_one_file()
    {
        #region three levels
        var plain = new Drill
        {
            Scale = Catalogue.Default.Read("Mohanam"),
            Pattern = Pattern.Ladder,
            Tonic = Tonic.Parse("G3"),
            Delivery = Delivery.LineByLine,
            Title = "1: up the scale",
        };
        Score[] levels =
        [
            plain.ToScore(),
            (plain with { Pattern = Pattern.Ladder.Reversed(), Title = "2: reversed" }).ToScore(),
            (plain with { Pattern = Pattern.Ladder.Ends(), Title = "3: first and last" }).ToScore(),
        ];
        var all = Score.Join("Mohanam, three levels", levels);
        new MusicXmlFormat().Save(all, "three-levels.musicxml");
        #endregion

        // 20 + 20 + 10 notes; a held one is tied and written more than once.
        var written = XDocument.Load("three-levels.musicxml");
        var begun = written.Descendants("note").Where(n => n.Element("pitch") is not null && n.Elements("tie").All(t => (string?)t.Attribute("type") != "stop"));
        Assert.Equal(50, begun.Count());
        Assert.Contains(written.Descendants("words"), w => w.Value.Contains("2: reversed", StringComparison.Ordinal));
    }

    [Fact]
    public void A_five_note_scale_in_Adi()
    {
        #region adi
        var drill = new Drill
        {
            Scale = Catalogue.Default.Read("Hamsadhwani"),
            Pattern = Pattern.Ladder,
            Tonic = Tonic.Parse("5.5"),
            Meter = Meter.Adi,
            Delivery = Delivery.LineByLine,
            CountIn = 1,
        };
        var score = drill.ToScore();
        new TextSheetFormat().Save(score, "hamsadhwani.txt");
        var lines = string.Join(", ", score.Sections[0].Lines.ConvertAll(line => $"{line.NoteCount} notes from akshara {line.Onset}"));
        Console.WriteLine(lines);
        #endregion

        // Each line takes an avartana of eight, after one avartana of count-in.
        Assert.Equal("2 notes from akshara 8, 3 notes from akshara 16, 4 notes from akshara 24, 5 notes from akshara 32, 6 notes from akshara 40", lines);
        Assert.Contains("Hamsadhwani", File.ReadAllText("hamsadhwani.txt"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_tonic_for_a_class()
    {
        #region tonic
        ValueList<Singer> singers =
        [
            new("Wren", new NoteName('G', 0, 3), new NoteName('E', 0, 5), sustainedSeconds: 18),
            new("Otter", new NoteName('C', 0, 3), new NoteName('G', 0, 4), 24, Experience.Intermediate),
        ];
        var drill = new Drill { Scale = Catalogue.Default.Read("Mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4") };
        var best = drill.ToScore().RankTonics(singers)[0];
        Console.WriteLine(best);
        var fitting = drill with { Tonic = Tonic.FromNote(best.Tonic) };
        #endregion

        // The drill spans an octave. It has to fit into G3-E5 in one octave and C3-G4 in another: any tonic from G to C does for both.
        Assert.True(best.IsFitForAll);
        Assert.Contains(((best.Tonic.Midi % 12) + 5) % 12, Enumerable.Range(0, 6));
        Assert.Equal(best.Tonic.Midi, fitting.Tonic.Midi);
    }

    [Fact]
    public void Breaths_where_they_are_needed()
    {
        #region breaths
        var robin = new Singer("Robin", new NoteName('G', 0, 3), new NoteName('D', 0, 5), sustainedSeconds: 12);
        var score = new Drill
        {
            Scale = Catalogue.Default.Read("Mohanam"),
            Pattern = Pattern.Ladder.Repeat(2),
            Tonic = Tonic.Parse("G3"),
        }.ToScore();
        if (BreathPlan.TryMake(score, BreathNeed.Of(robin), out var plan, out var refusal))
        {
            new MusicXmlFormat().Save(score.WithBreaths(plan!), "robin.musicxml");
        }
        else
        {
            Console.WriteLine(refusal.Describe());
        }
        #endregion

        // 40 notes a second each run on for 40 s; a beginner's capacity is 0.4 of 12 s, and the last span may be as long as the others.
        Assert.NotEmpty(score.Check(robin));
        Assert.Empty(score.WithBreaths(plan!).Check(robin));
        Assert.True(plan!.Breaths.Count >= (int)Math.Ceiling(40 / 4.8) - 1);
        Assert.Equal(plan.Breaths.Count, XDocument.Load("robin.musicxml").Descendants("breath-mark").Count());
    }

    [Fact]
    public void A_ramp_over_the_repetitions()
    {
        #region ramp
        var score = new Drill
        {
            Scale = Catalogue.Default.Read("15"),
            Pattern = Pattern.Figure(0, 1, 2),
            Tonic = Tonic.Parse("D4"),
            Tempo = new TempoRamp(start: 60, step: 6, ceiling: 84),
        }.ToScore();
        new MidiFormat().Save(score, "ramp.mid");
        #endregion

        // 60, 66, 72, 78, 84; in MIDI microseconds a quarter note (60,000,000 / tempo).
        var tempi = new MidiFile("ramp.mid", strictChecking: true).Events[0].OfType<TempoEvent>().Select(t => t.MicrosecondsPerQuarterNote);
        Assert.Equal([1_000_000, 909_091, 833_333, 769_231, 714_286], tempi);
    }

    [Fact]
    public void Three_speeds_without_a_break()
    {
        #region speeds
        var score = new Drill
        {
            Scale = Catalogue.Default.Read("15"),
            Pattern = Repertoire.Find("sarali-1")!.Pattern,
            Tonic = Tonic.Parse("C4"),
            Speeds = SpeedSequences.ThreeSpeeds(),
        }.ToScore();
        Console.WriteLine($"{score.Sections[0].End} aksharas");
        new MidiFormat(new MidiOptions { Click = MidiClick.Throughout }).Save(score, "three-speeds.mid");
        #endregion

        // Sixteen notes at 1, 2 and 4 an akshara: 16 + 8 + 4.
        Assert.Equal(28, score.Sections[0].End);
        Assert.Equal(48, score.NoteCount);
    }

    [Fact]
    public void Just_intonation_as_sound_and_as_a_file()
    {
        #region just
        var tuning = Tuning.JustWith(d2: new Rational(27, 16));
        var score = new Drill
        {
            Scale = Catalogue.Default.Read("Mohanam"),
            Pattern = Pattern.Run.UpDown(),
            Tonic = Tonic.FromHz(207.5),
            Tuning = tuning,
        }.ToScore();
        new MidiFormat().Save(score, "just.mid");
        File.WriteAllText("just.scl", ScalaFile.FromScale(score.Sections[0].Scale, tuning).ToText());
        #endregion

        Assert.Contains(score.Sections[0].Pitches, p => Math.Abs(p.Hz - (207.5 * 27 / 16)) < 1e-9);
        Assert.True(ScalaFile.TryParse(File.ReadAllText("just.scl"), out var read, out _));
        Assert.Contains(read!.Pitches, p => Math.Abs(p.Cents - (1200 * Math.Log2(27.0 / 16))) < 1e-9);
    }

    [Fact]
    public void A_scale_of_ones_own()
    {
        #region own scale
        if (!Scale.TryParse("S R2 M1 P D2 S' / S' D2 P M1 G2 R2 S", out var notes, out var error))
        {
            Console.WriteLine(error); // the column, and what would fix it
        }

        var mine = new Scale("Lantern", notes!.Ascent, notes.Descent);
        var catalogue = Catalogue.Default.With(mine);
        var lines = Pattern.Ladder.UpDown().Expand(catalogue.Read("lantern")).ToLetters();
        Console.WriteLine(lines);
        #endregion

        Assert.Null(error);
        Assert.StartsWith("S R / S R M / S R M P / S R M P D / S R M P D S' / S' D / S' D P", lines, StringComparison.Ordinal);
        Assert.EndsWith("S' D P M G R S", lines, StringComparison.Ordinal);
    }

    [Fact]
    public void A_law_over_a_space_of_patterns()
    {
        #region law
        var words = PatternVocabulary.Parse("ladder run .reversed .ends .each-note(2)");
        var space = new PatternEnumeration(words, largestSize: 4);
        var bilahari = Catalogue.Default.Read("Bilahari");
        var exceptions = space.Range(0, space.Count).Where(p =>
            p.Reversed().Reversed().Expand(bilahari).ToTones() != p.Expand(bilahari).ToTones()).ToList();
        Console.WriteLine($"reversed undoes itself in all but {exceptions.Count} of {space.Count} patterns");

        var turned = PatternRule.Of("reversed", p => p.Reversed());
        LawSuite.Check(turned, PatternLaws.UndoesItself, PatternLaws.WorksPartByPart).ThrowIfBroken();
        #endregion

        Assert.Empty(exceptions);
        Assert.True(space.Count > 10);
    }

    [Fact]
    public void Call_and_response()
    {
        #region call
        var score = new Drill
        {
            Scale = Catalogue.Default.Read("Mayamalavagowla"),
            Pattern = Pattern.Ladder.Take(3),
            Tonic = Tonic.Parse("A3"),
            Delivery = Delivery.LineByLine,
        }.ToScore();
        new HtmlFormat().Save(score.WithAnswers(), "answers.html");
        #endregion

        // Each line is followed by as much silence: three avartanas become six.
        Assert.Equal(24, score.Sections[0].End);
        Assert.Equal(48, score.WithAnswers().Sections[0].End);
        Assert.Equal(["answers.html"], Files);
    }

    [Fact]
    public void A_sheet_in_another_script()
    {
        #region script
        var score = new Drill
        {
            Scale = Catalogue.Default.Read("Kalyani"),
            Pattern = Repertoire.Find("alankara-1")!.Pattern,
            Tonic = Tonic.Parse("C4"),
            Syllables = Syllables.Tamil,
        }.ToScore();
        new PdfFormat().Save(score, "kalyani.pdf");
        #endregion

        Assert.Equal("%PDF-"u8, File.ReadAllBytes("kalyani.pdf").AsSpan(0, 5));
        new SvgFormat().Save(score, "kalyani.svg"); // the same drawing, with its words to be read
        Assert.Contains("ஸ", File.ReadAllText("kalyani.svg"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_month()
    {
        #region month
        var plan = WarmupPlan.Make(new PlanRequest
        {
            Scales = [Catalogue.Default.Read("Mohanam"), Catalogue.Default.Read("Hamsadhwani")],
            Singers = [new("Wren", new NoteName('G', 0, 3), new NoteName('E', 0, 5), sustainedSeconds: 18)],
            Start = new DateOnly(2026, 12, 1),
            Days = 31,
            Seed = 7,
        }).Plan;
        using (var file = File.Create("plan.json"))
        {
            PlanFile.Write(plan, file);
        }

        var firstDay = plan.DayOf(new DateOnly(2026, 12, 1));
        new MidiFormat().Save(plan.ToScore(firstDay), "2026-12-01.mid");
        #endregion

        Assert.Equal(31, plan.Days.Count);
        Assert.Equal(4, plan.Days.Count(d => d.IsRest)); // Sundays: 6, 13, 20, 27
        Assert.Equal(plan, PlanFile.Read(File.ReadAllBytes("plan.json")));
    }

    [Fact]
    public void Movable_do_in_a_minor_scale()
    {
        #region minor
        var drill = new Drill
        {
            Scale = Catalogue.Default.Read("harmonic minor"),
            Pattern = Pattern.Run.UpDown(),
            Tonic = Tonic.Parse("A3"),
            Meter = Meter.Parse("4/4"),
            Syllables = Syllables.Solfa,
            HasDrone = false,
        };
        new MusicXmlFormat().Save(drill.ToScore(), "minor-do.musicxml");
        new MusicXmlFormat().Save((drill with { Syllables = Syllables.LaBasedSolfa }).ToScore(), "minor-la.musicxml");
        #endregion

        // Common practice: do re me fa sol le ti; with la as the tonic la ti do re mi fa si.
        Assert.StartsWith("do re me fa sol le ti do", Sung("minor-do.musicxml"), StringComparison.Ordinal);
        Assert.StartsWith("la ti do re mi fa si la", Sung("minor-la.musicxml"), StringComparison.Ordinal);

        static string Sung(string file) => string.Join(' ', XDocument.Load(file).Descendants("lyric").Select(l => (string?)l.Element("text")));
    }
}

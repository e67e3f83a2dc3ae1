using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Every way to a score gives one that is whole: from a drill, a climb, by joining, with breaths, with answers, by angas. Source: the
/// documented words of the parts, in <see cref="WholeScore"/>.
/// </summary>
[Properties(Arbitrary = [typeof(Arbitraries)], MaxTest = 200)]
public class ScoreWholeTests
{
    private static readonly Drill Mohanam = new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") };

    [Property]
    public void However_a_score_is_made_it_is_whole(Sung sung)
    {
        var score = sung.Score;
        WholeScore.Holds(score);
        if (score.Sections.Any(s => s.Lines.Any(l => l.HasAnswer)))
        {
            return;
        }

        WholeScore.Holds(score.WithAnswers());
        WholeScore.Holds(score.WithAngaMeasures());
        WholeScore.Holds(Score.Join("all", [score, score.WithAnswers(), score]));

        // Half of the first note of each second line goes to a breath.
        var breaths = score.Sections[0].Lines.Where((_, l) => l % 2 == 1)
            .Select(l => (Note: score.Sections[0].Notes[l.FirstNote], l.FirstNote))
            .Where(n => n.Note.LengthSteps % 2 == 0)
            .Select(n => new Breath(n.Note.Onset + (n.Note.Length / 2), n.Note.Length / 2, n.FirstNote)).ToValueList();
        WholeScore.Holds(score.WithBreaths(0, breaths));
        Assert.All(breaths, b => Assert.Contains(b, score.WithBreaths(0, breaths).Sections[0].Breaths));
    }

    [Fact]
    public void A_climb_is_whole() => WholeScore.Holds(new Climb { Drill = Mohanam, Semitones = 3 }.ToScore());

    [Fact]
    public void Joining_keeps_the_order_the_first_drone_and_each_finding_once()
    {
        // Mohanam has no N for a fifth string: both scores say so, and the joined one once.
        var five = Mohanam with { DroneStyle = DroneStyle.Tanpura with { StringCount = 5 } };
        var (silent, a, b) = ((Mohanam with { HasDrone = false }).ToScore(), five.ToScore(), (five with { Tonic = Tonic.Parse("A3") }).ToScore());
        var joined = Score.Join("all", [silent, a, b]);
        Assert.Equal(("all", a.Drone), (joined.Title, joined.Drone));
        Assert.Equal([silent.Sections[0], a.Sections[0], b.Sections[0]], joined.Sections);
        Assert.Equal(FindingCode.DroneWithoutString, Assert.Single(joined.Findings).Code);
        Assert.Equal(silent.Seconds + a.Seconds + b.Seconds, joined.Seconds);
    }

    [Fact]
    public void Nothing_to_join_a_missing_score_and_a_bad_title_are_refused()
    {
        var score = Mohanam.ToScore();
        Assert.Contains("at least 1 score", Assert.Throws<ArgumentException>(() => Score.Join("a", [])).Message, StringComparison.Ordinal);
        Assert.Equal("scores", Assert.Throws<ArgumentNullException>(() => Score.Join("a", [score, null!])).ParamName);
        Assert.Equal("scores", Assert.Throws<ArgumentNullException>(() => Score.Join("a", null!)).ParamName);
        Assert.Equal("title", Assert.Throws<ArgumentNullException>(() => Score.Join(null!, [score])).ParamName);
        Assert.Throws<ArgumentException>(() => Score.Join("a\n", [score]));
        Assert.Throws<ArgumentException>(() => score with { Title = "a\u0007" });
        Assert.Throws<ArgumentNullException>(() => score with { Title = null! });
    }

    [Fact]
    public void A_breath_that_does_not_fit_its_note_is_refused_with_the_place()
    {
        // S R / S R G ... at 60: the second note lasts from 1 to 2 aksharas, the second akshara as people count.
        var score = Mohanam.ToScore();
        Refused("the breath at akshara 2 does not begin within note 2", new Breath(1, 1, 1));
        Refused("does not begin within note 2", new Breath(new Rational(5, 2), 1, 1));
        Refused("does not begin within note 101", new Breath(new Rational(3, 2), new Rational(1, 2), 100));
        Refused("must end by akshara 3", new Breath(new Rational(3, 2), 1, 1));
        Refused("24th", new Breath(new Rational(47, 25), new Rational(3, 25), 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => score.WithBreaths(1, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Breath(-1, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Breath(0, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Breath(0, 1, -1));

        void Refused(string words, Breath breath) =>
            Assert.Contains(words, Assert.Throws<ArgumentException>(() => score.WithBreaths(0, [breath])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Angas_divide_the_avartanas_and_the_rest_stays()
    {
        // Adi is 4 + 2 + 2. Lines begin at 0, 2, 5, 9 and 14: of the measures' beginnings only 0 and 14 are theirs.
        var score = Mohanam.ToScore();
        var divided = score.WithAngaMeasures().Sections[0];
        Assert.Equal([0, 4, 6, 8, 12, 14, 16, 20, 22], divided.Measures.Select(m => (int)m.Onset.Floor()));
        Assert.Equal([0, 14], divided.Measures.Where(m => m.IsLineStart).Select(m => (int)m.Onset.Floor()));
        Assert.Equal((score.Sections[0].LastFilled, score.Sections[0].Notes), (divided.LastFilled, divided.Notes));
        Assert.Equal((Mohanam with { Meter = Meter.Free }).ToScore(), (Mohanam with { Meter = Meter.Free }).ToScore().WithAngaMeasures());
    }

    [Fact]
    public void A_place_names_the_section_where_there_are_several()
    {
        var score = (Mohanam with { Title = "Mohanam, growing" }).ToScore();
        var joined = Score.Join("all", [score, (Mohanam with { Title = new string('x', 300) }).ToScore()]);
        var note = score.Sections[0].Notes[2];
        Assert.Equal("line 2", score.PlaceOf(0, note).ToString());
        Assert.Equal(new ScorePlace(1, 2, 2), score.PlaceOf(0, note));
        Assert.Equal($"line 2 of section 1 '{score.Title}'", joined.PlaceOf(0, note).ToString());
        Assert.StartsWith("line 2 of section 2 'xxx", joined.PlaceOf(1, note).ToString(), StringComparison.Ordinal);
        Assert.InRange(joined.PlaceOf(1, note).ToString().Length, 1, 200);
        Assert.Throws<ArgumentOutOfRangeException>(() => score.PlaceOf(1, note));
        Assert.Throws<ArgumentOutOfRangeException>(() => score.PlaceOf(0, 5, 0));
    }

    [Fact]
    public void A_place_and_a_finding_refuse_what_cannot_be()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScorePlace(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScorePlace(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScorePlace(1, 1, -1));
        Assert.Throws<ArgumentException>(() => new ScorePlace(1, 1, 0, "a\nb"));
        Assert.Equal((1, 1, null), (default(ScorePlace).Section, default(ScorePlace).Line, default(ScorePlace).Beat));
        Assert.Equal("code", Assert.ThrowsAny<ArgumentException>(() => new Finding(" ", Severity.Note, "m")).ParamName);
        Assert.Equal("message", Assert.ThrowsAny<ArgumentException>(() => new Finding("a", Severity.Note, null!)).ParamName);
        Assert.Equal("fix", Assert.ThrowsAny<ArgumentException>(() => new Finding("a", Severity.Note, "m", null!)).ParamName);
        Assert.Contains("Note, Warning, Error", Assert.Throws<ArgumentOutOfRangeException>(() => new Finding("a", (Severity)3, "m")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Finding("a", Severity.Note, "m") { Measured = double.NaN });
        Assert.Equal("Wren: line 2 of section 3 'Lifts': m; f", new Finding("a", Severity.Note, "m", "f") { Singer = "Wren", Place = new ScorePlace(3, 2, 1, "Lifts") }.ToString());
    }

    [Fact]
    public void Everything_made_of_a_drill_sings_the_lines_it_was_given()
    {
        // The pattern is a ladder; the lines given are five notes down.
        var lines = Pattern.Parse("run.reversed").Expand(Mohanam.Scale);
        var drill = Mohanam with { Expansion = lines, Meter = Meter.Free };
        Assert.Equal("S' D P G R S", drill.Expand().ToLetters());
        Assert.Equal((Mohanam with { Meter = Meter.Free }).ToScore(lines), drill.ToScore());
        var climb = new Climb { Drill = drill, Semitones = 1, Cue = null, IsUpAndDown = false }.ToScore();
        Assert.All(climb.Sections, s => Assert.Equal("S' D2 P G3 R2 S", string.Join(' ', s.Notes.Select(n => s.PitchOf(n).Tone))));

        // With a cue: the cue sings its own line, not the drill's.
        var cued = new Climb { Drill = drill, Semitones = 1, IsUpAndDown = false }.ToScore();
        Assert.Equal([6, 1, 6], cued.Sections.Select(s => s.Notes.Count));

        // Nothing that is set later changes the lines, and without them the pattern's come back.
        Assert.Equal(lines, (drill with { Pattern = Pattern.Ladder.Ends() }).Expand());
        Assert.Equal(Mohanam.Expand(), (drill with { Expansion = null }).Expand());
    }

    [Fact]
    public void No_lines_give_a_score_of_no_or_negative_length()
    {
        Refused(() => Of(0));
        Refused(() => Of(-3));
        Refused(() => Of(1) with { Rest = -2 });
        Refused(() => default);
        Assert.True(Record.Exception(() => Mohanam.ToScore(new Expansion([new Line([])], []))) is PatternException or ArgumentException);

        static LineNote Of(int length) => new(default, ScaleDirection.Ascent, Approach.Leap, length);

        // Where the note itself is refused, or stands for a whole one, so much the better.
        static void Refused(Func<LineNote> note)
        {
            Score? score = null;
            var refused = Record.Exception(() => score = Mohanam.ToScore(new Expansion([new Line([Of(1), note(), Of(1)])], [])));
            Assert.True(refused is PatternException or ArgumentException || (refused is null && score is not null));
            if (score is not null)
            {
                WholeScore.Holds(score);
            }
        }
    }

    [Fact]
    public void What_is_missing_is_refused_by_name()
    {
        Named("Scale", () => Mohanam with { Scale = null! });
        Named("Pattern", () => Mohanam with { Pattern = null! });
        Named("Tonic", () => Mohanam with { Tonic = null! });
        Named("Tuning", () => Mohanam with { Tuning = null! });
        Named("Meter", () => Mohanam with { Meter = null! });
        Named("Tempo", () => Mohanam with { Tempo = null! });
        Named("Delivery", () => Mohanam with { Delivery = null! });
        Named("Syllables", () => Mohanam with { Syllables = null! });
        Named("DroneStyle", () => Mohanam with { DroneStyle = null! });
        Named("Title", () => Mohanam with { Title = null! });
        Named("Drill", () => new Climb { Drill = null! });
        Named("expansion", () => Mohanam.ToScore((Expansion)null!));
        Named("score", () => CallAndResponse.WithAnswers(null!));
        Named("score", () => Difficulty.Of(null!));

        static void Named(string name, Func<object> make) => Assert.Equal(name, Assert.Throws<ArgumentNullException>(make).ParamName);
    }

    [Fact]
    public void What_values_print_is_one_short_line_however_long_the_title()
    {
        var drill = Mohanam with { Title = new string('x', 10_000), Speeds = Enumerable.Repeat(Speed.First, 64).ToValueList() };
        object[] values = [drill, drill.ToScore(), drill.ToScore().Sections[0], new Climb { Drill = drill }, TunedScale.Of(Mohanam.Scale, Mohanam.Tonic, Tuning.Just)];
        Assert.All(values, v => Assert.InRange(v.ToString()!.Length, 1, 200));
    }
}

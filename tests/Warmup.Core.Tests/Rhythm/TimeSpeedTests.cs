namespace Warmup.Tests;

/// <summary>The rules' formula: notes an akshara = gati x 2^(kalam-1) / 4, and what follows from it.</summary>
public class TimeSpeedTests
{
    private static readonly Drill Ladder = new() { Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") };

    [Theory]
    [InlineData(4, "1 2 4 8")]
    [InlineData(3, "3/4 3/2 3 6")]
    [InlineData(5, "5/4 5/2 5 10")]
    [InlineData(7, "7/4 7/2 7 14")]
    [InlineData(9, "9/4 9/2 9 18")]
    public void Notes_an_akshara(int gati, string expected) =>
        Assert.Equal(expected, string.Join(' ', Enumerable.Range(1, 4).Select(k => new Speed(k, gati).NotesPerAkshara)));

    [Theory]
    [InlineData(1, 6, "3, 4, 5, 7 or 9, not 6")]
    [InlineData(1, 2, "between 3 and 9, not 2")]
    [InlineData(0, 4, "between 1 and 4, not 0")]
    [InlineData(5, 4, "between 1 and 4, not 5")]
    public void What_is_no_speed_is_refused(int kalam, int gati, string message) =>
        Assert.Contains(message, Assert.Throws<ArgumentOutOfRangeException>(() => new Speed(kalam, gati)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(3, 3, "tisra nadai, three to the akshara")]
    [InlineData(4, 3, "tisra nadai, six to the akshara")]
    [InlineData(2, 5, "khanda nadai, five to two aksharas")]
    [InlineData(1, 7, "misra nadai, seven to four aksharas")]
    [InlineData(4, 9, "sankirna nadai, eighteen to the akshara")]
    [InlineData(3, 4, "speed 3")]
    public void A_speed_is_said_as_teachers_say_it(int kalam, int gati, string said)
    {
        Assert.Equal(said, new Speed(kalam, gati).ToString());
        Assert.Equal(new Speed(kalam, gati), Speed.Parse(said));
    }

    [Theory]
    [InlineData("tisra", 3, 3)]
    [InlineData("Tisra Gati", 3, 3)]
    [InlineData("khanda nadai", 3, 5)]
    [InlineData("chatusra nadai", 1, 4)]
    [InlineData("speed 2, gati 3", 2, 3)]
    [InlineData("3 nadai misra", 3, 7)]
    public void A_gati_is_read_by_its_name_and_by_its_number(string text, int kalam, int gati) => Assert.Equal(new Speed(kalam, gati), Speed.Parse(text));

    [Theory]
    [InlineData("tisra nadai, four to the akshara", "three to the akshara")]
    [InlineData("chatusra nadai, two to the akshara", "speed 1 to speed 4")]
    [InlineData("speed 3, gati 6", "3, 4, 5, 7 or 9, or tisra")]
    [InlineData("tisr", "a gati such as tisra nadai")]
    public void What_is_no_gati_is_refused_with_what_can_stand_there(string text, string message)
    {
        Assert.False(Speed.TryParse(text, out _, out var error));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_three_speeds_and_trikalam_are_sung_in_any_gati()
    {
        // Trikalam: the first speed once, the second twice, the third four times (common practice).
        Assert.Equal([new(1, 3), new(2, 3), new(3, 3)], SpeedSequences.ThreeSpeeds(3));
        Assert.Equal([1, 2, 2, 3, 3, 3, 3], SpeedSequences.Trikalam(5).ConvertAll(s => s.Kalam));
        Assert.All(SpeedSequences.Trikalam(5).ToArray(), s => Assert.Equal(5, s.Gati));
        Assert.Equal([new Speed(1), new(3, 3), new(3, 5), new(3, 7), new(3, 9)], ((int[])[4, 3, 5, 7, 9]).Select(Speed.OfGati));
        Assert.Throws<ArgumentOutOfRangeException>(() => Speed.OfGati(8));
        Assert.All(SpeedSequences.Trikalam(7).ToArray(), s => Assert.Equal(Rational.One, s.Unit * s.NotesPerAkshara));
    }

    [Fact]
    public void Three_speeds_run_on_without_a_break()
    {
        // A ladder of seven notes has 2 + 3 + ... + 8 = 35; so the second speed begins at akshara 35, the third at 35 + 35/2.
        var section = (Ladder with { Speeds = SpeedSequences.ThreeSpeeds() }).ToScore().Sections[0];
        Assert.Equal(21, section.Lines.Count);
        Assert.Equal([0, 35, new Rational(105, 2)], ((int[])[0, 7, 14]).Select(l => section.Lines[l].Onset));
        Assert.Equal([Speed.First, Speed.Second, Speed.Third], ((int[])[6, 7, 20]).Select(l => section.Lines[l].Speed));
        Assert.Equal(new Rational(245, 4), section.End);
        Assert.Equal(Speed.First, section.Speed);
        Assert.Equal(1, section.Rounds);
        AssertNoGaps(section);
    }

    [Fact]
    public void In_trikalam_each_speed_takes_as_long_as_the_first_so_that_all_end_together()
    {
        var section = (Ladder with { Speeds = SpeedSequences.Trikalam() }).ToScore().Sections[0];
        var blocks = section.Lines.GroupBy(l => l.Speed.Kalam)
            .Select(g => (g.Key, Times: g.Count() / 7, Length: g.Aggregate(Rational.Zero, (sum, l) => sum + l.Length)));
        Assert.Equal([(1, 1, (Rational)35), (2, 2, 35), (3, 4, 35)], blocks);
        AssertNoGaps(section);
    }

    [Fact]
    public void The_gati_can_change_inside_a_drill()
    {
        var section = (Ladder with { Speeds = [new(3), new(3, 3), new(3, 5), new(3, 7), new(3, 9)] }).ToScore().Sections[0];
        var expected = new Rational(35, 4) + new Rational(35, 3) + new Rational(35, 5) + new Rational(35, 7) + new Rational(35, 9);
        Assert.Equal(expected, section.End);
        AssertNoGaps(section);
    }

    [Fact]
    public void No_speed_and_too_many_are_refused()
    {
        Assert.Contains("between 1 and 64, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => Ladder with { Speeds = [] }).Message, StringComparison.Ordinal);
        Assert.Contains("not 65", Assert.Throws<ArgumentOutOfRangeException>(() => Ladder with { Speeds = Enumerable.Repeat(Speed.First, 65).ToValueList() }).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_speed_is_the_first_of_the_speeds()
    {
        Assert.Equal(Speed.Second, (Ladder with { Speeds = [Speed.Second, Speed.First] }).Speeds[0]);
        Assert.Equal(Ladder with { Speeds = [Speed.Third] }, Ladder with { Speeds = [Speed.Third] });
    }

    /// <summary>Each note lasts one unit of its line's speed and follows the one before it; independent of how the score was made.</summary>
    private static void AssertNoGaps(Section section)
    {
        Rational at = section.CountIn;
        foreach (var note in section.Notes)
        {
            Assert.Equal(at, note.Onset);
            Assert.Equal(section.Lines[note.LineIndex].Speed.Unit, note.Length);
            at += note.Length;
        }
    }
}

/// <summary>
/// The figures and totals of the traditional exercises (exercises.tsv: common practice, compared with published notation; rows from
/// memory say so there).
/// </summary>
public class TimeExerciseTests
{
    private static readonly Drill Drill = new() { Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C3") };

    public static TheoryData<ExerciseRow> Alankaras => [.. TimeTables.Alankaras];

    [Theory]
    [MemberData(nameof(Alankaras), DisableDiscoveryEnumeration = true)]
    public void The_alankaras_fill_their_talas_in_the_first_two_speeds(ExerciseRow row)
    {
        var meter = Meter.Parse(string.Join(' ', row.Tala.Split(' ')[..2]));
        Assert.EndsWith($"= {meter.Beats}", row.Tala, StringComparison.Ordinal);
        foreach (var kalam in (int[])[1, 2])
        {
            var section = (Drill with { Meter = meter, Speeds = [new Speed(kalam)] }).ToScore(row.Expand()).Sections[0];
            Assert.Equal(new Rational(row.Units, kalam * meter.Beats), section.Measures.Count);
            Assert.Equal(section.Length, section.End);
            Assert.True(section.IsLastAvartanaFull);
            Assert.Equal(1, section.RoundsToFirstBeat);
        }
    }

    [Theory]
    [MemberData(nameof(Alankaras), DisableDiscoveryEnumeration = true)]
    public void In_the_third_speed_the_score_says_how_far_the_last_avartana_is_filled_and_which_repetition_ends_on_the_first_beat(ExerciseRow row)
    {
        var meter = Meter.Parse(string.Join(' ', row.Tala.Split(' ')[..2]));
        var section = (Drill with { Meter = meter, Speeds = [Speed.Third] }).ToScore(row.Expand()).Sections[0];
        var avartanas = new Rational(row.Units, 4 * meter.Beats);
        Assert.Equal(new Rational(5, 2), avartanas);
        Assert.Equal((avartanas - 2) * meter.Beats, section.LastFilled);
        Assert.False(section.IsLastAvartanaFull);
        Assert.Equal(2, section.RoundsToFirstBeat);
        Assert.Equal([0, meter.Beats, 2 * meter.Beats], section.Measures.ConvertAll(m => m.Onset));
    }

    [Fact]
    public void Thirty_two_units_are_four_two_and_one_avartana_of_Adi_in_the_three_speeds()
    {
        var row = TimeTables.Exercises.Single(e => e.Name == "sarali 2");
        Assert.Equal(32, row.Units);
        var counts = ((int[])[1, 2, 3]).Select(k => (Drill with { Speeds = [new Speed(k)] }).ToScore(row.Expand()).Sections[0])
            .Select(s => (s.Measures.Count, s.IsLastAvartanaFull));
        Assert.Equal([(4, true), (2, true), (1, true)], counts);
    }

    [Fact]
    public void Every_exercise_has_the_units_that_its_row_says()
    {
        foreach (var row in TimeTables.Exercises)
        {
            Assert.Equal(row.Units, (Drill with { Tonic = Tonic.Parse("C4") }).ToScore(row.Expand()).Sections[0].End);
        }
    }
}

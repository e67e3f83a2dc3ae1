using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>
/// Source: the rules' tonic fit (pitch classes; each singer the octave of least excess, then nearest centre; order: singers out, semitones
/// out, distance from the centre, lower tonic; out is more than 50 cents beyond), written a second time from frequencies.
/// </summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class FitTonicTests
{
    private static NoteName Note(string text) => NoteName.Parse(text);

    private static Singer Voice(string alias, string low, string high) => new(alias, Note(low), Note(high), 20);

    private static Drill Drill(string tonic, string pattern = "ladder") =>
        new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse(tonic) };

    [Property(MaxTest = 1_000)]
    public void The_ranking_is_the_one_that_trying_every_octave_gives(Drill drill, SmallClass people)
    {
        var score = drill.ToScore();
        var heights = score.Sections[0].Notes.Select(n => (long)Math.Round(100_000 * (69 + (12 * Math.Log2(score.Sections[0].PitchOf(n).Hz / 440))))).ToList();
        var expected = new List<(int Out, long Excess, long Distance, int Lowest)>();
        for (var pitchClass = 0; pitchClass < 12; pitchClass++)
        {
            var row = (Out: 0, Excess: 0L, Distance: 0L, Lowest: int.MaxValue);
            foreach (var singer in people.Singers)
            {
                var best = Enumerable.Range(24, 73).Where(t => t % 12 == pitchClass).Select(t => Place(t, singer)).Min();
                row = (row.Out + (best.Excess > 0 ? 1 : 0), row.Excess + best.Excess, row.Distance + best.Distance, Math.Min(row.Lowest, best.Tonic));
            }

            expected.Add(row);
        }

        expected.Sort();
        var found = score.RankTonics(people.Singers);
        Assert.Equal(
            expected.Select(e => (e.Out, new Rational(e.Excess, 100_000), new Rational(e.Distance, 200_000), e.Lowest)),
            found.Select(f => (f.SingersOut, f.SemitonesOut, f.CentreDistance, f.Tonic.Midi)));

        (long Excess, long Distance, int Tonic) Place(int tonic, Singer singer)
        {
            var shift = 100_000L * (tonic - drill.Tonic.Midi);
            var (lowest, highest) = (heights.Min() + shift, heights.Max() + shift);
            var (low, high) = (100_000L * singer.Low.Midi, 100_000L * singer.High.Midi);
            var (above, below) = (highest - high, low - lowest);
            return ((above > 50_000 ? above : 0) + (below > 50_000 ? below : 0), Math.Abs(lowest + highest - low - high), tonic);
        }
    }

    [Property(MaxTest = 500)]
    public void A_wider_range_never_fits_fewer_tonics(Drill drill, Singer singer, byte down, byte up)
    {
        var wider = new Singer(
            singer.Alias,
            NoteName.FromMidi(Math.Max(24, singer.Low.Midi - (down % 12))),
            NoteName.FromMidi(Math.Min(108, singer.High.Midi + (up % 12))),
            singer.SustainedSeconds);
        var score = drill.ToScore();
        Assert.True(score.RankTonics([wider]).Count(t => t.IsFitForAll) >= score.RankTonics([singer]).Count(t => t.IsFitForAll));
    }

    [Property(MaxTest = 300)]
    public void Moving_drill_and_singers_together_moves_the_tonics_and_changes_nothing_else(Drill drill, SmallClass people)
    {
        // From the middle of the keyboard, so that no tonic meets the bound of C1.
        var before = drill.ToScore().RankTonics(people.Singers.ConvertAll(s => s.Moved(8)));
        var after = (drill with { Tonic = Tonic.FromMidi(drill.Tonic.Midi + 5) }).ToScore().RankTonics(people.Singers.ConvertAll(s => s.Moved(13)));
        Assert.Equal(
            before.Select(t => (t.Tonic.Midi + 5, t.SingersOut, t.SemitonesOut, t.CentreDistance)),
            after.Select(t => (t.Tonic.Midi, t.SingersOut, t.SemitonesOut, t.CentreDistance)));
    }

    [Property(MaxTest = 300)]
    public void The_drills_own_tonic_does_not_matter(Drill drill, SmallClass people, byte by) => Assert.Equal(
        drill.ToScore().RankTonics(people.Singers).ToString(),
        (drill with { Tonic = Tonic.FromMidi(drill.Tonic.Midi + (by % 12)) }).ToScore().RankTonics(people.Singers).ToString());

    [Fact]
    public void Low_and_high_voices_take_octaves_of_the_same_tonic()
    {
        // An octave from S to S'. Wren G3 to E5 and Badger G2 to D4: the middles are 65.5 and 52.5, 13 semitones apart; the octave's middle
        // lies 6 above S. On B both are half a semitone off (B3: 65, B2: 53), on A# one and a half, on C half a semitone and one and a half.
        var best = Drill("G3").ToScore().RankTonics([Voice("Wren", "G3", "E5"), Voice("Badger", "G2", "D4")])[0];
        Assert.Equal(("B2", 0, 1), (best.Tonic.ToString(), best.SingersOut, (int)best.CentreDistance.Numerator));
        Assert.Equal(["B3", "B2"], best.Singers.Select(s => s.Tonic.ToString()));
        Assert.Contains("S on B2: Badger, S on B3: Wren", best.Explain(), StringComparison.Ordinal);
        Assert.Contains("all fit", best.Explain(), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_is_out_on_which_line_and_by_how_much_is_said()
    {
        // Nine semitones C4 to A4 cannot hold an octave: on C three semitones above (the last line), and so on for every tonic.
        var fit = Drill("C4").ToScore().RankTonics([Voice("Robin", "C4", "A4")]).Single(t => t.Tonic.ToString() == "C4");
        Assert.Equal((1, new Rational(3)), (fit.SingersOut, fit.SemitonesOut));
        Assert.Contains("Robin 3 semitones above A4 on line 5", fit.Explain(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_chest_registers_range_holds_an_octave_from_F3_to_C4_only()
    {
        // F3 to C5 (the project's own setting) is 19 semitones: an octave fits on F3 to C4, eight tonics, F3 to A3 among them.
        var chest = VoiceTypes.Find("chest register, women's tonics")!;
        Assert.Equal(("F3", "C5", VoiceRangeKind.ProjectSetting), (chest.Low.ToString(), chest.High.ToString(), chest.Kind));
        var fits = Drill("G3").ToScore().RankTonics([Singer.FromVoice("a", chest, 20)]).Where(t => t.IsFitForAll).Select(t => t.Tonic.Midi).Order();
        Assert.Equal(Enumerable.Range(53, 8), fits);
    }

    [Fact]
    public void A_just_note_18_cents_off_is_not_out()
    {
        // The just N2 (16/9) lies 996.1 cents above S, 3.9 below its key; D2 of 27/16 would lie 5.9 above. Here 5/3: 15.6 below; G3 5/4: 13.7 below.
        var drill = Drill("C4", "ladder.take(4)") with { Tuning = Tuning.Just };
        Assert.True(drill.ToScore().RankTonics([Voice("a", "C4", "A4")]).Single(t => t.Tonic.Midi == 60).IsFitForAll);
    }

    [Fact]
    public void Two_groups_are_offered_where_one_tonic_will_not_do()
    {
        // Each voice has exactly an octave: C4 to C5 and F#3 to F#4 share no tonic.
        ValueList<Singer> people = [Voice("a", "C4", "C5"), Voice("b", "F#3", "F#4"), Voice("c", "C3", "C4")];
        var score = Drill("G3").ToScore();
        Assert.False(score.RankTonics(people)[0].IsFitForAll);
        var groups = TonicRanking.Split([score], people);
        Assert.NotNull(groups);
        var (first, second) = groups.Value;
        Assert.True(first.IsFitForAll && second.IsFitForAll);
        Assert.Equal([["a", "c"], ["b"]], new[] { first, second }.Select(g => g.Singers.Select(s => s.Singer.Alias)));
        Assert.Null(TonicRanking.Split([score], [people[0], people[2]]));
    }

    [Property(MaxTest = 200)]
    public void No_other_two_groups_leave_fewer_out(Drill drill, SmallClass people)
    {
        var score = drill.ToScore();
        var one = score.RankTonics(people.Singers);
        var best = (one[0].SingersOut, one[0].SemitonesOut);
        for (var set = 1; set < (1 << people.Singers.Count) - 1; set++)
        {
            var groups = new[] { true, false }.Select(side => people.Singers.Where((_, i) => ((set >> i) & 1) == 1 == side).ToValueList());
            var fits = groups.Select(g => score.RankTonics(g)[0]).ToList();
            var found = (fits.Sum(f => f.SingersOut), fits[0].SemitonesOut + fits[1].SemitonesOut);
            best = found.CompareTo(best) < 0 ? found : best;
        }

        var split = TonicRanking.Split([score], people.Singers);
        var mine = split is var (a, b) ? (a.SingersOut + b.SingersOut, a.SemitonesOut + b.SemitonesOut) : (one[0].SingersOut, one[0].SemitonesOut);
        Assert.Equal(best, mine);
    }

    [Fact]
    public void Nobody_to_rank_for_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Drill("C4").ToScore().RankTonics(ValueList.Create<Singer>([])));
        Assert.Throws<ArgumentException>(() => TonicRanking.Rank(ValueList.Create<Score>([]), [Voice("a", "C4", "C5")]));
    }

    [Fact]
    public void Of_several_scores_the_extreme_places_name_the_section()
    {
        // The second score goes down to the lower D, the first up to the upper S.
        var up = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse("[S G P S']"), Tonic = Tonic.Parse("C4"), Title = "Up" };
        var down = up with { Pattern = Pattern.Parse("[S P] + [S D_ S]"), Title = "Down" };
        var fit = TonicRanking.Rank([up.ToScore(), down.ToScore()], [Voice("a", "C4", "A4")])[0];
        Assert.Equal(new ScorePlace(1, 1, 3, "Up"), fit.HighestPlace);
        Assert.Equal(new ScorePlace(2, 2, 3, "Down"), fit.LowestPlace);
        Assert.Contains("on line 1 of section 1 'Up'", fit.Explain(), StringComparison.Ordinal);
        Assert.Null(TonicRanking.Rank([up.ToScore()], [Voice("a", "C4", "A4")])[0].HighestPlace.Title);
    }

    [Fact]
    public void Files_are_written_in_the_highest_octave_that_is_sung()
    {
        Assert.Equal("C4", WrittenTonic.Of([48, 60, 36]).ToString());
        Assert.Equal("F#3", WrittenTonic.Of([54]).ToString());
        Assert.Throws<ArgumentException>(() => WrittenTonic.Of([]));
    }
}

namespace Warmup.Voices.Tests;

/// <summary>What fits say in words, and the least breath a score needs. Source: ladders and spans counted by hand at one note an akshara.</summary>
public class FitWordsTests
{
    private static Singer Voice(string alias, string low, string high, Rational? seconds = null) =>
        new(alias, NoteName.Parse(low), NoteName.Parse(high), seconds ?? 120);

    private static Drill Ladder(string tonic = "C4") =>
        new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse(tonic), Tempo = 60 };

    private static TonicFit On(string tonic, params ReadOnlySpan<Singer> singers) =>
        Ladder().ToScore().RankTonics(ValueList.Create(singers)).Single(t => t.Tonic.ToString() == tonic);

    [Fact]
    public void How_far_a_singer_is_out_is_said_for_each_end()
    {
        // C4 to C5 in a range from C#4 to B4: a semitone at either end, first at the first line's C4 and at the fifth line's C5.
        Assert.StartsWith("1 of 1 out: Robin 1 semitone above B4 on line 5 and 1 semitone below C#4 on line 1; ", On("C4", Voice("Robin", "C#4", "B4")).Explain(), StringComparison.Ordinal);
        Assert.StartsWith("1 of 1 out: Robin 2 semitones below D4 on line 1; ", On("C4", Voice("Robin", "D4", "C5")).Explain(), StringComparison.Ordinal);
        Assert.StartsWith("fits; the drill's middle lies 0.0 semitones from the middle of the range", On("C4", Voice("Robin", "C4", "C5")).Explain(), StringComparison.Ordinal);
        Assert.EndsWith("from the middle of the range on average", On("C4", Voice("Robin", "C4", "C5"), Voice("Wren", "C4", "C5")).Explain(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_more_than_six_names_the_others_are_counted()
    {
        var seven = Enumerable.Range(1, 7).Select(i => Voice($"r{i}", "C4", "B4")).ToArray();
        Assert.Contains("r6 1 semitone above B4 on line 5, and 1 more; ", On("C4", seven).Explain(), StringComparison.Ordinal);
        Assert.DoesNotContain("more", On("C4", seven.AsSpan()[..6]).Explain(), StringComparison.Ordinal);
        Singer[] octaves = [.. Enumerable.Range(1, 7).Select(i => Voice($"h{i}", "C4", "C5")), Voice("low", "C3", "C4")];
        Assert.EndsWith("do on C3: low, do on C4: h1 h2 h3 h4 h5 h6 and 1 more", On("C3", octaves).Explain("do"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_counts_singers_and_drills()
    {
        var one = ClassReport.Of([Ladder()], [Voice("a", "C4", "C5")]);
        Assert.Equal("1 singer, 1 drill: all fit", one.ToString());
        Assert.Equal("a: Fits", one.Rows[0].ToString());
        Assert.Equal("Fits", one.Rows[0].Cells[0].ToString());
        var two = ClassReport.Of([Ladder(), Ladder()], [Voice("a", "C4", "C5"), Voice("b", "C4", "G4")]);
        Assert.Equal("2 singers, 2 drills: not all fit", two.ToString());
        Assert.Equal("b: DoesNotFit, DoesNotFit", two.Rows[1].ToString());
        Assert.StartsWith("DoesNotFit: line 4: D2 (A4) lies", two.Rows[1].Cells[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Intervals_of_tempi_are_printed_and_bounded()
    {
        Assert.Equal(("54 to 90", "60"), (new TempoInterval(54, 90, "a", "b").ToString(), new TempoInterval(60, 60, "a", "b").ToString()));
        Assert.Equal(new TempoRange(54, 90), new TempoInterval(54, 90, "a", "b").Range);
        Assert.Equal((10, 400), (new TempoInterval(10, 400, "a", "b").Slowest, new TempoInterval(10, 400, "a", "b").Fastest));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TempoInterval(9, 90, "a", "b"));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TempoInterval(90, 401, "a", "b"));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TempoInterval(90, 89, "a", "b"));
    }

    [Theory]
    [InlineData(60, new[] { 3, 5 }, 3)] // a plan keeps spans of three seconds, so that three are enough
    [InlineData(60, new[] { 9, 10 }, 8)] // eight seconds last as they are
    [InlineData(120, new[] { 3, 5 }, 4)] // notes of half a second leave no breath of 0.8 s: four seconds stay four
    [InlineData(120, new[] { 3 }, 4)]
    public void With_breaths_of_their_own_singers_need_the_least_breath_that_has_a_plan(int tempo, int[] capacities, int needed)
    {
        // Eight notes in one line.
        var score = (Ladder() with { Scale = Catalogue.Default.Read("major"), Pattern = Pattern.Run, Tempo = tempo }).ToScore();
        var shortest = new Rational(4, 5);
        var needs = ScoreNeeds.Of(score, [shortest, new Rational(2, 5)], []);
        Rational whole = new(480, tempo);
        Assert.Equal([whole, whole], needs.LongestSpans);
        var own = needs.WithOwnBreaths(score, capacities.Select(c => new BreathNeed(c, shortest)).ToValueList());
        Assert.Equal([needed, whole], own.LongestSpans); // nobody takes breaths of 0.4 s
        Assert.Equal((needs.Low, needs.High), (own.Low, own.High));
    }

    [Fact]
    public void What_a_score_needs_is_said_in_words()
    {
        // C4 to C5 from C4: no semitone below and twelve above; twenty seconds.
        var needs = ScoreNeeds.Of(Ladder().ToScore(), [1], [Experience.Beginner]);
        Assert.Equal("0 to 12 semitones above the tonic; one breath of 20.0 s; too fast for none", needs.ToString());
        var quick = ScoreNeeds.Of((Ladder() with { Tempo = 200 }).ToScore(), [1, 2], [Experience.Beginner, Experience.Advanced]);
        Assert.EndsWith("one breath of 6.0 s or 6.0 s; too fast for beginner", quick.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_use_of_a_range_and_a_span_are_said_in_words()
    {
        // The ladder's last line, C4 D4 E4 G4 A4 C5, in a range from D4 to A4: C4 two below, C5 three above.
        var score = (Ladder() with { Pattern = Pattern.Ladder.Drop(4) }).ToScore();
        var use = RangeUse.Of(score, Voice("a", "D4", "A4"));
        Assert.Equal("6.0 s sung: 2.0 s in the top fifth, 2.0 s in the bottom fifth, 2.0 s outside", use.ToString());
        Assert.Equal("line 1: C4 to C5", use.Lines[0].ToString());
        Assert.Equal(["line 1: S (C4), -2 semitones", "line 1: S' (C5), +3 semitones"], use.Outside.Select(o => o.ToString()));
        Assert.Equal("line 1, 6.0 s", Assert.Single(BreathSpan.Of(score, 1)).ToString());
        Assert.Equal("line 1 to line 5, 20.0 s", Assert.Single(BreathSpan.Of(Ladder().ToScore(), 1)).ToString());
    }
}

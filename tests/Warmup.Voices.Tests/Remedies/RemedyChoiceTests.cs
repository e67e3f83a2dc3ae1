namespace Warmup.Voices.Tests;

/// <summary>
/// Which remedies are offered, and in which order: the smallest change first, at most three, of different kinds. Source: the documented sizes of the
/// changes and the rules of the checks, counted by hand.
/// </summary>
public class RemedyChoiceTests
{
    private static Drill Drill(string scale, string pattern) =>
        new() { Scale = Catalogue.Default.Read(scale), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse("C4"), Tempo = 60 };

    private static Singer Voice(string low, string high, int seconds, Experience experience = Experience.Beginner) =>
        new("Mira", NoteName.Parse(low), NoteName.Parse(high), seconds, experience);

    private static Singer Wide(int seconds, Experience experience = Experience.Beginner) => Voice("C1", "C8", seconds, experience);

    private static ValueList<Remedy> Remedies(Drill drill, Singer singer, string code)
    {
        var found = drill.Advise([singer]).Where(a => a.Finding.Code == code).ToList();
        Assert.NotEmpty(found);
        Assert.All(found, f => Assert.Equal(found[0].Remedies, f.Remedies));
        return found[0].Remedies;
    }

    [Fact]
    public void A_long_breath_is_mended_by_planned_breaths_then_by_lines_then_by_the_next_speed()
    {
        // Twenty notes in 20 s on 10 s. Planned breaths count 2, lines sung one by one 4 (7 s each), the second speed 8 (10 s); 8 would count three
        // lines of five (9 s), which come after the speeds.
        Assert.Equal(
            [new PlannedBreaths(new BreathNeed(10, new Rational(4, 5))), new OtherDelivery(isLineByLine: true), new OtherSpeeds([Speed.Second])],
            Remedies(Drill("mohanam", "ladder"), Wide(25), VoiceFindingCode.BreathTooLong));
    }

    [Fact]
    public void A_rise_that_ends_too_fast_ends_earlier()
    {
        // Two notes an akshara: 2, 3 and 4 a second, and a beginner has 3. From 120 to 90 or 89 are 7 twentieths begun; one speed down counts 8.
        var drill = Drill("major", "[S R G M]") with { Tempo = TempoRamp.Parse("60 to 120 by 30"), Speeds = [Speed.Second] };
        var remedies = Remedies(drill, Wide(120), VoiceFindingCode.TooFast);
        var earlier = Assert.IsType<OtherTempo>(remedies[0]).Tempo;
        Assert.Equal((60, 30), (earlier.Start, earlier.Step));
        Assert.True(earlier.Ceiling >= 89 && earlier.Ceiling <= 90, earlier.ToString());
        Assert.Equal(new OtherSpeeds([Speed.First]), remedies[1]);
    }

    [Fact]
    public void Of_several_speeds_the_fastest_is_left_out()
    {
        // One, two and four notes a second. Without the third speed counts 8; 45 a minute, three notes a second, counts 7 for its start and its end.
        var drill = Drill("major", "[S R G M]") with { Speeds = [Speed.First, Speed.Second, Speed.Third] };
        Assert.Equal([new OtherSpeeds([Speed.First, Speed.Second]), new OtherTempo(45)], Remedies(drill, Wide(120), VoiceFindingCode.TooFast).Take(2));
    }

    [Fact]
    public void Of_one_speed_the_next_slower_one_is_offered()
    {
        // Four notes a second; the second speed counts 8, 45 a minute 14, the first speed 16.
        var drill = Drill("major", "[S R G M]") with { Speeds = [Speed.Third] };
        Assert.Equal([new OtherSpeeds([Speed.Second]), new OtherTempo(45)], Remedies(drill, Wide(120), VoiceFindingCode.TooFast).Take(2));
    }

    [Fact]
    public void A_line_in_the_middle_can_be_left_out()
    {
        // Only the second line has C5, and five semitones lower C4 lies too low.
        Assert.Equal([new FewerLines([1, 3, 4])], Remedies(Drill("major", "[S R] + [S S'] + [R S] + [S R]"), Voice("C4", "G4", 120), VoiceFindingCode.AboveRange));
    }

    [Fact]
    public void The_last_lines_can_be_left_out_as_long_as_half_of_them_stay()
    {
        var drill = Drill("major", "[S R] + [S G] + [S N] + [S S']");
        Assert.Equal([new FewerLines([1, 2])], Remedies(drill, Voice("C4", "G4", 120), VoiceFindingCode.AboveRange));
        Assert.Empty(Remedies(drill, Voice("C4", "D4", 120), VoiceFindingCode.AboveRange));
    }

    [Fact]
    public void Where_no_change_helps_alone_two_are_offered_together()
    {
        // D4 to F#4: the first line, C4 to E4, has to go up a tone, and then the second line, up to C5, has to go. Without its second line the
        // drill is inside at the top.
        var drill = Drill("major", "[S R G] + [S R G M P D N S']");
        var singer = Voice("D4", "F#4", 120);
        var both = Assert.IsType<TwoRemedies>(Assert.Single(Remedies(drill, singer, VoiceFindingCode.BelowRange)));
        Assert.Equal(new TwoRemedies(new OtherTonic(Tonic.Parse("D4")), new FewerLines([1])), both);
        Assert.Equal("a tonic 2 semitones higher: D4, together with only line 1", both.Describe(drill));
        Assert.Equal([new FewerLines([1])], Remedies(drill, singer, VoiceFindingCode.AboveRange));
        Assert.True(both.ToScore(drill).Fits(singer));
    }

    [Fact]
    public void An_octave_counts_as_half_as_far()
    {
        // C5 to C6 for a voice from A3 to E5: the nearest tonic is E4, eight semitones lower, but C4 keeps its name.
        var remedies = Remedies(Drill("major", "[S R G M P D N S']") with { Tonic = Tonic.Parse("C5") }, Voice("A3", "E5", 120), VoiceFindingCode.AboveRange);
        Assert.Equal(new OtherTonic(Tonic.Parse("C4")), remedies[0]);
        Assert.Equal("the tonic an octave lower: C4", remedies[0].Describe(Drill("major", "run") with { Tonic = Tonic.Parse("C5") }));
    }

    [Fact]
    public void What_helps_one_singer_alone_is_said_in_words()
    {
        // C4 to C5. Wren ends a tone too low, Badger begins on C4: down helps Wren alone, and there is one line only.
        var drill = Drill("major", "[S R G M P D N S']");
        ValueList<Singer> both = [Voice("G3", "Bb4", 120), new Singer("Badger", NoteName.Parse("C4"), NoteName.Parse("E5"), 120)];
        var advice = Assert.Single(drill.Advise(both));
        Assert.Empty(advice.Remedies);
        Assert.StartsWith("nothing that was tried clears this for all 2 singers together; for Mira alone: a tonic 2 semitones lower: Bb3", advice.Help(drill), StringComparison.Ordinal);
        Assert.DoesNotContain("alone", Assert.Single(drill.Advise([both[0]])).Help(drill), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_breaths_are_planned_for_others_planning_is_no_remedy()
    {
        // The class has ten seconds and breathes for them; 0.4 of 12 s are 4.8.
        var advice = Drill("mohanam", "ladder").Advise([Wide(12)], planned: new BreathNeed(10, new Rational(4, 5)));
        Assert.NotEmpty(advice);
        Assert.DoesNotContain(advice.SelectMany(a => a.Remedies), r => r is PlannedBreaths or TwoRemedies { First: PlannedBreaths } or TwoRemedies { Second: PlannedBreaths });
    }

    [Fact]
    public void Breaths_planned_for_quicker_breathers_are_none_for_a_singer_who_needs_longer_ones()
    {
        // Planned are breaths of 0.4 s for ten seconds; a beginner with twelve needs 0.8 s, so that the twenty seconds stay one breath.
        var planned = new PlannedBreaths(new BreathNeed(10, new Rational(2, 5)));
        var (drill, singer) = (Drill("mohanam", "ladder"), Wide(30));
        var remedies = Assert.Single(drill.Advise([singer], planned: planned.Need)).Remedies;
        Assert.NotEmpty(remedies);
        Assert.All(remedies, r => Assert.True(planned.Apply(r.ToScore(drill)).Fits(singer), r.ToString()));
    }

    [Fact]
    public void A_drill_no_wider_than_the_range_is_not_called_too_wide()
    {
        // C4 to C5 for a voice from F6 to F7: 29 semitones up, and two octaves are the farthest that is tried.
        var advice = Assert.Single(Drill("major", "[S S']").Advise([Voice("F6", "F7", 120)]), a => a.Finding.Code == VoiceFindingCode.BelowRange);
        Assert.Empty(advice.Remedies);
        Assert.StartsWith("no change that was tried, and no two of them, clear this", advice.Otherwise, StringComparison.Ordinal);
        Assert.Equal(advice.Otherwise, advice.Help(Drill("major", "[S S']")));
    }

    [Fact]
    public void What_leaves_another_fault_as_it_is_is_offered()
    {
        // Twenty seconds on a breath of eight, and C5 for a voice up to Bb4: a tone lower mends the range and leaves the breath as long as it was.
        var drill = Drill("mohanam", "ladder");
        Assert.Equal(new OtherTonic(Tonic.Parse("Bb3")), Remedies(drill, Voice("C3", "Bb4", 20), VoiceFindingCode.AboveRange)[0]);

        // Six notes a second are too quick for a beginner's three: the same.
        Assert.Equal(new OtherTonic(Tonic.Parse("Bb3")), Remedies(drill with { Tempo = 360 }, Voice("C3", "Bb4", 120), VoiceFindingCode.AboveRange)[0]);
    }

    [Fact]
    public void Of_other_scales_the_one_with_most_notes_in_common_comes_first()
    {
        // One line from C4 to B4 for a voice up to Bb4: no other tonic, no line to leave out; a scale with the lower N helps.
        var drill = Drill("major", "[S R G M P D N]");
        var singer = Voice("C4", "Bb4", 120);
        var offered = Remedies(drill, singer, VoiceFindingCode.AboveRange).OfType<OtherScale>().First().Scale;
        int Apart(Scale scale) => drill.Scale.Degrees.Union(scale.Degrees).Count() - drill.Scale.Degrees.Intersect(scale.Degrees).Count();
        var helpful = Catalogue.Default.Entries.Select(e => e.Scale).Where(s => (drill with { Scale = s }).TryToScore(out var score, out _) && score!.Fits(singer)).ToList();
        Assert.Equal(helpful.Min(Apart), Apart(offered));
    }

    [Fact]
    public void A_reference_of_ones_own_stays_in_the_text_of_a_tonic()
    {
        Assert.Equal(new OtherTonic(Tonic.Parse("260Hz")), new OtherTonic(Tonic.Parse(new OtherTonic(Tonic.Parse("260Hz")).Text)));
        Assert.True(Tonic.TryParse("260Hz, A4=432Hz", out var other, out _));
        Assert.EndsWith(", A4=432Hz", new OtherTonic(other!).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("A4=", new OtherTonic(Tonic.Parse("260Hz")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Fill.None, "lines not filled up")]
    [InlineData(Fill.Anga, "each line filled up to the end of the anga only")]
    [InlineData(Fill.Avartana, "each line filled up to the end of the avartana")]
    public void Remedies_say_what_they_change(Fill fill, string words)
    {
        var drill = Drill("major", "run");
        Assert.Equal(words, new OtherFill(fill).Describe(drill));
        Assert.Equal(fill, new OtherFill(fill).Apply(drill).Delivery.Fill);
        Assert.Equal("line by line, with a breath after each", new OtherDelivery(isLineByLine: true).Describe(drill));
        Assert.Equal("continuous", new OtherDelivery(isLineByLine: false).Describe(drill));
        Assert.Equal($"the scale Mohanam instead of {drill.Scale.Name}", new OtherScale(Catalogue.Default.Read("mohanam")).Describe(drill), ignoreCase: true);
        Assert.Equal("silence at the end of each line instead of a held last note", new OtherFillBy(FillBy.Rest).Describe(drill));
    }
}

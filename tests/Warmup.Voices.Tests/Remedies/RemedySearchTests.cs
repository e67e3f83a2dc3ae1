namespace Warmup.Voices.Tests;

/// <summary>
/// Which of the changes that help are offered. Checks of one's own say which change is good. Source: docs/voices.md, "Findings and remedies": the
/// smallest first, at most three of different kinds, no harm to anyone, two together only where no single one helps, and the bound of the work.
/// </summary>
public class RemedySearchTests
{
    private static readonly Drill Drill = new()
    {
        Scale = Catalogue.Default.Read("major"), Pattern = Pattern.Parse("[S R G M] + [S R]"), Tonic = Tonic.Parse("C4"), Tempo = 60, HasDrone = false,
    };

    private static readonly Remedy Lower = new OtherTonic(Tonic.Parse("B3"));

    private static Singer Anyone(string alias = "Mira") => new(alias, NoteName.Parse("C1"), NoteName.Parse("C8"), 120);

    private static ValueList<Advice> Advise(params ReadOnlySpan<ScoreCheck> checks) => Drill.Advise([Anyone()], OwnCheck.Only(checks));

    private static ValueList<Remedy> Remedies(params ReadOnlySpan<ScoreCheck> checks) => Advise(checks)[0].Remedies;

    private static bool IsUnchanged(Section section) => section == Drill.ToScore().Sections[0];

    [Fact]
    public void Three_remedies_of_different_kinds_are_offered_the_smallest_first()
    {
        // Everything but the drill as it is will do. A semitone counts 1, a tempo 1 for its start and 1 for its end, a fill 3.
        Assert.Equal([Lower, new OtherTempo(59), new OtherFill(Fill.Anga)], Remedies(OwnCheck.Of("a", IsUnchanged)));
    }

    [Fact]
    public void Of_equally_large_changes_the_delivery_comes_first_then_the_tonic_and_the_tempo_last()
    {
        // Line by line, four semitones, and two twentieths at the start and at the end: each counts 4.
        Assert.Equal(
            [new OtherDelivery(isLineByLine: true), new OtherTonic(Tonic.Parse("Ab3")), new OtherTempo(57)],
            Remedies(OwnCheck.Of("a", s => !s.Delivery.IsLineByLine && s.Tonic.Midi != 56 && s.Tempo != 57)));
    }

    [Fact]
    public void What_brings_a_new_fault_is_not_offered() => Assert.Equal(
        [new OtherTempo(59), new OtherFill(Fill.Anga), new OtherDelivery(isLineByLine: true)],
        Remedies(OwnCheck.Of("a", IsUnchanged), OwnCheck.Of("b", s => s.Tonic.Midi != 60)));

    [Fact]
    public void What_moves_a_fault_to_another_line_is_not_offered() => Assert.Equal(
        [new OtherTempo(59), new OtherFill(Fill.Anga), new OtherDelivery(isLineByLine: true)],
        Remedies(OwnCheck.Of("a", IsUnchanged, line: 1), OwnCheck.Of("a", s => s.Tonic.Midi != 60, line: 2)));

    [Fact]
    public void What_makes_another_fault_worse_is_not_offered_and_what_leaves_it_as_it_is_may_be()
    {
        // The second fault is as large as the tempo, above or below its limit: faster is worse, slower is better.
        Assert.Equal(
            [Lower, new OtherTempo(59), new OtherFill(Fill.Anga)],
            Remedies(OwnCheck.Of("a", IsUnchanged), OwnCheck.Of("b", _ => true, amount: s => s.Tempo.ToDouble())));
        Assert.Equal(
            [Lower, new OtherTempo(61), new OtherFill(Fill.Anga)],
            Remedies(OwnCheck.Of("a", IsUnchanged), OwnCheck.Of("b", _ => true, amount: s => -500 + s.Tempo.ToDouble())));
    }

    [Fact]
    public void Where_nothing_clears_all_faults_of_a_kind_each_has_what_clears_it()
    {
        // Any other tonic clears the first line, a slower tempo the second; no two changes clear a third one.
        var advice = Advise(
            OwnCheck.Of("a", s => s.Tonic.Midi == 60, line: 1), OwnCheck.Of("a", s => s.Tempo >= 60, line: 2), OwnCheck.Of("a", _ => true));
        Assert.Equal([Lower], advice[0].Remedies);
        Assert.Equal([new OtherTempo(59)], advice[1].Remedies);
        Assert.Empty(advice[2].Remedies);
        Assert.StartsWith("no change that was tried, and no two of them, clear this", advice[2].Otherwise, StringComparison.Ordinal);
    }

    [Fact]
    public void For_one_line_too_three_are_offered_of_different_kinds()
    {
        var advice = Advise(OwnCheck.Of("a", IsUnchanged, line: 1), OwnCheck.Of("a", _ => true, line: 2));
        Assert.Equal([Lower, new OtherTempo(59), new OtherFill(Fill.Anga)], advice[0].Remedies);
        Assert.Empty(advice[1].Remedies);
    }

    [Fact]
    public void Fewer_lines_and_another_scale_are_no_help_for_one_line_alone()
    {
        var advice = Advise(OwnCheck.Of("a", s => s.Lines.Count == 2 && s.Scale == Drill.Scale, line: 1), OwnCheck.Of("a", _ => true));
        Assert.Empty(advice[0].Remedies);
    }

    [Fact]
    public void Two_together_are_offered_where_they_clear_all_and_no_single_one_does()
    {
        // A semitone lower counts 1, and the nearest slower tempo in steps of a twentieth, 57, counts 4.
        var advice = Advise(OwnCheck.Of("a", s => s.Tonic.Midi == 60, line: 1), OwnCheck.Of("a", s => s.Tempo >= 60, line: 2));
        Assert.All(advice, a => Assert.Equal([new TwoRemedies(Lower, new OtherTempo(57))], a.Remedies));

        // What one change clears needs no second one.
        Assert.DoesNotContain(Remedies(OwnCheck.Of("a", s => s.Tonic.Midi == 60)), r => r is TwoRemedies);
    }

    [Fact]
    public void Two_together_are_offered_for_one_kind_of_fault_beside_a_single_one_for_another()
    {
        var advice = Advise(OwnCheck.Of("a", s => s.Tonic.Midi == 60), OwnCheck.Of("b", s => s.Tonic.Midi == 60 || s.Tempo >= 60));
        Assert.Equal([Lower], advice[0].Remedies);
        Assert.Equal([new TwoRemedies(Lower, new OtherTempo(57))], advice[1].Remedies);
    }

    [Fact]
    public void Another_scale_is_the_last_resort_and_the_nearest_one_is_offered()
    {
        // Scales of the same degrees count 20, so that leaving out one of two lines, which counts 10, comes before; five octaves away is no tonic.
        var remedies = Remedies(OwnCheck.Of("a", s => s.Scale == Drill.Scale && s.Lines.Count == 2));
        Assert.Equal(new FewerLines([1]), remedies[0]);
        var other = Assert.IsType<OtherScale>(remedies[1]).Scale;
        Assert.Equal(Drill.Scale.Degrees, other.Degrees);
        Assert.NotEqual((Drill.Scale.Ascent, Drill.Scale.Descent), (other.Ascent, other.Descent));
        Assert.Equal(2, remedies.Count);
    }

    [Fact]
    public void Lines_that_were_given_have_no_other_scale()
    {
        var given = Drill with { Expansion = Drill.Expand() };
        Assert.Empty(given.Advise([Anyone()], OwnCheck.Only(OwnCheck.Of("a", s => s.Scale == Drill.Scale)))[0].Remedies);
    }

    [Fact]
    public void A_remedy_that_another_singer_cannot_sing_is_told_for_this_one_alone()
    {
        // Mira wants another tonic or no more than 59; Wren wants neither.
        ScoreCheck mira = (score, singer) => singer.Alias == "Mira" && score.Sections[0] is var s && s.Tonic.Midi == 60 && s.Tempo > 59
            ? [new Finding("a", Severity.Error, "not so") { Singer = singer.Alias }]
            : [];
        ScoreCheck wren = (score, singer) => singer.Alias == "Wren" && score.Sections[0] is var s && (s.Tonic.Midi != 60 || s.Tempo < 60)
            ? [new Finding("b", Severity.Error, "not so") { Singer = singer.Alias }]
            : [];
        var advice = Assert.Single(Drill.Advise([Anyone("Wren"), Anyone()], OwnCheck.Only(mira, wren)));
        Assert.Empty(advice.Remedies);
        Assert.Equal([Lower, new OtherTempo(59)], advice.Alone);
        Assert.Equal("Mira", advice.Singer.Alias);
        Assert.Equal("nothing that was tried clears this for all 2 singers together; for Mira alone", advice.Otherwise);
        Assert.EndsWith("for Mira alone: a tonic 1 semitone lower: B3; or a tempo of 59 instead of 60", advice.Help(Drill), StringComparison.Ordinal);
    }

    [Fact]
    public void Four_million_notes_are_looked_at_and_no_more()
    {
        // A thousand notes for each of forty singers: 40,000 at a change that leaves out no line.
        var drill = Drill with { Pattern = Pattern.Parse("[S R G M P M G R S R]").Repeat(100) };
        var singers = Enumerable.Range(1, 40).Select(i => Anyone($"Lark {i}")).ToValueList();
        var looked = 0L;
        var advice = drill.Advise(singers, OwnCheck.Only((score, singer) =>
        {
            looked += score.NoteCount;
            return [new Finding("a", Severity.Error, "not so") { Singer = singer.Alias }];
        }));
        Assert.InRange(looked, 2_000_000, 4_100_000);
        Assert.All(advice, a => Assert.Equal("not everything could be tried, with so many notes and singers: take fewer of either", a.Otherwise));
    }
}

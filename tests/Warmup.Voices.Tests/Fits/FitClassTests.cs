using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: the words of the class report, held against the single checks and against ladders counted by hand.</summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class FitClassTests
{
    private static NoteName Note(string text) => NoteName.Parse(text);

    private static Singer Voice(string alias, string low, string high, int seconds, Experience experience = Experience.Beginner) =>
        new(alias, Note(low), Note(high), seconds, experience);

    private static Drill Ladder(string pattern = "ladder") =>
        new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse("C4"), Tempo = 60 };

    [Fact]
    public void The_table_says_who_fits_who_fits_with_breaths_and_who_does_not()
    {
        // Twenty seconds: 0.6 of 40 s hold them at once, 0.6 of 12 s with breaths; an octave does not fit in seven semitones.
        var report = ClassReport.Of([Ladder()], [
            Voice("a", "G3", "E5", 40, Experience.Advanced),
            Voice("b", "G3", "E5", 12, Experience.Advanced),
            Voice("c", "C4", "G4", 40, Experience.Advanced),
            Voice("d", "G2", "E4", 40, Experience.Advanced)]);
        var cells = report.Rows.Select(r => r.Cells.Single()).ToList();
        Assert.Equal([ClassVerdict.Fits, ClassVerdict.FitsWithBreaths, ClassVerdict.DoesNotFit, ClassVerdict.Fits], cells.Select(c => c.Verdict));
        Assert.Equal([0, 0, 0, -1], cells.Select(c => c.Octaves));
        Assert.Contains("after line", cells[1].Why, StringComparison.Ordinal);
        Assert.Contains("above the highest comfortable note G4", cells[2].Why, StringComparison.Ordinal);
        Assert.All(cells, c => Assert.Empty(c.Fix));
        Assert.False(report.IsFitForAll);
    }

    [Property(MaxTest = 200)]
    public void A_singer_who_fits_has_no_finding_in_that_octave_and_one_who_does_not_has_one(Drill drill, SmallClass people)
    {
        var report = ClassReport.Of([drill], people.Singers);
        foreach (var row in report.Rows)
        {
            var cell = row.Cells.Single();
            var score = (drill with { Tonic = Tonic.FromMidi(drill.Tonic.Midi + (12 * cell.Octaves)) }).ToScore();
            var findings = score.Check(row.Singer);
            Assert.Equal(cell.Verdict == ClassVerdict.Fits, findings.IsEmpty);
            if (cell.Verdict == ClassVerdict.FitsWithBreaths)
            {
                Assert.All(findings, f => Assert.Equal(VoiceFindingCode.BreathTooLong, f.Code));
                Assert.True(BreathPlan.TryMake(score, BreathNeed.Of(row.Singer), out var plan, out _));
                Assert.DoesNotContain(score.WithBreaths(plan!).Check(row.Singer), f => f.Code == VoiceFindingCode.BreathTooLong);
            }
        }
    }

    [Fact]
    public void Two_groups_stand_in_the_report_where_one_tonic_will_not_do()
    {
        ValueList<Singer> people = [Voice("a", "C4", "C5", 60), Voice("b", "F#3", "F#4", 60)];
        var report = ClassReport.Of([Ladder()], people);
        Assert.Equal(2, report.Groups.Count);
        Assert.Empty(ClassReport.Of([Ladder()], [people[0]]).Groups);
    }

    [Fact]
    public void Several_drills_share_one_tonic()
    {
        // An octave up from S, and one that dips a fourth below and stays under P: together 17 semitones.
        var drills = new[] { Ladder(), Ladder("figure(-2 1)").With(p => p.Take(1)) }.ToValueList();
        var report = ClassReport.Of(drills, [Voice("a", "A3", "C5", 60)]);
        Assert.Equal(2, report.Drills.Count);
        Assert.Equal(2, report.Rows[0].Cells.Count);
        Assert.All(report.Tonics, t => Assert.False(t.IsFitForAll));
        Assert.True(ClassReport.Of(drills, [Voice("a", "G3", "C5", 60)]).Tonics[0] is { IsFitForAll: true } best && best.Tonic.ToString() == "C4");
    }

    [Fact]
    public void Ten_thousand_singers_are_no_trouble()
    {
        var people = Enumerable.Range(0, 10_000).Select(i => new Singer(
            $"voice {i}", NoteName.FromMidi(40 + (i % 20)), NoteName.FromMidi(46 + (i % 20) + (i % 23)), new Rational(100 + (i % 1_100), 10), (Experience)(i % 3))).ToValueList();
        var before = GC.GetAllocatedBytesForCurrentThread();
        var report = ClassReport.Of([Ladder()], people);
        Assert.Equal((10_000, 12), (report.Rows.Count, report.Tonics.Count));

        // 20 KB a singer: only work that grows with the square of the class would need more. Benchmarks measure the time.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200_000_000);
    }

    [Fact]
    public void The_work_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => ClassReport.Of([Ladder()], [Voice("a", "C4", "C5", 60)], cancellationToken: stop.Token));
    }

    [Fact]
    public void The_report_is_about_the_lines_the_drill_was_given()
    {
        // The ladder reaches C5, above G4; its first two lines reach E4.
        var singer = Voice("c", "C4", "G4", 40, Experience.Advanced);
        Assert.False(ClassReport.Of([Ladder()], [singer]).IsFitForAll);
        var given = Ladder() with { Expansion = Ladder("ladder.take(2)").Expand() };
        Assert.True(ClassReport.Of([given], [singer]).IsFitForAll);
    }

    [Fact]
    public void A_check_of_ones_own_counts_and_a_standard_one_can_be_left_out()
    {
        var singer = Voice("a", "G3", "E5", 40, Experience.Advanced);
        var cell = ClassReport.Of([Ladder()], [singer], ScoreChecks.Standard.With(Never)).Rows[0].Cells[0];
        Assert.Equal((ClassVerdict.DoesNotFit, "line 1: not on a Tuesday", "wait a day"), (cell.Verdict, cell.Why, cell.Fix));
        var narrow = Voice("c", "C4", "G4", 40, Experience.Advanced);
        Assert.True(ClassReport.Of([Ladder()], [narrow], ScoreChecks.Standard.Without(ScoreChecks.Range)).IsFitForAll);

        static IEnumerable<Finding> Never(Score score, Singer singer) =>
        [
            new("own.note", Severity.Note, "a note does not count"),
            new("own.day", Severity.Error, "not on a Tuesday", "wait a day") { Place = score.PlaceOf(0, score.Sections[0].Notes[0]) },
        ];
    }
}

/// <summary>Changes a drill's pattern.</summary>
internal static class DrillChanges
{
    public static Drill With(this Drill drill, Func<Pattern, Pattern> change) => drill with { Pattern = change(drill.Pattern) };
}

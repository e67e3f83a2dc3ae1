using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>
/// Source: the rules for breath and agility; windows are compared with trying the tempi one by one, limits with arithmetic by hand.
/// </summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class FitTempoTests
{
    private static Singer Voice(int seconds, Experience experience = Experience.Beginner) =>
        new("Mira", NoteName.FromMidi(40), NoteName.FromMidi(90), seconds, experience);

    private static Drill Ladder(string pattern = "ladder") =>
        new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse("G3") };

    [Fact]
    public void The_breath_closes_below_and_the_throat_above()
    {
        // Twenty notes on 0.4 of 20 s = 8 s: at least 150 a minute. A beginner's 3 notes a second: at most 180.
        var window = TempoWindow.OfSpeeds(Ladder(), [Voice(20)])[0];
        var interval = Assert.Single(window.Intervals.ToArray());
        Assert.Equal((150, 180), (interval.Slowest, interval.Fastest));
        Assert.StartsWith("breath at 149", interval.Below, StringComparison.Ordinal);
        Assert.StartsWith("throat at 181", interval.Above, StringComparison.Ordinal);
        Assert.Contains("3.02 notes a second", interval.Above, StringComparison.Ordinal);
        Assert.Empty(window.ClosedBy);
        Assert.Empty(window.OpenedBy);
    }

    [Fact]
    public void Each_speed_has_its_own_window()
    {
        // The second speed sings twice as many notes a beat: 75 to 90. The third: 37.5 to 45, in whole tempi 38 to 45.
        var windows = TempoWindow.OfSpeeds(Ladder(), [Voice(20)]);
        Assert.Equal(["150 to 180", "75 to 90", "38 to 45"], windows.Select(w => w.Intervals.Single().ToString()));
        Assert.Equal([1, 2, 3], windows.Select(w => w.Speed.Kalam));
    }

    [Fact]
    public void An_empty_window_says_what_closes_it_and_what_opens_it()
    {
        // On 0.4 of 15 s = 6 s twenty notes need 200 a minute; the throat allows 180.
        var window = TempoWindow.OfSpeeds(Ladder(), [Voice(15)])[0];
        Assert.True(window.IsEmpty);
        Assert.Contains(window.ClosedBy, c => c.StartsWith("throat at 181: line 1:", StringComparison.Ordinal));
        Assert.Contains(window.ClosedBy, c => c.StartsWith("breath at 180: one breath has to last 6.7 s (lines 1 to 5)", StringComparison.Ordinal));
        Assert.Contains(window.OpenedBy, o => o.Contains("breaths open", StringComparison.Ordinal) && o.Contains("after line", StringComparison.Ordinal));

        // Without the last line, six notes, fourteen are left: 140 to 180.
        Assert.Contains("1 line fewer at the end opens 140 to 180", window.OpenedBy);
    }

    [Property(MaxTest = 25)]
    public void Breaths_open_the_tempi_at_which_there_is_a_plan_and_the_throat_allows_it(Drill drill, Singer singer)
    {
        if (!drill.TryToScore(out var score, out _) || score.NoteCount > 120)
        {
            return;
        }

        foreach (var window in TempoWindow.OfSpeeds(drill, [singer]).Where(w => w.IsEmpty))
        {
            // Each tempo by itself: a score of its own and the cheapest plan for it.
            var opened = Enumerable.Range(Tempo.Slowest, Tempo.Fastest - Tempo.Slowest + 1)
                .Select(t => (Tempo: t, Score: (drill with { Tempo = t, Speeds = [window.Speed] }).ToScore()))
                .Where(t => t.Score.Fits(singer, ScoreChecks.Standard.Without(ScoreChecks.Range).Without(ScoreChecks.Breath)) && BreathPlan.TryMake(t.Score, BreathNeed.Of(singer), out _, out _))
                .Select(t => t.Tempo)
                .ToList();
            var said = window.OpenedBy.SingleOrDefault(o => o.StartsWith("breaths open ", StringComparison.Ordinal));
            Assert.Equal(opened.Count > 0 ? $"breaths open {Intervals(opened)} (" : null, said?[..(said.IndexOf('(', StringComparison.Ordinal) + 1)]);
        }
    }

    [Fact]
    public void A_speed_that_is_not_yet_possible_names_those_that_are()
    {
        // Line by line in Adi every line fills its avartana less the breath, which below 60 is one akshara (a second rounded up to halves):
        // 7 aksharas must stay within 8 s, at least 52.5 at any speed. A beginner's 3 notes a second allow 180, 90 and 45: the third speed
        // has no tempo.
        var windows = TempoWindow.OfSpeeds(Ladder() with { Delivery = Delivery.LineByLine }, [Voice(20)]);
        Assert.Equal(["53 to 180", "53 to 90", ""], windows.Select(w => string.Join(", ", w.Intervals)));
        Assert.Contains("speed 3 not yet: speed 1 has 53 to 180", windows[2].OpenedBy);
        Assert.Contains("speed 3 not yet: speed 2 has 53 to 90", windows[2].OpenedBy);
    }

    [Fact]
    public void A_drill_that_nothing_opens_says_only_what_closes_it()
    {
        // Eight hundred notes on one breath of 8 s, no note long enough for a beginner's breath at any tempo of three notes a second or more.
        Assert.All(TempoWindow.OfSpeeds(Ladder("ladder.repeat(40)"), [Voice(20)]), w => Assert.True(w is { IsEmpty: true, ClosedBy.IsEmpty: false }));
    }

    [Fact]
    public void A_slower_tempo_may_open_the_window_again()
    {
        // Free rhythm, lines of 2 and 3 notes, the last held; the breath goes on to the next whole akshara, so that its seconds jump with the
        // tempo: tempi at which a beginner can breathe (0.8 s) alternate with tempi at which both lines go on one breath of 3.6 s.
        var drill = Ladder("ladder.take(2)") with
        {
            Meter = Meter.Free,
            Delivery = Delivery.LineByLine with { BreathSeconds = new Rational(1, 2) },
        };
        var singer = Voice(9);
        var window = TempoWindow.OfSpeeds(drill, [singer])[0];
        var tried = Enumerable.Range(Tempo.Slowest, Tempo.Fastest - Tempo.Slowest + 1)
            .Where(t => (drill with { Tempo = t }).ToScore().Check(singer).IsEmpty).ToList();
        Assert.Equal(tried, window.Intervals.SelectMany(i => Enumerable.Range(i.Slowest, i.Fastest - i.Slowest + 1)));
        Assert.True(window.Intervals.Count > 1, window.ToString());
    }

    [Property(MaxTest = 30)]
    public void The_intervals_are_the_tempi_at_which_nobody_has_a_finding(Drill drill, SmallClass people)
    {
        var speed = new Speed(2, drill.Speeds[0].Gati);
        var window = TempoWindow.OfSpeeds(drill, people.Singers)[1];
        for (var tempo = Tempo.Slowest; tempo <= Tempo.Fastest; tempo += 7)
        {
            var score = (drill with { Tempo = tempo, Speeds = [speed] }).ToScore();
            var fits = people.Singers.All(s => score.Check(s).All(f => f.Code is VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange));
            Assert.Equal(fits, window.Intervals.Any(i => i.Slowest <= tempo && tempo <= i.Fastest));
        }

        Assert.Equal(window.IsEmpty, !window.ClosedBy.IsEmpty);
    }

    [Property(MaxTest = 300)]
    public void With_fixed_breath_places_spans_grow_longer_as_the_tempo_slows(Drill drill, byte a, byte b)
    {
        // Tempi in fives, so that half a second is a whole number of 24ths of an akshara at each of them.
        var tempi = new[] { 20 + (5 * (a % 30)), 20 + (5 * (b % 30)) }.Order().ToArray();
        var (slow, fast) = (Lengths(tempi[0]), Lengths(tempi[1]));
        Assert.Equal(slow.Count, fast.Count);
        Assert.All(slow.Zip(fast), p => Assert.True(p.First >= p.Second, $"{p.First} s at {tempi[0]}, {p.Second} s at {tempi[1]}"));

        List<Rational> Lengths(int tempo)
        {
            // One note an akshara at the first speed, so that a breath never takes a whole note.
            var score = (drill with { Delivery = Delivery.Continuous, Speeds = [Speed.First], Tempo = Rational.Min(tempo, 110) }).ToScore();
            var section = score.Sections[0];
            var breaths = section.Lines.AsSpan()[..^1].ToArray().Select(line =>
            {
                var length = new Rational(1, 2) * section.Tempo / 60;
                var note = line.FirstNote + line.NoteCount - 1;
                return new Breath(section.Notes[note + 1].Onset - length, length, note);
            }).ToValueList();
            return [.. BreathSpan.Of(score.WithBreaths(0, breaths), new Rational(1, 2)).Select(s => s.Seconds)];
        }
    }

    [Fact]
    public void Too_many_notes_and_nobody_are_refused()
    {
        Assert.Contains("5000", Assert.Throws<ArgumentException>(() => TempoWindow.OfSpeeds(Ladder("ladder.repeat(251)"), [Voice(20)])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => TempoWindow.OfSpeeds(Ladder(), ValueList.Create<Singer>([])));
    }

    [Fact]
    public void A_window_is_about_the_lines_the_drill_was_given()
    {
        // The pattern's twenty notes need 150 to 180 (above). Its first two lines, five notes, need 37.5 for eight seconds: 38 to 180.
        var lines = Pattern.Parse("ladder.take(2)").Expand(Catalogue.Default.Read("mohanam"));
        var windows = TempoWindow.OfSpeeds(Ladder() with { Expansion = lines }, [Voice(20)]);
        Assert.Equal("38 to 180", windows[0].Intervals.Single().ToString());
    }

    [Fact]
    public void A_check_of_ones_own_closes_tempi_and_a_standard_one_can_be_left_out()
    {
        var checks = ScoreChecks.Standard.With(Slow);
        var interval = Assert.Single(TempoWindow.OfSpeeds(Ladder(), [Voice(20)], checks)[0].Intervals);
        Assert.Equal("150 to 160", interval.ToString());
        Assert.StartsWith("check at 161: line 1: faster than 160", interval.Above, StringComparison.Ordinal);
        var throatless = Assert.Single(TempoWindow.OfSpeeds(Ladder(), [Voice(20)], ScoreChecks.Standard.Without(ScoreChecks.Agility))[0].Intervals);
        Assert.Equal("150 to 400", throatless.ToString());

        static IEnumerable<Finding> Slow(Score score, Singer singer) => score.Sections[0].Tempo <= 160
            ? []
            : [new Finding("own.slow", Severity.Error, "faster than 160", "take 160") { Place = score.PlaceOf(0, score.Sections[0].Notes[0]) }];
    }

    private static string Intervals(List<int> tempi) => string.Join(
        ", ",
        tempi.Select((tempo, i) => (tempo, start: tempo - i)).GroupBy(t => t.start).Select(g => (First: g.First().tempo, Last: g.Last().tempo)).Select(g => g.First == g.Last ? $"{g.First}" : $"{g.First} to {g.Last}"));
}

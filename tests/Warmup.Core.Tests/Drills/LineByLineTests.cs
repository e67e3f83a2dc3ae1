using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Source: the rules' worked example of delivery line by line (Adi at 60: S, R, hold to 7.0, breath 7.0 to 8.0; a line that fills its
/// avartana breathes in the second half of its last svara; where a hold is asked for, one more avartana where less than one akshara and the
/// breath remain) and the rounding of breaths up to their grid, each computed here a second time.
/// </summary>
public class LineByLineTests
{
    private static Section Sung(string scale, Drill? like = null) => (like ?? Like(scale)).ToScore().Sections.Single();

    private static Drill Like(string scale) => new() { Scale = Catalogue.Default.Read(scale), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4"), Delivery = Delivery.LineByLine };

    [Fact]
    public void The_worked_example_adi_at_60()
    {
        var section = Sung("15");
        var (s, r) = (section.Notes[0], section.Notes[1]);
        Assert.Equal((new Rational(0), new Rational(1), false), (s.Onset, s.Length, s.IsHeld));
        Assert.Equal((new Rational(1), new Rational(6), true), (r.Onset, r.Length, r.IsHeld)); // R, hold to 7.0
        Assert.Equal(new Breath(7, 1, 1), section.Breaths[0]); // breath 7.0 to 8.0
        Assert.Equal(8, section.Lines[1].Onset);
        Assert.Equal(8, section.Notes[2].Onset);
    }

    [Fact]
    public void A_line_that_fills_its_avartana_breathes_in_the_second_half_of_its_last_svara()
    {
        var section = Sung("15");
        Assert.Equal([8, 8, 8, 8, 8, 8, 8], section.Lines.Select(l => (int)l.Length.Floor()));
        Assert.Equal((new Rational(48 + 7), new Rational(1, 2), false), (section.Notes[^1].Onset, section.Notes[^1].Length, section.Notes[^1].IsHeld));
        Assert.Equal(new Breath(new Rational(111, 2), new Rational(1, 2), 34), section.Breaths[^1]);
    }

    [Fact]
    public void A_hold_that_is_asked_for_takes_one_more_avartana_where_less_than_one_akshara_and_the_breath_are_left()
    {
        var section = Sung("15", Like("15") with { Delivery = Delivery.LineByLine with { FillBy = FillBy.Hold } });
        // Seven notes: the last begins at 6 and has one akshara before the breath: it fits. Eight: the last begins at 7, so it goes on to 15.
        Assert.Equal([8, 8, 8, 8, 8, 8, 16], section.Lines.Select(l => (int)l.Length.Floor()));
        var last = section.Notes[^1];
        Assert.Equal((new Rational(48 + 7), new Rational(8)), (last.Onset, last.Length));
        Assert.Equal(new Breath(63, 1, 34), section.Breaths[^1]);
        var seventh = section.Notes[section.Lines[6].FirstNote - 1];
        Assert.Equal((new Rational(46), new Rational(1)), (seventh.Onset, seventh.Length));
        Assert.Equal(64, section.Length);
        Assert.Equal([true, true, true, true, true, true, true, false], section.Measures.Select(m => m.IsLineStart));
        Assert.Equal(7, section.Breaths.Count);
    }

    [Theory]
    [InlineData(60, 1, 24, 24)]
    [InlineData(61, 1, 25, 24)] // 24.4 up
    [InlineData(72, 1, 29, 24)] // 28.8 up
    [InlineData(145, 2, 29, 24)] // 72.5: exactly 29
    [InlineData(30, 1, 12, 24)]
    [InlineData(50, 1, 20, 24)]
    [InlineData(400, 1, 160, 24)]
    [InlineData(60, 1, 2, 2)]
    [InlineData(61, 1, 3, 2)] // 2.03 halves up
    [InlineData(72, 1, 3, 2)] // 2.4 up
    [InlineData(100, 1, 4, 2)] // 3.33 up
    [InlineData(61, 1, 2, 1)] // 1.02 up
    [InlineData(72, 1, 5, 4)] // 4.8 up
    public void A_breath_of_one_second_is_rounded_up_to_its_grid(int n, int d, int steps, int grid)
    {
        var delivery = Delivery.LineByLine with { BreathGrid = grid, FillBy = FillBy.Hold };
        Assert.Equal(new Rational(steps, grid), delivery.BreathAksharas(new Rational(n, d)));
        var section = Sung("15", Like("15") with { Tempo = new Rational(n, d), Delivery = delivery });
        Assert.All(section.Breaths, b => Assert.Equal(new Rational(steps, grid), b.Length));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(25)]
    public void A_grid_that_does_not_divide_24_is_refused(int grid) =>
        Assert.Contains("24", Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { BreathGrid = grid }).Message, StringComparison.Ordinal);

    [Fact]
    public void Breaths_are_rounded_up_to_half_an_akshara_unless_another_grid_is_wanted() => Assert.Equal(2, Delivery.LineByLine.BreathGrid);

    [Property(Arbitrary = [typeof(Arbitraries)], MaxTest = 200)]
    public void Every_line_ends_with_a_hold_and_a_breath_on_the_avartana(Drill drill)
    {
        var delivery = (drill.Delivery.IsLineByLine ? drill.Delivery : Delivery.LineByLine) with { FillBy = FillBy.Hold };
        if (!(drill with { Delivery = delivery, Meter = Meter.Adi }).TryToScore(out var score, out _))
        {
            return;
        }

        var section = score!.Sections[0];
        var exact = delivery.BreathSeconds * drill.Tempo.Start / 60;
        var breath = new Rational((exact * delivery.BreathGrid).Ceiling(), delivery.BreathGrid);
        Assert.Equal(section.Lines.Count, section.Breaths.Count);
        // A hold is never shorter than the note would be without it.
        var hold = Rational.Max(delivery.LeastHold, drill.Speeds[0].Unit);
        var start = Rational.Zero;
        for (var i = 0; i < section.Lines.Count; i++)
        {
            var line = section.Lines[i];
            Assert.Equal(start, line.Onset);
            var onset = start + (drill.Speeds[0].Unit * (line.NoteCount - 1));
            // The first avartana's end that leaves the least hold and the breath.
            var end = new Rational(((onset + hold + breath) / 8).Ceiling()) * 8;
            var last = section.Notes[line.FirstNote + line.NoteCount - 1];
            Assert.Equal((onset, end - breath - onset), (last.Onset, last.Length));
            Assert.Equal(new Breath(end - breath, breath, line.FirstNote + line.NoteCount - 1), section.Breaths[i]);
            Assert.Equal(end - start, line.Length);
            start = end;
        }

        Assert.Equal(start, section.Length);
        Assert.All(section.Breaths, b => Assert.True(section.SecondsAt(b.Length) >= delivery.BreathSeconds));
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void In_free_rhythm_the_hold_is_the_least_and_the_breath_ends_on_an_akshara(Drill drill)
    {
        if (!(drill with { Delivery = Delivery.LineByLine, Meter = Meter.Free }).TryToScore(out var score, out _))
        {
            return;
        }

        var section = score!.Sections[0];
        foreach (var (line, breath) in section.Lines.Zip(section.Breaths))
        {
            var last = section.Notes[line.FirstNote + line.NoteCount - 1];
            Assert.Equal(last.Onset + last.Length, breath.Onset);
            Assert.Equal(line.Onset + (drill.Speeds[0].Unit * (line.NoteCount - 1)), last.Onset);
            Assert.True(last.Length >= 1);
            if (drill.Speeds[0].Unit <= 1)
            {
                Assert.Equal(1, last.Length);
            }

            Assert.True((breath.Onset + breath.Length).IsInteger);
            Assert.True(breath.Length >= Delivery.LineByLine.BreathAksharas(drill.Tempo.Start));
            Assert.True(breath.Length < Delivery.LineByLine.BreathAksharas(drill.Tempo.Start) + 1);
            Assert.Equal(line.Onset + line.Length, breath.Onset + breath.Length);
        }
    }

    [Fact]
    public void Free_rhythm_has_no_avartanas_to_fill()
    {
        var section = (Like("mohanam") with { Meter = Meter.Free, Delivery = Delivery.Continuous }).ToScore().Sections[0];
        Assert.Equal(20, section.Length);
        Assert.Equal([2, 3, 4, 5, 6], section.Measures.Select(m => (int)m.Length.Floor()));
        Assert.All(section.Measures, m => Assert.True(m.IsLineStart));
    }

    [Theory]
    [InlineData("0.1")]
    [InlineData("10.1")]
    [InlineData("0")]
    [InlineData("-1")]
    public void A_breath_out_of_range_is_refused_with_the_range(string seconds)
    {
        Assert.True(Rational.TryParse(seconds, out var value, out _));
        var message = Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { BreathSeconds = value }).Message;
        Assert.Contains("10", message, StringComparison.Ordinal);
        Assert.Contains(value.ToString(), message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 5)]
    [InlineData(65, 1)]
    [InlineData(-1, 1)]
    public void A_hold_out_of_range_is_refused_with_the_range(int n, int d) =>
        Assert.Contains("64", Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { LeastHold = new Rational(n, d) }).Message, StringComparison.Ordinal);
}

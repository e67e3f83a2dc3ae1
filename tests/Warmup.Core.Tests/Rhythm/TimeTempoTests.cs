using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>Tempo ramps and the count-in; seconds are summed here note by note, independently of the library.</summary>
public class TimeTempoTests
{
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") };

    [Theory]
    [InlineData(60, 5, 75, "60 65 70 75")]
    [InlineData(60, 10, 75, "60 70 75")]
    [InlineData(60, 20, 60, "60")]
    [InlineData(60, 20, 90, "60 80 90")]
    [InlineData(10, 390, 400, "10 400")] // the widest bounds
    public void A_ramp_goes_by_equal_steps_up_to_its_ceiling(int start, int step, int ceiling, string tempi)
    {
        var ramp = new TempoRamp(start, step, ceiling);
        Assert.Equal(tempi, string.Join(' ', Enumerable.Range(0, ramp.Rounds).Select(ramp.At)));
        Assert.Equal(ceiling, ramp.At(ramp.Rounds + 5));
        var section = (Mohanam with { Tempo = ramp }).ToScore().Sections[0];
        Assert.Equal(ramp.Rounds, section.Rounds);
        Assert.Equal(tempi, string.Join(' ', Enumerable.Range(0, section.Rounds).Select(r => section.TempoAt(20 * r))));
    }

    [Theory]
    [InlineData("60", 60, 0, 60)]
    [InlineData(" 72 ", 72, 0, 72)]
    [InlineData("60 to 90 by 5", 60, 5, 90)]
    [InlineData("60 TO 60 BY 1", 60, 1, 60)]
    public void A_tempo_or_a_ramp_is_read_as_people_write_it(string text, int start, int step, int ceiling)
    {
        Assert.True(TempoRamp.TryParse(text, out var ramp, out var error), error?.ToString());
        Assert.Equal((start, step, ceiling), (ramp.Start, ramp.Step, ramp.Ceiling));
    }

    [Theory]
    [InlineData("", 1, "not ''")]
    [InlineData("9", 1, "between 10 and 400")]
    [InlineData("60 to 90", 9, "needs its step")]
    [InlineData("60 to 50 by 5", 7, "between 60 and 400")]
    [InlineData("60 to  401 by 5", 8, "not '401'")]
    [InlineData("60 to 90 by 1/8", 13, "between 1/4 and 390")]
    [InlineData("60 to by 5", 7, "the ceiling of a ramp")]
    [InlineData(" to 90 by 5", 1, "the start of a ramp")]
    [InlineData("60 to 90 by", 12, "needs its step")]
    [InlineData("60 to 90 by x", 13, "the step of a ramp must be a number between 1/4 and 390 aksharas a minute, not 'x'")]
    [InlineData("60 to 90 by 391", 13, "not '391'")]
    [InlineData("9 to 90 by 5", 1, "the start of a ramp must be a number between 10 and 400")]
    [InlineData("401", 1, "the tempo must be a number between 10 and 400 aksharas a minute, not '401'")]
    public void What_is_no_ramp_is_refused_with_its_place(string text, int column, string message)
    {
        Assert.False(TempoRamp.TryParse(text, out _, out var error));
        Assert.Equal((1, column), (error.Line, error.Column));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        Assert.False(TempoRamp.TryParse(new string('6', 1_000_000), out _, out error));
        Assert.Contains("200 characters", error.Message, StringComparison.Ordinal);
    }

    [Property]
    public bool A_ramp_is_read_back_from_what_it_writes(byte start, byte step, byte rise)
    {
        var from = new Rational(40 + start, 4);
        var ramp = new TempoRamp(from, new Rational(1 + step, 4), from + new Rational(rise, 3));
        return TempoRamp.TryParse(ramp.ToString(), out var read, out _) && read == ramp;
    }

    [Fact]
    public void Each_time_through_begins_a_tempo_where_it_begins_even_inside_an_avartana()
    {
        var section = (Mohanam with { Tempo = new TempoRamp(60, 15, 90) }).ToScore().Sections[0];
        Assert.Equal(60, section.Tempo);

        // 20 aksharas at 60 take 20 s, 20 at 75 take 16 s.
        Assert.Equal([(20, 75, 20), (40, 90, 36)], section.TempoChanges.ConvertAll(c => ((int)c.Onset.Floor(), (int)c.Tempo.Floor(), (int)c.Seconds.Floor())));
        Assert.All(section.TempoChanges, c => Assert.True(c.Onset.IsInteger && c.Tempo.IsInteger && c.Seconds.IsInteger));
        Assert.Equal(60, section.TempoAt(new Rational(39, 2) / 1));
        Assert.Equal(75, section.TempoAt(20));

        // The last 20 at 90 take 40/3 s, and the 4 that are missing from the last avartana 8/3 s.
        Assert.Equal(36 + new Rational(40, 3) + new Rational(8, 3), section.Seconds);
        Assert.Equal(section.Seconds, (Mohanam with { Tempo = new TempoRamp(60, 15, 90) }).ToScore().Seconds);
    }

    [Fact]
    public void A_breath_in_seconds_has_more_aksharas_at_a_faster_tempo()
    {
        var section = (Mohanam with { Tempo = new TempoRamp(60, 60, 120), Delivery = Delivery.LineByLine }).ToScore().Sections[0];
        Assert.Equal([1, 2], ((int[])[0, 5]).Select(b => section.Breaths[b].Length));
    }

    [Theory]
    [InlineData(60, 0, 90, "never reach its ceiling")]
    [InlineData(60, -5, 90, "between 1/4 and 390, not -5")]
    [InlineData(60, 5, 50, "the ceiling of a ramp must be between 60 and 400, not 50")]
    [InlineData(5, 5, 90, "the start of a ramp must be between 10 and 400, not 5")]
    [InlineData(60, 5, 500, "not 500")]
    public void A_ramp_that_never_ends_or_leaves_the_bounds_is_refused(int start, int step, int ceiling, string message) =>
        Assert.Contains(message, Assert.Throws<ArgumentOutOfRangeException>(() => new TempoRamp(start, step, ceiling)).Message, StringComparison.Ordinal);

    [Fact]
    public void The_bounds_of_tempi_and_steps_are_allowed_themselves()
    {
        Assert.Equal((10, 400), (TempoRamp.Constant(10).Start, TempoRamp.Constant(400).Ceiling));
        Assert.Throws<ArgumentOutOfRangeException>(() => TempoRamp.Constant(new Rational(99, 10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => TempoRamp.Constant(new Rational(4_001, 10)));
        Assert.Equal(5, new TempoRamp(60, new Rational(1, 4), 61).Rounds);
        Assert.Throws<ArgumentOutOfRangeException>(() => new TempoRamp(60, new Rational(6, 25), 61));
        Assert.DoesNotContain("never reach", Assert.Throws<ArgumentOutOfRangeException>(() => new TempoRamp(60, new Rational(1, 8), 61)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new TempoRamp(10, 391, 400));
        Assert.Equal("10 to 400 by 390", new TempoRamp(10, 390, 400).ToString());
        Assert.Equal("60", TempoRamp.Constant(60).ToString());
        Assert.Equal(1, TempoRamp.Constant(60).Rounds);
        Assert.Throws<ArgumentOutOfRangeException>(() => TempoRamp.Constant(60).At(-1));
        Assert.Equal((10, 400), (TempoRamp.Parse("10").Start, TempoRamp.Parse("400").Start));
    }

    [Fact]
    public void A_constant_tempo_is_the_ramp_without_steps()
    {
        Assert.Equal(Mohanam with { Tempo = 72 }, Mohanam with { Tempo = TempoRamp.Constant(72) });
        Assert.True((Mohanam with { Tempo = 72 }).ToScore().Sections[0].TempoChanges.IsEmpty);
    }

    [Fact]
    public void A_count_in_is_whole_avartanas_before_the_first_line()
    {
        var section = (Mohanam with { CountIn = 2, Meter = Meter.Parse("khanda chapu") }).ToScore().Sections[0];
        Assert.Equal((10, 10), (section.CountIn, section.Notes[0].Onset));
        Assert.Equal([0, 5, 10], section.Measures.Take(3).Select(m => m.Onset));
        Assert.Equal([false, false, true], section.Measures.Take(3).Select(m => m.IsLineStart));

        // 10 of count-in and 20 notes are 30: six avartanas of five.
        Assert.Equal((30, true), (section.End, section.IsLastAvartanaFull));
    }

    /// <summary>A sum over many tempi does not fit 64 bits exactly, so each change may be half a millionth of a second off, and no more.</summary>
    [Property(MaxTest = 100)]
    public Property Seconds_are_the_sum_of_the_notes_at_their_tempi() => Prop.ForAll(
        (from start in Gen.Choose(30, 90)
         from step in Gen.Choose(1, 20)
         from span in Gen.Choose(0, 120)
         from kalam in Gen.Choose(1, 3)
         from countIn in Gen.Choose(0, 1)
         select Mohanam with { Tempo = new TempoRamp(start, step, start + span), Speeds = [new Speed(kalam)], CountIn = countIn }).ToArbitrary(),
        drill =>
        {
            var section = drill.ToScore().Sections[0];
            var seconds = section.CountIn.ToDouble() * 60 / drill.Tempo.Start.ToDouble();
            foreach (var note in section.Notes)
            {
                Assert.Equal(seconds, section.SecondsAt(note.Onset).ToDouble(), 1e-6 * section.Rounds);
                Assert.Equal(note.Onset, section.AksharasAt(section.SecondsAt(note.Onset)));
                seconds += note.Length.ToDouble() * 60 / drill.Tempo.At(section.Lines[note.LineIndex].Round).ToDouble();
            }
        });
}

namespace Warmup.Tests;

/// <summary>
/// Eduppu, the place after the beat at which a line begins: common practice. Onsets are written out by hand for a tala of eight aksharas.
/// </summary>
public class EduppuTests
{
    private static readonly Drill Drill = new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Tonic = Tonic.Parse("C4"), Pattern = Pattern.Parse("[S R G / R G M P]"),
    };

    private static readonly Delivery Filled = Delivery.Continuous with { Fill = Fill.Avartana };

    [Theory]
    [InlineData("1/4")]
    [InlineData("1/2")]
    [InlineData("3/4")]
    [InlineData("1")]
    public void Lines_that_are_filled_begin_on_the_beat_and_are_sung_so_much_later(string text)
    {
        var eduppu = Rational.Parse(text);
        foreach (var delivery in (Delivery[])[Delivery.LineByLine, Filled, Filled with { FillBy = FillBy.Rest }])
        {
            var section = (Drill with { Eduppu = eduppu, Delivery = delivery, CountIn = 1, Repetitions = 2 }).ToScore().Sections[0];
            Assert.Equal([8, 16, 24, 32], section.Lines.Select(l => l.Onset));
            Assert.Equal(section.Lines.Select(l => l.Onset + eduppu), section.Lines.Select(l => section.Notes[l.FirstNote].Onset));
            Assert.Equal(eduppu, section.Eduppu);
            Assert.Equal((40, true), (section.Length, section.IsLastAvartanaFull));
            Assert.Equal(section.Measures.Skip(1).Select(m => m.Onset), section.Lines.Select(l => l.Onset));
        }
    }

    [Fact]
    public void Lines_that_run_on_begin_so_once()
    {
        var section = (Drill with { Pattern = Pattern.Run, Eduppu = new Rational(1, 2), Repetitions = 2 }).ToScore().Sections[0];
        Assert.Equal(Enumerable.Range(0, 16).Select(n => n + new Rational(1, 2)), section.Notes.Select(n => n.Onset));
        Assert.Equal([new Rational(0), new Rational(17, 2)], section.Lines.Select(l => l.Onset));
        Assert.Null(section.RoundsToFirstBeat);
        Assert.Equal(24, section.Length);
    }

    [Fact]
    public void Lines_that_run_on_end_on_the_first_beat_where_some_number_of_times_does()
    {
        // A quarter of an akshara and lines of 31 quarters: one time ends after 32 of them, on the first beat.
        var pattern = Pattern.Parse("[S R G M P D N].hold(3)").Stretch(31, 40);
        var section = (Drill with { Pattern = pattern, Eduppu = new Rational(1, 4) }).ToScore().Sections[0];
        Assert.Equal(new Rational(31, 4), section.End - new Rational(1, 4));
        Assert.Equal((1, true), (section.RoundsToFirstBeat, section.IsLastAvartanaFull));
    }

    [Fact]
    public void A_full_line_that_is_pushed_over_the_end_is_not_held_through_the_rest_of_the_avartana()
    {
        var section = (Drill with { Pattern = Pattern.Run, Eduppu = new Rational(1, 2), Delivery = Delivery.LineByLine }).ToScore().Sections[0];
        Assert.Equal((new Rational(15, 2), new Rational(17, 2)), (section.Notes[^1].Onset, section.Notes[^1].End));
        Assert.Equal((new Rational(17, 2), 1, 16), (section.Breaths[0].Onset, section.Breaths[0].Length, section.Length));
    }

    [Fact]
    public void On_the_beat_is_the_default()
    {
        Assert.Equal(Drill.ToScore(), (Drill with { Eduppu = 0 }).ToScore());
        Assert.Equal(0, Drill.ToScore().Sections[0].Eduppu);
    }

    [Theory]
    [InlineData("1/3")]
    [InlineData("-1/4")]
    [InlineData("5/4")]
    public void Other_places_are_refused(string text) => Assert.Throws<ArgumentOutOfRangeException>(() => Drill with { Eduppu = Rational.Parse(text) });

    [Fact]
    public void Free_rhythm_has_no_beat_to_begin_after()
    {
        Assert.False((Drill with { Meter = Meter.Free, Eduppu = 1 }).TryToScore(out _, out var refusal));
        Assert.Contains("free rhythm", refusal!.Message, StringComparison.Ordinal);
    }
}

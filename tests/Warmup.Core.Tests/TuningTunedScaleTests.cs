namespace Warmup.Tests;

/// <summary>A whole scale tuned. Expectations worked out by hand from the just ratios (the table of svaras) on a tonic of 240 Hz.</summary>
public class TuningTunedScaleTests
{
    [Fact]
    public void Mohanam_in_just_intonation()
    {
        var tuned = TunedScale.Of(Catalogue.Default.Find("Mohanam")!.Scale, Tonic.FromHz(240), Tuning.Just);
        Assert.Equal("S R2 G3 P D2 S'", string.Join(' ', tuned.Notes.Select(n => n.Tone)));
        Assert.Equal("1/1 9/8 5/4 3/2 5/3 2/1", string.Join(' ', tuned.Notes.Select(n => n.Interval)));
        Assert.Equal([240, 270, 300, 360, 400, 480], tuned.Notes.Select(n => n.Hz).Select(hz => Math.Round(hz, 9)));
        Assert.Equal("P_ S S S_", string.Join(' ', tuned.Drone.Strings.Select(s => s.Pitch.Tone)));
        Assert.All(tuned.Notes.ToArray(), n => Assert.True(n.Beat.LocksIn, n.Tone.ToString()));

        // Each meets the string with the lowest partials: R2 the low P (9/8 over 3/4 is 3/2), G3 the low S (5/4 over 1/2 is 5/2),
        // P the low P (an octave), D2 the low P (20/9 is no simple ratio) or S (5/3).
        Assert.Equal("1/1 3/2 5/2 2/1 5/3 2/1", string.Join(' ', tuned.Notes.Select(n => n.AboveString)));
    }

    [Fact]
    public void Intervals_too_long_for_a_fraction_go_on_in_cents()
    {
        var huge = Interval.FromRatio(new Rational(4_000_000_007, 3_000_000_019));
        Assert.Null((huge + huge).Ratio);
        Assert.Equal(2 * huge.Cents, (huge + huge).Cents);
        Assert.Equal(new Rational(1, 8), Tuning.Just.IntervalOf(ScaleTone.Parse("S___")).Ratio);
        Assert.Equal(3600, Tuning.Just.IntervalOf(ScaleTone.Parse("S'''")).Cents, 1e-9);
    }

    [Theory]
    [InlineData("S R2 G3 P", "S R2 G3 P")]
    [InlineData("mohanam", "S R2 G3 P D2")]
    [InlineData("1", "S R1 G1 M1 P D1 N1")] // a bare number is a parent scale
    [InlineData("Bilahari", "S R2 G3 M1 P D2 N3")]
    public void Notes_to_search_with_are_written_out_or_a_scale_s(string text, string notes)
    {
        Assert.True(Catalogue.Default.TryReadNotes(text, out var degrees, out _));
        Assert.Equal(notes, string.Join(' ', degrees));
    }

    [Theory]
    [InlineData("mohanim", "Mohanam")]
    [InlineData("S R2 X", "'X'")]
    [InlineData("", "empty")]
    public void Neither_notes_nor_a_scale_is_refused(string text, string reason)
    {
        Assert.False(Catalogue.Default.TryReadNotes(text, out _, out var error));
        Assert.Contains(reason, error!.Message, StringComparison.Ordinal);
    }
}

namespace Warmup.Cli.Tests;

/// <summary>Source: semitones counted on the keyboard. The ladder of Mohanam on C4 reaches from C4 to C5.</summary>
public class RangeBarsTests
{
    private static readonly Score Mohanam =
        new Drill { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4") }.ToScore();

    private static Singer Voice(string alias, int low, int high) => new(alias, NoteName.FromMidi(low), NoteName.FromMidi(high), 20);

    [Fact]
    public void Each_singer_has_a_bar_with_the_drill_in_the_octave_that_suits_them()
    {
        // A3 to E5 holds C4 to C5; A2 to E4 holds C3 to C4; C4 to A4 ends three semitones below C5, C5 to F6 holds C5 to C6.
        var bars = RangeBars.Of(Mohanam, [Voice("Wren", 57, 76), Voice("Badger", 45, 64), Voice("Robin", 60, 69), Voice("Finch", 72, 89)]);
        Assert.Equal(["Wren", "Badger", "Robin", "Finch"], bars.Select(b => b.Band.Name));
        Assert.Equal([0, -1, 0, 1], bars.Select(b => b.Octaves));
        Assert.Equal(["fits", "fits", "3 semitones too high", "fits"], bars.Select(b => string.Join(' ', b.Verdict)));
        Assert.Equal([false, false, true, false], bars.Select(b => b.IsTooHigh));
        Assert.All(bars, b => Assert.False(b.IsTooLow));
    }

    [Fact]
    public void A_range_that_is_too_narrow_says_so()
    {
        // An octave does not fit into three semitones, whatever the octave.
        var bar = Assert.Single(RangeBars.Of(Mohanam, [Voice("Heron", 64, 67)]));
        Assert.True(bar.IsTooHigh && bar.IsTooLow);
        Assert.Equal(["too wide"], bar.Verdict);
    }

    [Fact]
    public void Full_and_assumed_ranges_are_handed_on()
    {
        var full = Voice("Wren", 57, 76) with { FullLow = NoteName.FromMidi(52), FullHigh = NoteName.FromMidi(81) };
        var assumed = Singer.FromVoice("Robin", VoiceTypes.Find("child 8-9")!, 12);
        var bars = RangeBars.Of(Mohanam, [full, assumed]);
        Assert.Equal((52, 81), (bars[0].FullLow!.Value.Midi, bars[0].FullHigh!.Value.Midi));
        Assert.False(bars[0].Band.IsAssumed);
        Assert.True(bars[1].Band.IsAssumed);
    }
}

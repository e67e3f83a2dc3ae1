using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: the words of the rule (a fifth of the comfortable range at either end, out is more than 50 cents beyond), counted here from Hz.</summary>
[Properties(Arbitrary = [typeof(FitArbitraries)], MaxTest = 300)]
public class RangeUseTests
{
    private static NoteName Note(string text) => NoteName.Parse(text);

    private static Drill Ladder(string tonic) => new() { Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Pattern = Pattern.Ladder.Drop(6), Tonic = Tonic.Parse(tonic) };

    [Fact]
    public void The_time_in_the_top_and_bottom_fifth_is_counted()
    {
        // C4 D4 E4 F4 G4 A4 B4 C5, a second each, in a range of twenty semitones C4 to G#5: the bottom fifth ends at E4, the top begins at E5.
        var use = RangeUse.Of(Ladder("C4").ToScore(), new Singer("a", Note("C4"), Note("G#5"), 20));
        Assert.Equal((8, 0, 3, 0), (use.Seconds, use.TopSeconds, use.BottomSeconds, use.OutsideSeconds));
        var line = Assert.Single(use.Lines.ToArray());
        Assert.Equal(("C4", "C5"), (line.Lowest.ToString(), line.Highest.ToString()));
    }

    [Fact]
    public void The_lowest_and_the_highest_note_of_a_line_may_stand_anywhere_in_it()
    {
        var drill = Ladder("C4") with { Pattern = Pattern.Parse("[G S S' M P]") };
        var line = Assert.Single(RangeUse.Of(drill.ToScore(), new Singer("a", Note("C4"), Note("G#5"), 20)).Lines.ToArray());
        Assert.Equal(("C4", "C5"), (line.Lowest.ToString(), line.Highest.ToString()));
    }

    [Fact]
    public void Every_note_outside_is_named_with_how_far()
    {
        // Up to A4 only: B4 two, C5 three semitones above; below D4: C4 two below.
        var use = RangeUse.Of(Ladder("C4").ToScore(), new Singer("a", Note("D4"), Note("A4"), 20));
        Assert.Equal(
            [("C4", -2, 0), ("B4", 2, 6), ("C5", 3, 7)],
            use.Outside.Select(n => (n.Name.ToString(), (int)n.Semitones.Numerator, (int)n.Place.Beat!.Value.Numerator)));
        Assert.Equal(3, use.OutsideSeconds);
    }

    [Theory]
    [InlineData(1150, 0)]
    [InlineData(1151, 1)]
    [InlineData(1149, 0)]
    public void A_note_exactly_50_cents_beyond_is_still_inside(int cents, int outside)
    {
        // S to N3, in a tuning of one's own that puts N3 above the range, which ends at B4, 1,100 cents above C4.
        var drill = Ladder("C4") with { Pattern = Pattern.Ladder.Take(6).Drop(5), Tuning = Tuning.Equal.With(Svara("N3"), Interval.FromCents(cents)) };
        var score = drill.ToScore();
        var use = RangeUse.Of(score, new Singer("a", Note("C4"), Note("B4"), 20));
        Assert.Equal(outside, use.Outside.Count);
    }

    private static Degree Svara(string text) => Degree.Parse(text);

    [Property]
    public void The_times_are_those_counted_from_frequencies(Drill drill, Singer singer)
    {
        var score = drill.ToScore();
        var use = RangeUse.Of(score, singer);
        var section = score.Sections[0];
        double all = 0, top = 0, bottom = 0, outside = 0;
        var (low, high) = (100.0 * singer.Low.Midi, 100.0 * singer.High.Midi);
        foreach (var note in section.Notes)
        {
            var height = 6900 + (1200 * Math.Log2(section.PitchOf(note).Hz / 440));
            var seconds = note.Length.ToDouble() * 60 / section.Tempo.ToDouble();
            all += seconds;
            top += height >= high - ((high - low) / 5) - 1e-4 ? seconds : 0;
            bottom += height <= low + ((high - low) / 5) + 1e-4 ? seconds : 0;
            outside += height > high + 50.001 || height < low - 50.001 ? seconds : 0;
        }

        Assert.Equal(all, use.Seconds.ToDouble(), 1e-9);
        Assert.Equal(top, use.TopSeconds.ToDouble(), 1e-9);
        Assert.Equal(bottom, use.BottomSeconds.ToDouble(), 1e-9);
        Assert.Equal(outside, use.OutsideSeconds.ToDouble(), 1e-9);
        Assert.Equal(use.Outside.IsEmpty, !score.Check(singer).Any(f => f.Code is VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange));
    }

    [Property]
    public void Moving_drill_and_singer_together_changes_no_time(Drill drill, Singer singer)
    {
        var before = RangeUse.Of(drill.ToScore(), singer);
        var after = RangeUse.Of((drill with { Tonic = Tonic.FromMidi(drill.Tonic.Midi + 4) }).ToScore(), singer.Moved(4));
        Assert.Equal(
            before.Lines.Select(l => (l.Place, l.Seconds, l.TopSeconds, l.BottomSeconds, l.OutsideSeconds)),
            after.Lines.Select(l => (l.Place, l.Seconds, l.TopSeconds, l.BottomSeconds, l.OutsideSeconds)));
        Assert.Equal(before.Outside.Select(n => (n.Place, n.Semitones)), after.Outside.Select(n => (n.Place, n.Semitones)));
    }
}

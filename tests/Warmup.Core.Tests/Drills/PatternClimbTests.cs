namespace Warmup.Tests;

/// <summary>The semitone climb of choirs: common practice. Notes and tonics are written out by hand.</summary>
public class PatternClimbTests
{
    private static readonly Drill Drill = new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Tonic = Tonic.Parse("C4"), Pattern = Pattern.Parse("run.notes(1 5).there-and-back.sung(a)"), Meter = Meter.Free,
    };

    [Fact]
    public void The_tonic_climbs_and_comes_back_with_a_cue_between()
    {
        var score = new Climb { Drill = Drill, Semitones = 2 }.ToScore();
        Assert.Equal([60, 61, 61, 62, 62, 61, 61, 60, 60], score.Sections.ConvertAll(s => s.Tonic.Midi).ToArray()); // drill, cue, drill, cue, ...
        Assert.Equal([9, 1, 9, 1, 9, 1, 9, 1, 9], score.Sections.ConvertAll(s => s.Notes.Count).ToArray());
        Assert.All(score.Sections.ToArray(), s => Assert.Equal(s.Tonic.Midi, s.PitchOf(s.Notes[0]).Midi));
        Assert.Contains("cue", score.Sections[1].Title, StringComparison.Ordinal);
        Assert.Null(score.Drone);
        Assert.Equal("a", score.Sections[0].Sung()[0]);
    }

    [Fact]
    public void It_can_go_one_way_in_larger_steps_and_without_a_cue()
    {
        var climb = new Climb { Drill = Drill, Semitones = 5, Step = 2, IsUpAndDown = false, Cue = null };
        Assert.Equal([60, 62, 64], climb.Tonics.ConvertAll(t => t.Midi).ToArray());
        Assert.Equal([60, 62, 64], climb.ToScore().Sections.ConvertAll(s => s.Tonic.Midi).ToArray());
    }

    [Fact]
    public void Each_round_is_named_by_its_tonic()
    {
        var score = new Climb { Drill = Drill with { Title = "Five notes" }, Semitones = 2, Cue = null }.ToScore();
        Assert.Equal(["Five notes on C4", "Five notes on Db4", "Five notes on D4", "Five notes on Db4", "Five notes on C4"], score.Sections.Select(s => s.Title));
        Assert.Equal("Five notes", score.Title);
        Assert.All(score.Sections, s => Assert.EndsWith($" on {s.TonicName}", s.Title, StringComparison.Ordinal));
    }

    [Fact]
    public void The_cue_is_heard_once_and_the_beat_counted_in_once_whatever_the_drill()
    {
        var drill = Drill with
        {
            Meter = Meter.Adi, CountIn = 1, Repetitions = 3, Speeds = [Speed.Second, Speed.Third], Tempo = new TempoRamp(60, 10, 80), Delivery = Delivery.LineByLine,
        };
        var score = new Climb { Drill = drill, Semitones = 1, Cue = Climb.BrokenChord }.ToScore();
        Assert.Equal([6 * 9, 5, 6 * 9, 5, 6 * 9], score.Sections.Select(s => s.Notes.Count));
        Assert.Equal([8, 0, 0, 0, 0], score.Sections.Select(s => s.CountIn));
        Assert.All(score.Sections.Where(s => s.Title.StartsWith("cue", StringComparison.Ordinal)), s =>
        {
            Assert.Equal([0, 4, 7, 4, 0], s.Notes.Select(n => s.PitchOf(n).Midi - s.Tonic.Midi));
            Assert.Equal((60, Speed.First, 8), (s.Tempo, s.Speed, s.Length));
        });
    }

    [Fact]
    public void A_long_title_keeps_the_tonic()
    {
        var score = new Climb { Drill = Drill with { Title = new string('x', Warmup.Drill.LongestTitle) }, Semitones = 1 }.ToScore();
        Assert.All(score.Sections, s => Assert.InRange(s.Title.Length, 1, Warmup.Drill.LongestTitle));
        Assert.EndsWith(" on C4", score.Sections[0].Title, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(25)]
    public void A_climb_out_of_range_is_refused(int semitones) => Assert.Contains(
        $"between 1 and 24, not {semitones}", Assert.Throws<ArgumentOutOfRangeException>(() => new Climb { Drill = Drill, Semitones = semitones }).Message, StringComparison.Ordinal);
}

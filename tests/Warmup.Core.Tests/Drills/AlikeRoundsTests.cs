using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>Source: each time through the drill written out with times from its own beginning, and compared as text.</summary>
public class AlikeRoundsTests
{
    private static Drill Drill => new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder.Take(2), Tonic = Tonic.Parse("G3"), Tempo = 60, Repetitions = 4 };

    [Fact]
    public void Times_that_begin_on_the_first_beat_are_alike()
    {
        // S R / S R G line by line in Adi: two avartanas.
        var section = (Drill with { Delivery = Delivery.LineByLine }).ToScore().Sections[0];
        Assert.Equal([4, 3, 2, 1], Enumerable.Range(0, 4).Select(section.AlikeFrom));
        Assert.Throws<ArgumentOutOfRangeException>(() => section.AlikeFrom(4));
        Assert.Throws<ArgumentOutOfRangeException>(() => section.AlikeFrom(-1));
    }

    [Fact]
    public void Times_that_begin_inside_an_avartana_or_differ_in_one_thing_are_not()
    {
        // Five aksharas: the second time begins on the sixth.
        Assert.Equal([1, 1, 1, 1], Rounds(Drill.ToScore()));
        var filled = Drill with { Delivery = Delivery.LineByLine };
        Assert.Equal([1, 1, 2, 1], Rounds((filled with { Tempo = new TempoRamp(60, 10, 80) }).ToScore()));

        // A breath in the second time alone.
        var note = filled.ToScore().Sections[0].Notes[5];
        var breathing = filled.ToScore().WithBreaths(0, [new Breath(note.Onset + new Rational(1, 2), new Rational(1, 2), 5)]);
        Assert.Equal([1, 1, 2, 1], Rounds(breathing));

        // In free rhythm there is no beat to keep to.
        Assert.Equal([4, 3, 2, 1], Rounds((Drill with { Meter = Meter.Free }).ToScore()));
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 200)]
    public void What_is_alike_reads_alike(Drill drill, byte times)
    {
        if (!(drill with { Repetitions = 1 + (times % 4) }).TryToScore(out var score, out _))
        {
            return;
        }

        var section = score.Sections[0];
        var written = Enumerable.Range(0, section.Rounds).Select(r => Written(section, r)).ToList();
        for (var round = 0; round < written.Count; round++)
        {
            Assert.Equal(written.Skip(round).TakeWhile(w => w == written[round]).Count(), section.AlikeFrom(round));
        }
    }

    private static IEnumerable<int> Rounds(Score score) => Enumerable.Range(0, score.Sections[0].Rounds).Select(score.Sections[0].AlikeFrom);

    private static string Written(Section section, int round)
    {
        var lines = section.Lines.Where(l => l.Round == round).ToList();
        var start = lines[0].Onset;
        var within = section.Meter.IsFree ? Rational.Zero : start - (section.Meter.Beats * (start / section.Meter.Beats).Floor());
        return $"from {within}: " + string.Join(" / ", lines.Select(l => $"{l.Onset - start} for {l.Length}, {l.Answer}, {l.Speed} at {section.TempoAt(l.Onset)}: " + string.Join(' ', Enumerable
            .Range(l.FirstNote, l.NoteCount)
            .Select(n => (Note: section.Notes[n], Breath: section.Breaths.Where(b => b.AfterNote == n).Select(b => $"v{b.Onset - start}-{b.Length}").SingleOrDefault()))
            .Select(n => $"{section.SyllableOf(n.Note)} {n.Note.PitchIndex} {n.Note.Onset - start} {n.Note.Length} {n.Note.IsHeld} {n.Breath}"))));
    }
}

using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: the words of the smallest change (another tonic, lines left out, folding at the octave), counted on an octave's ladder by hand.</summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class FitChangeTests
{
    private static NoteName Note(string text) => NoteName.Parse(text);

    private static Singer Voice(string low, string high) => new("Mira", Note(low), Note(high), 20);

    private static Drill Ladder(string tonic) => new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse(tonic) };

    [Fact]
    public void A_lower_tonic_comes_first()
    {
        // C4 to C5 for a voice up to A4: three semitones down is A3; D4-less lines: line 5 alone has C5; folding sings it as C4.
        var changes = RangeChange.Smallest(Ladder("C4"), Voice("G3", "A4"));
        Assert.Equal([RangeChangeKind.Tonic, RangeChangeKind.Fold, RangeChangeKind.DropLines], changes.Select(c => c.Kind));
        Assert.Contains("A3, 3 semitones lower", changes[0].Text, StringComparison.Ordinal);
        Assert.Equal((0, 1, 6), (changes[0].NotesChanged, changes[1].NotesChanged, changes[2].NotesChanged));
        Assert.Contains("line 5", changes[2].Text, StringComparison.Ordinal);
        Assert.Equal("S R / S R G / S R G P / S R G P D / S R G P D S", changes[1].Drill.Expand().ToLetters());
        Assert.Equal("S R / S R G / S R G P / S R G P D", changes[2].Drill.Expand().ToLetters());
    }

    [Fact]
    public void Where_the_drill_is_too_wide_no_tonic_is_offered()
    {
        // Seven semitones C4 to G4.
        var changes = RangeChange.Smallest(Ladder("C4"), Voice("C4", "G4"));
        Assert.DoesNotContain(changes, c => c.Kind == RangeChangeKind.Tonic);
        Assert.Contains(changes, c => c is { Kind: RangeChangeKind.DropLines, Text: "leave out lines 4-5" });
    }

    [Property(MaxTest = 500)]
    public void Every_change_that_is_offered_makes_the_drill_fit(Drill drill, Singer singer)
    {
        var changes = RangeChange.Smallest(drill, singer);
        foreach (var change in changes)
        {
            Assert.DoesNotContain(change.Drill.ToScore().Check(singer), f => f.Code is VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange);
        }

        Assert.Equal(changes.Select(c => c.NotesChanged).Order(), changes.Select(c => c.NotesChanged));
        if (!drill.ToScore().Check(singer).Any(f => f.Code is VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange))
        {
            Assert.Empty(changes);
        }
    }

    [Property(MaxTest = 300)]
    public void The_tonic_offered_is_the_nearest_that_fits_and_none_is_offered_only_where_none_fits(Drill drill, Singer singer)
    {
        bool Fits(int tonic) => tonic >= Tonic.LowestMidi && tonic <= Tonic.HighestMidi
            && (drill with { Tonic = Tonic.FromMidi(tonic) }).TryToScore(out var score, out _)
            && !score!.Check(singer).Any(f => f.Code is VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange);

        if (Fits(drill.Tonic.Midi))
        {
            return;
        }

        var nearest = Enumerable.Range(1, 72).SelectMany(d => (int[])[drill.Tonic.Midi - d, drill.Tonic.Midi + d]).Where(Fits).Select(t => (int?)t).FirstOrDefault();
        var offered = RangeChange.Smallest(drill, singer).FirstOrDefault(c => c.Kind == RangeChangeKind.Tonic)?.Drill.Tonic.Midi;
        Assert.Equal(nearest, offered);
    }

    [Fact]
    public void A_tonic_in_Hz_keeps_its_cents()
    {
        var drill = Ladder("C4") with { Tonic = Tonic.FromHz(265) };
        var moved = RangeChange.Smallest(drill, Voice("G3", "A4"))[0].Drill.Tonic;
        Assert.Equal(265 * Math.Pow(2, -3 / 12.0), moved.Hz, 1e-9);
    }

    [Fact]
    public void Lines_are_told_as_ranges() => Assert.Equal("1-3, 5", LineNumbers.ToText([5, 2, 1, 3, 2]));

    [Fact]
    public void Changes_are_made_to_the_lines_the_drill_was_given()
    {
        // Given two lines, C4 to G4 and C4 to C5, for a voice up to A4; the pattern's own are a ladder.
        var drill = Ladder("C4") with { Expansion = Pattern.Parse("[S R G P] + [S G P S']").Expand(Ladder("C4").Scale) };
        var changes = RangeChange.Smallest(drill, Voice("C4", "A4"));
        Assert.Equal([RangeChangeKind.Fold, RangeChangeKind.DropLines], changes.Select(c => c.Kind));
        Assert.Equal("S R G P / S G P S", changes[0].Drill.Expand().ToLetters());
        Assert.Equal("S R G P", changes[1].Drill.Expand().ToLetters());
        Assert.Equal(drill with { Expansion = changes[1].Drill.Expansion }, changes[1].Drill);
    }
}

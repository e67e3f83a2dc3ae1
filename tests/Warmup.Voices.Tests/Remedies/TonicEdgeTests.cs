namespace Warmup.Voices.Tests;

/// <summary>Source: tonics lie from C1 (MIDI 24) to C7 (96), the project's own setting; the changes needed are counted by hand.</summary>
public class TonicEdgeTests
{
    private static Drill Notes(string line, int tonic) => new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Pattern = Pattern.Parse(line), Tonic = Tonic.FromMidi(tonic), Tempo = 100,
    };

    private static Singer Voice(int low, int high) => new("Mira", NoteName.FromMidi(low), NoteName.FromMidi(high), 60, Experience.Advanced);

    [Theory]
    [InlineData("[P P]", 25, 24, 31, 24)] // P on 32; one semitone down it is 31
    [InlineData("[P P]", 25, 24, 30, null)] // two down would need the tonic 23
    [InlineData("[S R]", 95, 96, 108, 96)]
    [InlineData("[S R]", 95, 97, 108, null)]
    [InlineData("[P P]", 60, 24, 63, 56)]
    public void No_tonic_beyond_C1_and_C7_is_offered(string line, int tonic, int low, int high, int? offered)
    {
        var drill = Notes(line, tonic);
        var remedies = drill.Advise([Voice(low, high)]).SelectMany(a => a.Remedies).OfType<OtherTonic>();
        Assert.Equal(offered, remedies.Select(r => (int?)r.Tonic.Midi).Distinct().SingleOrDefault());
        var change = RangeChange.Smallest(drill, Voice(low, high)).SingleOrDefault(c => c.Kind == RangeChangeKind.Tonic);
        Assert.Equal(offered, change?.Drill.Tonic.Midi);
    }

    [Fact]
    public void A_change_of_one_semitone_is_told_in_the_singular_and_with_its_direction()
    {
        // Equal steps: B4 for a voice up to A#4, C4 for one from C#4.
        Assert.EndsWith(", 1 semitone lower", Text(Notes("[S N]", 60), Voice(48, 70)), StringComparison.Ordinal);
        Assert.EndsWith(", 1 semitone higher", Text(Notes("[S N]", 60), Voice(61, 90)), StringComparison.Ordinal);
        Assert.EndsWith(", 2 semitones higher", Text(Notes("[S N]", 60), Voice(62, 90)), StringComparison.Ordinal);

        static string Text(Drill drill, Singer singer) => RangeChange.Smallest(drill, singer).Single(c => c.Kind == RangeChangeKind.Tonic).Text;
    }
}

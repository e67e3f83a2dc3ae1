using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Testing.Tests;

/// <summary>What the generators promise of themselves: valid values of the kinds they name, and shrinking that ends and makes smaller.</summary>
[Properties(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 200)]
public class GeneratorTests
{
    [Property]
    public bool Svaras_are_svaras(Degree degree) => degree.IsSvara;

    [Property]
    public bool Tones_lie_within_two_octaves(ScaleTone tone) => Math.Abs(tone.Octave) <= 2;

    [Fact]
    public void Each_kind_of_scale_is_what_it_says()
    {
        Assert.All(ScaleGenerators.Symmetric.Sample(200, 30), s => Assert.True(s.IsSymmetric && !s.IsVakra, s.ToText()));
        Assert.All(ScaleGenerators.Asymmetric.Sample(200, 30), s => Assert.True(!s.IsSymmetric && !s.IsVakra, s.ToText()));
        Assert.All(ScaleGenerators.Vakra.Sample(200, 30), s => Assert.True(s.IsVakra, s.ToText()));
        Assert.All(ScaleGenerators.WithoutUpperTonic.Sample(200, 30), s => Assert.False(s.HasUpperTonic, s.ToText()));
        Assert.All(ScaleGenerators.Named.Sample(50, 30), s => Assert.NotNull(Catalogue.Default.Find(s.Name)));
    }

    [Property]
    public bool Scales_are_written_out_and_read_back(Scale scale) =>
        Scale.Parse(scale.ToText()) is var read && read.Ascent == scale.Ascent && read.Descent == scale.Descent;

    [Property]
    public bool Smaller_scales_have_fewer_entries_or_are_the_same_both_ways(Scale scale) => ScaleGenerators.Shrink(scale).All(s =>
        s.Ascent.Count + s.Descent.Count < scale.Ascent.Count + scale.Descent.Count || (s.IsSymmetric && !scale.IsSymmetric));

    [Property]
    public bool Patterns_keep_to_their_size(byte size) =>
        PatternGenerators.OfSize(1 + (size % 8)).Sample(20, 10).All(p => p.Nodes <= 1 + (size % 8));

    [Property]
    public bool Smaller_patterns_have_fewer_parts_or_smaller_numbers(Pattern pattern) =>
        PatternGenerators.Shrink(pattern).All(p => p != pattern && p.Nodes <= pattern.Nodes);

    [Property(MaxTest = 50)]
    public bool Shrinking_ends(Pattern pattern)
    {
        // The first smaller pattern each time: the way FsCheck goes when everything fails.
        for (var steps = 0; steps < 1_000; steps++)
        {
            if (PatternGenerators.Shrink(pattern).FirstOrDefault() is not { } smaller)
            {
                return true;
            }

            pattern = smaller;
        }

        return false;
    }

    [Property]
    public bool Singers_have_at_least_an_octave(Singer singer) => singer.High.Midi - singer.Low.Midi >= 12;

    [Property(MaxTest = 100)]
    public bool Scores_have_notes(Score score) => score.NoteCount > 0;

    [Property(MaxTest = 100)]
    public bool Drills_are_made_or_refused_with_a_reason(Drill drill) => drill.TryToScore(out _, out var refusal) || refusal!.Message.Length > 0;
}

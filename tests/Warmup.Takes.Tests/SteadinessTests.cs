namespace Warmup.Takes.Tests;

/// <summary>How steadily a take is sung, from what its notes are off.</summary>
public class SteadinessTests
{
    private static readonly AlignmentWeights Weights = AlignmentWeights.Default;

    [Fact]
    public void A_take_without_notes_is_as_steady_as_is_usual() =>
        Assert.Equal(new Steadiness(Weights.Deviation, Weights.Length), Of([], [], 1));

    [Fact]
    public void Many_notes_say_more_than_what_is_usual_and_few_say_less()
    {
        var few = Of([.. Even(10, 3)], [], 1).Cents;
        var many = Of([.. Even(10, 60)], [], 1).Cents;
        Assert.InRange(many, 10 * 1.4826, few);
        Assert.InRange(few, many, Weights.Deviation);
    }

    [Fact]
    public void A_few_faults_change_it_little()
    {
        var without = Of([.. Even(10, 20)], [], 1).Cents;
        Assert.Equal(without, Of([.. Even(10, 18), 150, -150], [], 1).Cents, 1e-9);
    }

    [Fact]
    public void Notes_that_keep_the_pace_are_steady_whatever_the_pace_is()
    {
        var lengths = Enumerable.Repeat(60, 20).ToArray();
        Assert.Equal(Of([], lengths, 1), Of([], [.. lengths.Select(l => 2 * l)], 2));
        Assert.True(Of([], lengths, 1).Length < Of([], [.. lengths.Select((l, i) => i % 2 == 0 ? l - 15 : l + 15)], 1).Length);
    }

    /// <summary>Offs of one size to both sides.</summary>
    private static IEnumerable<double> Even(double size, int count) => Enumerable.Range(0, count).Select(i => i % 2 == 0 ? size : -size);

    /// <summary>Notes of 0.6 s, off by some cents, and sung for some frames each.</summary>
    private static Steadiness Of(double[] cents, int[] lengths, int pace)
    {
        var notes = Enumerable.Range(0, lengths.Length + 1).Select(i => new DrillNote(i, 0, 6000, 0.6 * i, 0.6, i == 0, i == lengths.Length, 0, 0, "S")).ToArray();
        var spans = new List<SungSpan>();
        foreach (var (length, i) in lengths.Select((l, i) => (l, i)))
        {
            // Onsets keep the pace; what differs is how long the notes last.
            spans.Add(new SungSpan(i, 60 * pace * i, (60 * pace * i) + length, false));
        }

        return Steadiness.Of(cents, notes, [.. spans], PaceCurve.Of(notes, [.. spans]), Weights);
    }
}

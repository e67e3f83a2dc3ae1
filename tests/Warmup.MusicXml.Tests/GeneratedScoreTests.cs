using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.MusicXml.Tests;

/// <summary>Laws of every file over generated scores. Source: the W3C's MusicXML 4.0 documentation and the score itself.</summary>
public class GeneratedScoreTests
{
    [Fact]
    public void Generated_scores_have_several_sections_and_all_that_time_can_bring() =>
        ScoreShares.AssertEnough(Drills.Sung, 400, seed: 1, line => TestContext.Current.TestOutputHelper?.WriteLine(line));

    /// <summary>The laws leave out what notation cannot write; that is next to nothing.</summary>
    [Fact]
    public void Most_generated_scores_can_be_written()
    {
        var all = ScoreGenerators.Of(Drills.Drill, mostNotes: 250).Sample(300, new Rnd(1), 50);
        var written = all.Count(s => Drills.CanBeWritten(s.Score));
        TestContext.Current.TestOutputHelper?.WriteLine($"{written} of {all.Length} can be written");
        Assert.True(written >= 290, $"{written} of {all.Length}");
    }

    [Property(MaxTest = 200)]
    public Property A_score_is_full_whole_and_reads_back() => Prop.ForAll(Drills.Scores.ToArbitrary(), Checks.All);

    [Property(MaxTest = 40)]
    public Property Equal_scores_give_equal_bytes_by_every_way_of_writing() => Prop.ForAll(Drills.Scores.ToArbitrary(), score =>
    {
        var bytes = ReadScore.Bytes(score);
        var buffer = new System.Buffers.ArrayBufferWriter<byte>();
        new MusicXmlFormat().Write(score with { Title = new string(score.Title) }, buffer);
        Assert.True(buffer.WrittenSpan.SequenceEqual(bytes));
    });

    public static TheoryData<int, int> Speeds => new MatrixTheoryData<int, int>([3, 4, 5, 7, 9], [1, 2, 3, 4]);

    // Every breath length on the grid of 24ths with every speed, so that no leftover is met by luck alone; in a usual run a third of them, which differ from speed to speed.
    [Theory]
    [MemberData(nameof(Speeds))]
    public void Every_breath_length_can_be_written_in_every_speed(int gati, int kalam)
    {
        foreach (var meter in new[] { Meter.Adi, Meter.Free })
        {
            foreach (var hold in new[] { new Rational(1, 4), new Rational(1, 3), 1 })
            {
                foreach (var grid in WholeCheck.OneIn(3, Enumerable.Range(5, 24), gati + kalam))
                {
                    var drill = Drills.Of() with
                    {
                        Speeds = [new Speed(kalam, gati)],
                        Meter = meter,
                        Delivery = Delivery.LineByLine with { BreathSeconds = new Rational(grid, 24), BreathGrid = 24, LeastHold = hold },
                    };
                    var score = drill.ToScore();
                    var read = ReadScore.Of(score);
                    Checks.MeasuresAreFull(read);
                    Checks.ValuesAgree(read);
                    Checks.TupletsAreWhole(read);
                    Checks.ReadsBack(score, read);
                }
            }
        }
    }
}

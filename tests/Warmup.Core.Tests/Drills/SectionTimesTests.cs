using System.Numerics;

namespace Warmup.Tests;

/// <summary>Source: the lengths and breaths of the score itself, added up and searched from the first to the last.</summary>
public class SectionTimesTests
{
    private static readonly Drill Ladder = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("G3"),
        Delivery = Delivery.LineByLine,
        Tempo = 72,
    };

    [Fact]
    public void Sections_begin_where_the_ones_before_end()
    {
        // Three sections of different tempi, and a climb with its cues: exact fractions.
        var score = new Climb { Drill = Ladder with { Tempo = new Rational(187, 3) }, Semitones = 2 }.ToScore();
        Assert.True(score.Sections.Count > 4);
        var starts = score.SectionStarts();
        var sum = Rational.Zero;
        for (var s = 0; s < score.Sections.Count; s++)
        {
            Assert.Equal(sum, starts[s]);
            sum += score.Sections[s].Seconds;
        }

        Assert.Equal(score.Sections.Count, starts.Count);
        Assert.Equal(score.Seconds, sum);
        Assert.Equal([Rational.Zero], Ladder.ToScore().SectionStarts());
    }

    [Fact]
    public void Any_number_of_sections_at_different_tempi_add_up()
    {
        // Twenty prime tempi: the common denominator of their times is far beyond 64 bits.
        var score = Score.Join("tempi", PrimeTempi.Select(t => (Ladder with { Tempo = t, Delivery = Delivery.Continuous }).ToScore()));
        var starts = score.SectionStarts();
        var (top, bottom) = (BigInteger.Zero, BigInteger.One);
        for (var s = 0; s < score.Sections.Count; s++)
        {
            // Each of at most twenty sums is off by at most half a millionth of a second.
            var exact = (double)(top * 1_000_000_000 / bottom) / 1e9;
            Assert.InRange(starts[s].ToDouble() - exact, -1e-5, 1e-5);
            Assert.InRange(starts[s].Denominator, 1, 1_000_000);
            var seconds = score.Sections[s].Seconds;
            (top, bottom) = ((top * seconds.Denominator) + (bottom * seconds.Numerator), bottom * seconds.Denominator);
        }

        Assert.True(bottom / BigInteger.GreatestCommonDivisor(top, bottom) > long.MaxValue);
        Assert.Equal(starts[^1].ToDouble() + score.Sections[^1].Seconds.ToDouble(), score.Seconds.ToDouble(), 5e-7);
    }

    private static int[] PrimeTempi => [61, 67, 71, 73, 79, 83, 89, 97, 101, 103, 107, 109, 113, 127, 131, 137, 139, 149, 151, 157];

    [Fact]
    public void A_score_counts_itself_in_where_its_first_section_does()
    {
        Assert.True((Ladder with { CountIn = 1 }).ToScore().HasCountIn);
        Assert.False(Ladder.ToScore().HasCountIn);
    }

    [Theory]
    [InlineData("ladder")]
    [InlineData("[S , R - G ; / R G P , - / S]")]
    public void Each_breath_belongs_to_the_note_before_it(string pattern)
    {
        var section = (Ladder with { Pattern = Pattern.Parse(pattern), Repetitions = 3 }).ToScore().Sections[0];
        Assert.NotEmpty(section.Breaths);
        for (var n = -1; n <= section.Notes.Count; n++)
        {
            Breath? expected = null;
            foreach (var breath in section.Breaths)
            {
                expected = breath.AfterNote == n ? breath : expected;
            }

            Assert.Equal(expected, section.BreathAfter(n));
        }

        Assert.Null((Ladder with { Delivery = Delivery.Continuous }).ToScore().Sections[0].BreathAfter(0));
    }

    [Fact]
    public void An_answer_begins_where_its_line_has_been_sung()
    {
        var plain = Ladder.ToScore().Sections[0];
        var answered = Ladder.ToScore().WithAnswers().Sections[0];
        for (var l = 0; l < plain.Lines.Count; l++)
        {
            Assert.False(plain.Lines[l].HasAnswer);
            Assert.Equal(plain.Lines[l].End, plain.Lines[l].AnswerOnset);
            var line = answered.Lines[l];
            Assert.True(line.HasAnswer);
            Assert.Equal(line.Onset + plain.Lines[l].Length, line.AnswerOnset);
            Assert.Equal(line.Onset + (plain.Lines[l].Length * 2), line.End);
        }
    }

    [Fact]
    public void Angas_as_measures_fill_the_avartanas()
    {
        // Adi has 4 + 2 + 2 aksharas, and each line of the ladder fills an avartana.
        var score = Ladder.ToScore();
        var measures = score.WithAngaMeasures().Sections[0].Measures;
        Assert.Equal(3 * score.Sections[0].Measures.Count, measures.Count);
        for (var m = 0; m < measures.Count; m++)
        {
            Assert.Equal(m % 3 == 0 ? 4 : 2, measures[m].Length);
            Assert.Equal((8 * (m / 3)) + (m % 3) switch { 0 => 0, 1 => 4, _ => 6 }, measures[m].Onset);
        }

        var free = (Ladder with { Meter = Meter.Free }).ToScore();
        Assert.Equal(free, free.WithAngaMeasures());
    }
}

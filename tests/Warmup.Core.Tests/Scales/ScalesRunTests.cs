using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Runs, zigzags and bounds. Sources: the project's rules for runs (its own choice where practice leaves it open), worked out by hand on
/// scales whose lists are common practice; the properties compare with a plain walk over the lists repeated octave by octave.
/// </summary>
public class ScalesRunTests
{
    [Theory]
    [InlineData("Mohanam", "S", "P_", "S D2_ P_")]
    [InlineData("Bilahari", "S", "P_", "S N3_ D2_ P_")]
    [InlineData("Bilahari", "P_", "S", "P_ D2_ S")]
    [InlineData("Bilahari", "S", "S'", "S R2 G3 P D2 S'")]
    [InlineData("Bilahari", "S'", "S", "S' N3 D2 P M1 G3 R2 S")]
    [InlineData("Bilahari", "P", "R2'", "P D2 S' R2'")]
    [InlineData("Bilahari", "G3'", "D2", "G3' R2' S' N3 D2")]
    [InlineData("Garudadhvani", "M1", "S", "M1 G3 R2 S")]
    [InlineData("Kedaram", "S", "P", "S M1 G3 M1 P")]
    [InlineData("Kedaram", "M1", "P", "M1 P")] // the occurrence nearest the goal
    [InlineData("Kedaram", "P_", "G3", "P_ N3_ S M1 G3")]
    [InlineData("Gowla", "P", "S", "P M1 R1 G3 M1 R1 S")]
    [InlineData("Gowla", "M1", "S", "M1 R1 S")]
    [InlineData("Ritigowla", "S", "S'", "S G2 R2 G2 M1 N2 D2 M1 N2 S'")] // N2 N2 is one place
    [InlineData("Ritigowla", "S'", "S", "S' N2 D2 M1 G2 M1 P M1 G2 R2 S")]
    [InlineData("Darbar", "S'", "S", "S' D2 P M1 R2 G2 R2 S")] // G2 G2 is one place; the S' nearest the goal stands behind N2
    [InlineData("Darbar", "R2'", "N2", "R2' S' N2")] // the upper R2 of the list serves extensions
    [InlineData("Nadanamakriya", "S", "N3", "S R1 G3 M1 P D1 N3")]
    [InlineData("Nadanamakriya", "N3", "N3_", "N3 D1 P M1 G3 R1 S N3_")]
    [InlineData("Punnagavarali", "N2_", "N2", "N2_ S R1 G2 M1 P D1 N2")]
    [InlineData("Mohanam", "P", "P", "P")]
    public void Worked_runs(string scale, string from, string to, string expected)
    {
        Assert.Equal(expected, string.Join(' ', Catalogue.Default.Find(scale)!.Scale.Run(Tone(from), Tone(to))));
    }

    [Theory]
    [InlineData("Darbar", "ladder.reversed", "R S / M R G R S / P M R G R S / D P M R G R S / S' N S' D P M R G R S")]
    [InlineData("Darbar", "ladder", "S R / S R M / S R M P / S R M P D / S R M P D N / S R M P D N S'")]
    [InlineData("Ritigowla", "ladder", "S G R G / S G R G M / S G R G M N D M N / S G R G M N D M N S'")]
    [InlineData("Ritigowla", "ladder.reversed", "R S / G R S / D M G M P M G R S / N D M G M P M G R S / S' N D M G M P M G R S")]
    [InlineData("Kedaram", "run.grow", "S M / S M G / S M G M / S M G M P / S M G M P N / S M G M P N S'")]
    [InlineData("Gowla", "ladder.reversed", "R S / M R G M R S / P M R G M R S / N P M R G M R S / S' N P M R G M R S")]
    [InlineData("Mohanam", "figure(1 -1 -2).take(1)", "S D_ P_")]
    [InlineData("Bilahari", "figure(1 -1 -2).take(1)", "S D_ P_")] // a figure takes one list, in a rising row the ascent
    public void Worked_lines_of_zigzag_scales(string scale, string pattern, string expected) =>
        Assert.Equal(expected, Pattern.Parse(pattern).Expand(Catalogue.Default.Find(scale)!.Scale).ToLetters());

    [Theory]
    [InlineData("Nadanamakriya", "S", "S'")]
    [InlineData("Nadanamakriya", "G3", "P_")]
    [InlineData("Punnagavarali", "S'", "S")]
    public void A_run_beyond_a_scale_that_forbids_it_names_the_scale(string scale, string from, string to)
    {
        var refused = Assert.Throws<ArgumentException>(() => Catalogue.Default.Find(scale)!.Scale.Run(Tone(from), Tone(to)));
        Assert.Contains(scale, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_stays_within_three_octaves()
    {
        var scale = Catalogue.Default.Find("Mohanam")!.Scale;
        Assert.Equal((3 * 5 * 2) + 1, scale.Run(Tone("S___"), Tone("S'''")).Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => scale.Run(Tone("S"), Tone("S''''")));
    }

    [Fact]
    public void The_samples_differ_up_and_down_and_zigzag_often_enough()
    {
        var samples = Enumerable.Range(0, 1000).Select(ScalesSample.FromSeed).ToList();
        Assert.InRange(samples.Count(s => !s.IsSymmetric), 300, 1000);
        Assert.InRange(samples.Count(s => s.IsVakra), 200, 1000);
    }

    [Property(MaxTest = 500)]
    public bool A_run_between_notes_of_the_list_is_the_plain_walk(int seed, byte first, byte second)
    {
        var scale = ScalesSample.FromSeed(seed);
        var rises = first <= second;
        var list = Repeated(rises ? scale.Ascent : scale.Descent.Reverse().ToValueList());
        var (a, b) = (list[first % list.Count], list[second % list.Count]);
        if (a.Semitones == b.Semitones)
        {
            return true;
        }

        // The list that counts is that of the pitches' direction.
        rises = a.Semitones < b.Semitones;
        list = Repeated(rises ? scale.Ascent : scale.Descent.Reverse().ToValueList());
        var (low, high) = rises ? (a, b) : (b, a);
        if (!list.Contains(low) || !list.Contains(high))
        {
            return true;
        }

        var walk = Shortest(list, low, high);
        return scale.Run(a, b).SequenceEqual(rises ? walk : walk.Reverse());
    }

    [Property(MaxTest = 300)]
    public bool In_a_list_without_bends_a_run_takes_every_note_in_between_whatever_its_ends(int seed, byte first, byte second)
    {
        var scale = ScalesSample.FromSeed(seed);
        var all = Repeated(Catalogue.Default.Find("Chromatic")!.Scale.Ascent);
        var (a, b) = (all[first % all.Count], all[second % all.Count]);
        var rises = a.Semitones < b.Semitones;
        if (scale.IsVakra || a == b)
        {
            return true;
        }

        var between = Repeated(rises ? scale.Ascent : scale.Descent.Reverse().ToValueList())
            .Where(t => t.Semitones > Math.Min(a.Semitones, b.Semitones) && t.Semitones < Math.Max(a.Semitones, b.Semitones));
        return scale.Run(a, b).SequenceEqual([a, .. rises ? between : between.Reverse(), b]);
    }

    [Property(MaxTest = 300)]
    public bool A_run_over_an_octave_has_as_many_steps_as_the_list(int seed)
    {
        var scale = ScalesSample.FromSeed(seed);
        return scale.Run(Tone("S"), Tone("S'")).Count == scale.StepsUp() + 1 && scale.Run(Tone("S'"), Tone("S")).Count == scale.StepsDown() + 1;
    }

    /// <summary>The list from two octaves below to two above, the upper tonic once.</summary>
    private static List<ScaleTone> Repeated(ValueList<ScaleTone> rising)
    {
        var tones = new List<ScaleTone>();
        for (var octave = -2; octave <= 2; octave++)
        {
            tones.AddRange(rising.SkipLast(1).Select(t => t.Raised(octave)));
        }

        tones.Add(Tone("S'''"));
        return tones;
    }

    private static IEnumerable<ScaleTone> Shortest(List<ScaleTone> list, ScaleTone low, ScaleTone high)
    {
        var best = (From: 0, Length: int.MaxValue);
        for (var i = 0; i < list.Count; i++)
        {
            for (var j = i; j < list.Count; j++)
            {
                if (list[i] == low && list[j] == high && j - i < best.Length)
                {
                    best = (i, j - i);
                }
            }
        }

        return list.GetRange(best.From, best.Length + 1);
    }

    private static ScaleTone Tone(string text) => ScaleTone.Parse(text);
}

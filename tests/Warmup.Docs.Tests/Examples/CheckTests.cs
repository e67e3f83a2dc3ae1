#region check
using System.Globalization;
using Warmup;
using Warmup.Voices;

namespace Studio;

/// <summary>Lines that stay near the top of the range: each note fits, and the line may still tire the voice.</summary>
public static class HighLines
{
    // The studio's own setting, in seconds of a line.
    private static readonly Rational Most = new(3, 2);

    /// <summary>The check.</summary>
    /// <param name="score">The score.</param>
    /// <param name="singer">The singer.</param>
    public static IEnumerable<Finding> Check(Score score, Singer singer)
    {
        foreach (var line in RangeUse.Of(score, singer).Lines)
        {
            if (line.TopSeconds > Most)
            {
                yield return new Finding(
                    "studio.high",
                    Severity.Error,
                    string.Create(CultureInfo.InvariantCulture, $"{(double)line.TopSeconds:0.0} s of the line lie in the top fifth of the range; the studio's most is {(double)Most:0.0} s"),
                    "take a lower tonic, or leave the line out")
                {
                    Singer = singer.Alias,
                    Place = line.Place,
                    Measured = (double)line.TopSeconds,
                    Limit = (double)Most,
                    Unit = "s",
                };
            }
        }
    }
}
#endregion

/// <summary>The page on adding a check.</summary>
public class CheckTests
{
    private static readonly Drill Drill = new()
    {
        Scale = Catalogue.Default.Read("Mohanam"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("A3"),
        Delivery = Delivery.LineByLine with { Fill = Fill.None },
        Tempo = 60,
    };

    // F3 to A4 are sixteen semitones: F#4 and A4 lie in the top fifth.
    private static readonly Singer Wren = new("Wren", new NoteName('F', 0, 3), new NoteName('A', 0, 4), sustainedSeconds: 30);

    [Fact]
    public void It_is_made_with_the_others()
    {
        var (score, singer) = (Drill.ToScore(), Wren);
        #region check used
        var checks = ScoreChecks.Standard.With(HighLines.Check);
        foreach (var finding in score.Check(singer, checks))
        {
            Console.WriteLine(finding.Describe());
        }

        Console.WriteLine(score.Fits(singer, checks));
        #endregion

        // S R G P D S' on A3: one second of D (F#4) and one of S' (A4), held or not, in the fifth line; one of D in the fourth.
        var high = Assert.Single(score.Check(singer, checks));
        Assert.Equal(("studio.high", new ScorePlace(1, 5, score.Sections[0].Lines[4].Onset)), (high.Code, high.Place!.Value));
        Assert.Equal(2, high.Measured);
        Assert.Equal("Wren: line 5: 2.0 s of the line lie in the top fifth of the range; the studio's most is 1.5 s; take a lower tonic, or leave the line out", high.Describe());
        Assert.True(score.Fits(singer));
        Assert.False(score.Fits(singer, checks));
    }

    [Fact]
    public void It_counts_in_class_reports_and_tempo_windows()
    {
        var (drill, singers) = (Drill, (ValueList<Singer>)[Wren]);
        #region check in reports
        var checks = ScoreChecks.Standard.With(HighLines.Check);
        var report = ClassReport.Of([drill], singers, checks);
        var windows = TempoWindow.OfSpeeds(drill, singers, checks);
        #endregion

        Assert.Equal(ClassVerdict.DoesNotFit, report.Rows[0].Cells[0].Verdict);
        Assert.StartsWith("line 5: 2.0 s of the line", report.Rows[0].Cells[0].Why, StringComparison.Ordinal);

        // At 80 the two notes of an akshara each take 1.5 s, which is allowed; below, they take longer.
        var interval = windows[0].Intervals[0];
        Assert.Equal(80, interval.Slowest);
        Assert.StartsWith("check at 79: Wren: line 5:", interval.Below, StringComparison.Ordinal);
    }

    [Fact]
    public void It_keeps_the_contract()
    {
        var singer = Wren;
        #region check contract
        var score = Drill.ToScore();
        Assert.Equal(HighLines.Check(score, singer), HighLines.Check(Drill.ToScore(), singer)); // equal values, equal findings
        var moved = new Singer("Wren", singer.Low, new NoteName('D', 0, 5), singer.SustainedSeconds);
        Assert.Empty(HighLines.Check(score, moved)); // a wider range clears it
        Assert.All(HighLines.Check(score, singer), f => Assert.NotEmpty(f.Fix)); // what would clear it is said
        #endregion
    }
}

using System.Text.Json;

namespace Warmup.Docs.Tests.Examples;

/// <summary>The page on adding a tuning.</summary>
public sealed class TuningTests
{
    [Fact]
    public void A_tuning_from_its_intervals()
    {
        #region tuning of intervals
        var seven = new Tuning("seven", [.. "1/1 16/15 9/8 7/6 5/4 4/3 7/5 3/2 8/5 5/3 7/4 15/8".Split(' ').Select(Interval.Parse)]);
        var drill = new Drill { Scale = Catalogue.Default.Read("Bhairavi"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Tuning = seven };
        var score = drill.ToScore();
        #endregion

        Assert.Equal(Interval.FromRatio(new Rational(7, 6)), seven[Degree.Parse("G2")]);

        // The tonic G3 is two semitones below A3, which is half of A4 = 440 Hz; G2 lies 7/6 above it.
        var expected = 220 * Math.Pow(2, -2 / 12.0) * 7 / 6;
        Assert.Equal(expected, score.Sections[0].Pitches.Single(p => p.Tone == ScaleTone.Parse("G2")).Hz, 1e-9);
    }

    [Fact]
    public void A_tuning_from_a_rule()
    {
        #region tuning of a rule
        // Quarter-comma meantone: four fifths make a pure major third and two octaves.
        var fifth = 1200 * Math.Log2(5) / 4;
        var places = new Interval[12];
        for (var fifths = -5; fifths <= 6; fifths++)
        {
            places[((7 * fifths) + 36) % 12] = Interval.FromCents(((fifth * fifths) + 3600) % 1200);
        }

        var meantone = new Tuning("meantone", [.. places]);
        #endregion

        // Barbour, Tuning and Temperament (1951), table of quarter-comma meantone: fifths of 696.6 cents, a third of 386.3, a minor third of 310.3.
        Assert.Equal(386.3, meantone[Degree.Parse("G3")].Cents, 0.05);
        Assert.Equal(696.6, meantone[Degree.Parse("P")].Cents, 0.05);
        Assert.Equal(310.3, meantone[Degree.Parse("G2")].Cents, 0.05);
        Assert.Equal(Interval.FromRatio(new Rational(5, 4)).Cents, meantone[Degree.Parse("G3")].Cents, 1e-9);
    }

    [Fact]
    public void A_tuning_as_text()
    {
        #region tuning as text
        var teachers = Tuning.Parse("just: 10/9, G2 32/27, N3 1100c");
        var seven = Tuning.Parse("seven: 1/1 16/15 9/8 7/6 5/4 4/3 7/5 3/2 8/5 5/3 7/4 15/8");
        var kept = JsonSerializer.Serialize(seven);
        var again = JsonSerializer.Deserialize<Tuning>(kept);
        #endregion

        Assert.Equal(Tuning.JustWith(new Rational(10, 9)).With(Degree.Parse("G2"), Interval.Parse("32/27")).With(Degree.Parse("N3"), Interval.FromCents(1100)), teachers);
        Assert.Equal(seven, again);
        Assert.Equal("\"seven: 1/1 16/15 9/8 7/6 5/4 4/3 7/5 3/2 8/5 5/3 7/4 15/8\"", kept);
        Assert.Equal(seven, Tuning.Parse(seven.ToText()));
    }
}

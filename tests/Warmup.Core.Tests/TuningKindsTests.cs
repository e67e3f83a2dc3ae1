using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// The tunings. Sources: the table of svaras and the table of srutis under Data, each row with its own; powers of 3/2 worked out in the
/// test; the pairs of common just ratios (common practice) lie a syntonic comma or a diaschisma apart (published sizes).
/// </summary>
public class TuningKindsTests
{
    private const double SyntonicComma = 21.506;
    private const double Diaschisma = 19.553;

    [Theory]
    [MemberData(nameof(ScalesTables.Pythagorean), MemberType = typeof(ScalesTables))]
    public void Pythagorean_ratios_agree_with_the_table(string[] row)
    {
        var interval = Tuning.Pythagorean[Svara(row[0])];
        Assert.Equal(ScalesTables.Ratio(row[2]), interval.Ratio);
        Assert.Equal(ScalesTables.Number(row[3]), interval.Cents, 0.0006);
    }

    [Fact]
    public void Every_Pythagorean_place_is_some_fifths_and_octaves_from_the_tonic()
    {
        for (var place = 0; place < 12; place++)
        {
            var ratio = Tuning.Pythagorean.Intervals[place].Ratio!.Value;
            var found = Enumerable.Range(-6, 13).Any(fifths => Math.Abs(
                (Math.Log2(ratio.ToDouble()) - (fifths * Math.Log2(1.5))) - Math.Round(Math.Log2(ratio.ToDouble()) - (fifths * Math.Log2(1.5)))) < 1e-12);
            Assert.True(found, $"{ratio}");
            Assert.InRange(Tuning.Pythagorean.Intervals[place].Cents, (100 * place) - 12, (100 * place) + 12);
        }
    }

    [Fact]
    public void Just_choices_change_one_place_each_by_a_comma()
    {
        Check(new(10, 9), 2, SyntonicComma, -1);
        Check(new(64, 45), 6, Diaschisma, 1);
        Check(new(27, 16), 9, SyntonicComma, 1);
        Check(new(16, 9), 10, SyntonicComma, -1);

        static void Check(Rational choice, int place, double comma, int direction)
        {
            var tuning = Tuning.JustWith(choice);
            for (var i = 0; i < 12; i++)
            {
                var moved = tuning.Intervals[i].Cents - Tuning.Just.Intervals[i].Cents;
                Assert.Equal(i == place ? direction * comma : 0, moved, 0.0006);
            }
        }
    }

    [Fact]
    public void The_usual_choices_are_the_just_tuning_itself() => Assert.Equal(Tuning.Just, Tuning.JustWith(new(9, 8), new(45, 32), new(5, 3), new(9, 5)));

    [Fact]
    public void A_ratio_that_is_no_choice_is_refused_with_the_choices()
    {
        foreach (var ratio in (Rational[])[new(8, 7), new(7, 5), new(7, 4), 1, 0, new(3, 2)])
        {
            var refused = Assert.Throws<ArgumentException>("ratios", () => Tuning.JustWith(new(10, 9), ratio));
            Assert.Contains("9/8 or 10/9", refused.Message, StringComparison.Ordinal);
            Assert.Contains($"not {ratio}", refused.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Of_two_ratios_for_one_place_the_last_one_counts() => Assert.Equal(Tuning.JustWith(new Rational(16, 9)), Tuning.JustWith(new(10, 9), new(16, 9), new(9, 8)));

    [Theory]
    [InlineData("equal", "equal")]
    [InlineData(" Just ", "just")]
    [InlineData("PYTHAGOREAN", "pythagorean")]
    [InlineData("just: 27/16, 10/9", "just: 10/9 27/16")]
    [InlineData("just:64/45 16/9", "just: 64/45 16/9")]
    [InlineData("just: 9/8", "just")]
    public void Tunings_are_read_by_name_and_choice(string text, string name)
    {
        Assert.True(Tuning.TryParse(text, out var tuning, out _));
        Assert.Equal(name, tuning!.Name);
        Assert.True(Tuning.TryParse(tuning.Name, out var again, out _));
        Assert.Equal(tuning, again);
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData("meantone", 1)]
    [InlineData("just: 9/8 7/5", 11)]
    public void Unknown_tunings_are_refused_with_the_column(string text, int column)
    {
        Assert.False(Tuning.TryParse(text, out _, out var error));
        Assert.Equal(column, error!.Column);
        Assert.Contains("just", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_single_svara_is_tuned_otherwise_and_its_twin_is_not()
    {
        var tuning = Tuning.Just.With(Svara("R2"), Interval.FromRatio(new(10, 9)));
        Assert.Equal(new Rational(10, 9), tuning[Svara("R2")].Ratio);
        Assert.Equal(new Rational(9, 8), tuning[Svara("G1")].Ratio);
        Assert.Equal(Tuning.Just.Intervals, tuning.Intervals);
        Assert.Equal("just, R2 10/9", tuning.ToString());

        // A tone in another octave follows, in cents and in Hz: 220 Hz times 10/9 times 2.
        Assert.Equal(182.404 + 1200, tuning.Cents(new ScaleTone(Svara("R2"), 1)), 0.0006);
        Assert.Equal(220 * 10 / 9.0 * 2, tuning.Hz(new ScaleTone(Svara("R2"), 1), Tonic.FromHz(220)), 1e-9);
    }

    [Fact]
    public void Overrides_have_no_order_and_the_last_of_a_svara_counts()
    {
        var one = Tuning.Equal.With(Svara("G3"), Interval.FromRatio(new(5, 4))).With(Svara("D2"), Interval.FromCents(890));
        var other = Tuning.Equal.With(Svara("D2"), Interval.FromCents(910)).With(Svara("D2"), Interval.FromCents(890)).With(Svara("G3"), Interval.FromRatio(new(5, 4)));
        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.NotEqual(one, Tuning.Equal);
    }

    [Fact]
    public void An_override_of_the_tonic_or_far_off_is_refused()
    {
        Assert.Contains("S", Assert.Throws<ArgumentException>(() => Tuning.Equal.With(default, Interval.FromCents(1))).Message, StringComparison.Ordinal);
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Tuning.Equal.With(Svara("G3"), Interval.FromCents(501)));
        Assert.Contains("between 300 and 500", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(ScalesTables.Srutis), MemberType = typeof(ScalesTables))]
    public void The_shrutis_agree_with_the_table(string[] row)
    {
        var sruti = Sruti.All[int.Parse(row[0], System.Globalization.CultureInfo.InvariantCulture) - 1];
        Assert.Equal(row[1], sruti.Name);
        Assert.Equal(ScalesTables.Ratio(row[2]), sruti.Ratio);

        // A widely copied table prints 53-equal cents beside these ratios; these are the ratios' own.
        Assert.Equal(ScalesTables.Number(row[3]), sruti.Interval.Cents, 0.0006);
    }

    [Fact]
    public void The_shrutis_rise_and_each_lies_within_a_quarter_tone_of_its_svara()
    {
        Assert.Equal(Enumerable.Range(1, 22), Sruti.All.Select(s => s.Number));
        Assert.Equal(Sruti.All.OrderBy(s => s.Ratio), Sruti.All);
        Assert.All(Sruti.All.ToArray(), s => Assert.InRange(s.Interval.Cents - (100 * s.Svara.Semitones), -50, 50));
        Assert.Contains("theory", Sruti.Caveat, StringComparison.Ordinal);
        Assert.Contains("Krishnaswamy 2003", Sruti.Caveat, StringComparison.Ordinal);
    }

    [Property]
    public bool Intervals_stack_exactly(byte a, byte b, byte c, byte d)
    {
        var first = Interval.FromRatio(new Rational(a + 1, b + 1));
        var second = Interval.FromRatio(new Rational(c + 1, d + 1));
        return (first + second).Ratio == new Rational((a + 1) * (c + 1), (b + 1) * (d + 1)) && (first + second) - second == first;
    }

    [Fact]
    public void Commas_come_out_of_stacked_intervals()
    {
        // Twelve fifths less seven octaves; four fifths less two octaves and a third; an octave less three thirds (published definitions).
        Assert.Equal(new Rational(531441, 524288), (Times(new(3, 2), 12) - Times(2, 7)).Ratio);
        Assert.Equal(new Rational(81, 80), (Times(new(3, 2), 4) - Times(2, 2) - Times(new(5, 4), 1)).Ratio);
        Assert.Equal(new Rational(128, 125), (Times(2, 1) - Times(new(5, 4), 3)).Ratio);
        Assert.Equal(150, (Interval.FromCents(100) + Interval.FromCents(50)).Cents);

        static Interval Times(Rational ratio, int count) =>
            Enumerable.Repeat(Interval.FromRatio(ratio), count).Aggregate(Interval.Unison, (sum, next) => sum + next);
    }

    private static Degree Svara(string text) => Degree.Parse(text);
}

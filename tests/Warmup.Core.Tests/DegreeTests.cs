using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Sources: the table of the sixteen svaras (semitones: common practice; just ratios: two reference libraries agree) and the table of
/// intervals (computed from the ratios; listed by Helmholtz and Ellis, On the Sensations of Tone, appendix XX, citation from memory).
/// </summary>
public class DegreeTests
{
    public static TheoryData<string> SvaraNames => [.. Tables.Svaras.Select(r => r["svara"])];

    public static TheoryData<string> IntervalNames => [.. Tables.Intervals.Select(r => r["interval"])];

    [Theory]
    [MemberData(nameof(SvaraNames))]
    public void Each_svara_has_its_place_and_its_tuning(string svara)
    {
        var row = Tables.Svaras.Single(r => r["svara"] == svara);
        Assert.True(Degree.TryParse(svara, out var degree, out _));
        Assert.Equal((svara, row.Whole("semitone"), true, svara[0]), (degree.ToString(), degree.Semitones, degree.IsSvara, degree.SvaraLetter));
        Assert.Equal("SRGMPDN".IndexOf(svara[0], StringComparison.Ordinal) + 1, degree.Letter);
        Assert.Equal(svara.Length == 1 ? 0 : svara[1] - '0', degree.Variant);
        Assert.True(Degree.TryParse(degree.ToNumber(), out var byNumber, out _), degree.ToNumber());
        Assert.Equal(degree, byNumber);

        Assert.Equal(row.Ratio("just5_ratio"), Tuning.Just[degree].Ratio);
        Assert.Equal(row.Number("just5_cents"), Tuning.Just[degree].Cents, 0.0005);
        Assert.Equal(row.Number("et12_cents"), Tuning.Equal[degree].Cents, 9);
        foreach (var octave in new[] { -2, -1, 0, 1, 2 })
        {
            var tone = new ScaleTone(degree, octave);
            Assert.Equal(row.Whole("semitone") + (12 * octave), tone.Semitones);
            Assert.Equal(row.Number("just5_cents") + (1200 * octave), Tuning.Just.Cents(tone), 0.0005);
            Assert.Equal(row.Number("et12_cents") + (1200 * octave), Tuning.Equal.Cents(tone), 9);
            Assert.True(ScaleTone.TryParse(tone.ToString(), out var read, out _), tone.ToString());
            Assert.Equal(tone, read);
            Assert.Equal(svara + (octave > 0 ? new string('\'', octave) : new string('_', -octave)), tone.ToString());
        }
    }

    [Fact]
    public void There_are_sixteen_svaras_and_no_more()
    {
        var found = new List<string>();
        for (var letter = 1; letter <= 7; letter++)
        {
            for (var alteration = -2; alteration <= 2; alteration++)
            {
                if (new Degree(letter, alteration) is { IsSvara: true } svara)
                {
                    found.Add(svara.ToString());
                }
            }
        }

        Assert.Equal(Tables.Svaras.Select(r => r["svara"]).Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_degree_and_tone_is_printed_and_read_back()
    {
        for (var letter = 1; letter <= 7; letter++)
        {
            for (var alteration = -2; alteration <= 2; alteration++)
            {
                var degree = new Degree(letter, alteration);
                Assert.Equal(new[] { 0, 2, 4, 5, 7, 9, 11 }[letter - 1] + alteration, degree.Semitones);
                Assert.True(Degree.TryParse(degree.ToString(), out var read, out _), degree.ToString());
                Assert.Equal(degree, read);
                for (var octave = -ScaleTone.HighestOctave; octave <= ScaleTone.HighestOctave; octave++)
                {
                    var tone = new ScaleTone(degree, octave);
                    Assert.True(ScaleTone.TryParse(tone.ToString(), out var back, out _), tone.ToString());
                    Assert.Equal(tone, back);
                    Assert.Equal(tone.GetHashCode(), back.GetHashCode());
                }
            }
        }
    }

    [Theory]
    [InlineData("b5", 6)]
    [InlineData("#4", 6)]
    [InlineData("3", 4)]
    [InlineData("b3", 3)]
    [InlineData("#2", 3)]
    [InlineData("bb7", 9)]
    public void Scale_numbers_are_read(string text, int semitones)
    {
        Assert.True(Degree.TryParse(text, out var degree, out _));
        Assert.Equal(semitones, degree.Semitones);
    }

    [Fact]
    public void Twins_sound_alike_and_differ()
    {
        foreach (var (a, b) in new[] { ("R2", "G1"), ("R3", "G2"), ("D2", "N1"), ("D3", "N2") })
        {
            Assert.True(Degree.TryParse(a, out var one, out _));
            Assert.True(Degree.TryParse(b, out var other, out _));
            Assert.Equal(one.Semitones, other.Semitones);
            Assert.NotEqual(one, other);
            Assert.True(one < other);
        }
    }

    [Theory]
    [InlineData("R0")]
    [InlineData("R4")]
    [InlineData("M3")]
    [InlineData("S1")]
    [InlineData("P2")]
    [InlineData("Q1")]
    [InlineData("")]
    [InlineData("8")]
    [InlineData("0")]
    [InlineData("bbb3")]
    [InlineData("b#3")]
    [InlineData("R2 3")]
    public void What_is_no_degree_is_not_read(string text)
    {
        Assert.False(Degree.TryParse(text, out var degree, out _));
        Assert.Equal(default, degree);
    }

    [Fact]
    public void Default_is_the_middle_S()
    {
        Assert.Equal(("S", "S", 0, 0), (default(Degree).ToString(), default(ScaleTone).ToString(), default(ScaleTone).Semitones, default(ScaleTone).Octave));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(8, 0)]
    [InlineData(1, 3)]
    [InlineData(1, -3)]
    public void A_degree_out_of_range_is_refused(int letter, int alteration) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Degree(letter, alteration));

    [Theory]
    [InlineData(10)]
    [InlineData(-10)]
    public void An_octave_out_of_range_is_refused(int octave)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScaleTone(default, octave));
        Assert.Throws<ArgumentOutOfRangeException>(() => default(ScaleTone).Raised(octave));
    }

    [Property]
    public Property Tones_are_ordered_by_pitch_then_letter() => Prop.ForAll(
        (from letter in Gen.Choose(1, 7) from alteration in Gen.Choose(-2, 2) from octave in Gen.Choose(-2, 2)
         select new ScaleTone(new Degree(letter, alteration), octave)).Two().ToArbitrary(),
        pair =>
        {
            var (a, b) = pair;
            var byPitch = a.Semitones.CompareTo(b.Semitones);
            var expected = byPitch != 0 ? byPitch : a.LetterIndex.CompareTo(b.LetterIndex);
            Assert.Equal(Math.Sign(expected), Math.Sign(a.CompareTo(b)));
            Assert.Equal(expected == 0, a == b);
            Assert.Equal(a.Degree.Letter - 1 + (7 * a.Octave), a.LetterIndex);
        });

    [Theory]
    [MemberData(nameof(IntervalNames))]
    public void Each_interval_has_its_published_size(string name)
    {
        var row = Tables.Intervals.Single(r => r["interval"] == name);
        var interval = Interval.FromRatio(row.Ratio("ratio"));
        Assert.Equal(row.Number("cents"), interval.Cents, 0.001);
        Assert.Equal(row["ratio"] == "2/1" ? "2" : row["ratio"], interval.Ratio!.Value.ToString());
        Assert.Equal(440 * row.Ratio("ratio").ToDouble(), interval.Above(440), 1e-9);
        Assert.Equal(110 * row.Ratio("ratio").ToDouble(), interval.Above(440, -2), 1e-9);
    }

    [Fact]
    public void An_interval_in_cents_has_no_ratio_but_the_unison()
    {
        Assert.Null(Interval.FromCents(702).Ratio);
        Assert.Equal(Interval.Unison, Interval.FromCents(0));
        Assert.Equal(Interval.Unison.GetHashCode(), Interval.FromCents(0).GetHashCode());
        Assert.Equal(Interval.Unison, Interval.FromRatio(1));
        Assert.Equal(Interval.Unison.GetHashCode(), Interval.FromCents(-0.0).GetHashCode());
        Assert.Equal(Interval.Unison, Interval.FromCents(-0.0));
        Assert.NotEqual(Interval.FromCents(1200), Interval.FromRatio(2));
        Assert.Equal(880, Interval.FromCents(1200).Above(440), 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_ratio_of_nothing_is_refused(int ratio) =>
        Assert.Contains(
            ratio.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Assert.Throws<ArgumentOutOfRangeException>(() => Interval.FromRatio(ratio)).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(120_001)]
    [InlineData(-120_001)]
    public void Cents_out_of_range_are_refused(double cents) =>
        Assert.Contains("120000", Assert.Throws<ArgumentOutOfRangeException>(() => Interval.FromCents(cents)).Message.Replace(",", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
}

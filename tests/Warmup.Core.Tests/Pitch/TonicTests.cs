using System.Globalization;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Sources: the kattai numbering (common practice: white keys from C whole numbers, black keys halves), frequencies computed from
/// A4 = 440 Hz; the formula of equal temperament, 440 x 2^((n - 69) / 12).
/// </summary>
public class TonicTests
{
    public static TheoryData<string> KattaiNumbers => [.. Tables.Kattais.Select(r => r["kattai"])];

    [Theory]
    [MemberData(nameof(KattaiNumbers))]
    public void Each_kattai_is_its_key_in_both_octaves(string number)
    {
        var row = Tables.Kattais.Single(r => r["kattai"] == number);
        Assert.True(Rational.TryParse(number, out var kattai, out _));
        Assert.Equal(row.Whole("pitch_class"), Tonic.FromKattai(kattai).Midi % 12);
        foreach (var octave in new[] { 3, 4 })
        {
            var tonic = Tonic.FromKattai(kattai, octave);
            Assert.Equal(row.Whole($"midi_octave{octave}"), tonic.Midi);
            Assert.Equal(row.Number($"hz_octave{octave}"), tonic.Hz, 0.0005);
            Assert.Equal(row["note"] + octave, NoteName.FromMidi(tonic.Midi).ToString());
            Assert.Equal((number, (NoteName?)null), (tonic.KattaiNumber, tonic.TypedName));
        }

        // A kattai without an octave is in octave 3: the rules' own choice.
        Assert.Equal(row.Whole("midi_octave3"), Tonic.FromKattai(kattai).Midi);
        Assert.Equal(row.Whole("midi_octave3"), Tonic.Parse(number).Midi);
        Assert.Equal(row.Whole("midi_octave3"), Tonic.Parse(number + " kattai").Midi);
    }

    [Theory]
    [InlineData("3.5")]
    [InlineData("7.5")]
    [InlineData("0")]
    [InlineData("0.5")]
    [InlineData("8")]
    [InlineData("-1")]
    [InlineData("1.25")]
    [InlineData("13")]
    public void There_is_no_such_kattai(string number)
    {
        Assert.True(Rational.TryParse(number, out var kattai, out _));
        Assert.Contains("kattai", Assert.Throws<ArgumentOutOfRangeException>(() => Tonic.FromKattai(kattai)).Message, StringComparison.Ordinal);
        Assert.False(Tonic.TryParse(number, out var tonic, out var error));
        Assert.Null(tonic);
        Assert.Contains(number, error!.Message, StringComparison.Ordinal);
        Assert.Contains("5.5", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A4", 432, 432)]
    [InlineData("A3", 432, 216)]
    [InlineData("A5", 415, 830)]
    [InlineData("A4", 440, 440)]
    public void Another_reference_moves_every_tonic(string note, double a4, double hz)
    {
        Assert.True(Tonic.TryParse(note, out var tonic, out _, a4));
        Assert.Equal(hz, tonic!.Hz, 9);
        Assert.Equal(a4, tonic.A4);
    }

    [Theory]
    [InlineData("220Hz", 57, 0)]
    [InlineData("220 hz", 57, 0)]
    [InlineData("440Hz", 69, 0)]
    [InlineData("216Hz", 57, -31.766654)] // 1200 log2(216/220), by hand
    public void A_frequency_is_the_nearest_key_and_the_rest_in_cents(string text, int midi, double cents)
    {
        var tonic = Tonic.Parse(text);
        Assert.Equal(midi, tonic.Midi);
        Assert.Equal(cents, tonic.OffsetCents, 0.000001);
        Assert.Equal(double.Parse(text[..3], CultureInfo.InvariantCulture), tonic.Hz, 9);
        Assert.Null(tonic.TypedName);
    }

    [Property]
    public void A_frequency_is_kept(ushort a, byte b)
    {
        var hz = 33 + (a % 2000) + (b / 256.0);
        var a4 = 380 + (b * 120 / 255.0);
        var exact = 69 + (12 * Math.Log2(hz / a4));
        if (exact is < 23.5 or > 96.5)
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Tonic.FromHz(hz, a4));
            return;
        }

        var tonic = Tonic.FromHz(hz, a4);
        Assert.Equal(hz, tonic.Hz, hz * 1e-12);
        Assert.InRange(tonic.OffsetCents, -50.0000001, 50.0000001);
        Assert.Equal(exact, tonic.Midi + (tonic.OffsetCents / 100), 1e-9);
    }

    [Theory]
    [InlineData("B0", "23")]
    [InlineData("C#7", "97")]
    [InlineData("C-1", "0")]
    [InlineData("25Hz", "")]
    [InlineData("4000Hz", "")]
    public void A_tonic_out_of_range_says_its_key_and_the_range(string text, string value)
    {
        Assert.False(Tonic.TryParse(text, out var tonic, out var error));
        Assert.Null(tonic);
        Assert.Contains(text, error!.Message, StringComparison.Ordinal);
        Assert.Contains(value, error.Message, StringComparison.Ordinal);
        Assert.Contains("C1", error.Message, StringComparison.Ordinal);
        Assert.Contains("C7", error.Message, StringComparison.Ordinal);
        Assert.Throws<WarmupFormatException>(() => Tonic.Parse(text));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("X9")]
    [InlineData("C")]
    [InlineData("Hz")]
    [InlineData("-220Hz")]
    [InlineData("0Hz")]
    [InlineData("1e3Hz")]
    [InlineData("NaNHz")]
    [InlineData("99999999999Hz")]
    [InlineData("kattai")]
    [InlineData("11/2")]
    [InlineData("C4 D4")]
    public void What_is_no_tonic_says_how_to_write_one(string text)
    {
        Assert.False(Tonic.TryParse(text, out var tonic, out var error));
        Assert.Null(tonic);
        Assert.True(error!.Line == 1 && error.Column >= 1);
        Assert.Contains("220Hz", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(379.9)]
    [InlineData(500.1)]
    [InlineData(0)]
    [InlineData(-440)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_reference_out_of_range_is_refused_with_the_range(double a4)
    {
        foreach (Func<object> make in new Func<object>[]
        {
            () => Tonic.FromMidi(60, a4), () => Tonic.FromHz(220, a4), () => Tonic.FromKattai(1, 3, a4), () => Tonic.FromNote(new NoteName('C', 0, 4), a4),
        })
        {
            var message = Assert.Throws<ArgumentOutOfRangeException>(make).Message;
            Assert.Contains("380", message, StringComparison.Ordinal);
            Assert.Contains("500", message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(23)]
    [InlineData(97)]
    [InlineData(int.MinValue)]
    [InlineData(int.MaxValue)]
    public void A_key_out_of_range_is_refused_with_the_range(int midi)
    {
        var message = Assert.Throws<ArgumentOutOfRangeException>(() => Tonic.FromMidi(midi)).Message;
        Assert.Contains("24", message, StringComparison.Ordinal);
        Assert.Contains("96", message, StringComparison.Ordinal);
        Assert.Contains(midi.ToString(CultureInfo.InvariantCulture), message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(1e300)]
    public void A_frequency_that_is_none_is_refused(double hz) => Assert.Throws<ArgumentOutOfRangeException>(() => Tonic.FromHz(hz));
}

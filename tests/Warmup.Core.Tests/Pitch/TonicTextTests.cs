namespace Warmup.Tests;

/// <summary>A tonic as text. Sources: the documented forms and ranges; frequencies by equal temperament from A4 (ISO 16).</summary>
public class TonicTextTests
{
    [Theory]
    [InlineData("C1", 24)]
    [InlineData("C7", 96)]
    [InlineData("midi 24", 24)]
    [InlineData("MIDI 96", 96)]
    [InlineData("midi57", 57)]
    [InlineData(" a3 ", 57)]
    [InlineData("5.5", 56)]
    [InlineData("1.5 kattai", 49)]
    [InlineData("6KATTAI", 57)]
    public void The_documented_forms_are_read_up_to_the_ends_of_the_range(string text, int midi)
    {
        var tonic = Tonic.Parse(text);
        Assert.Equal((midi, 0.0, 440.0), (tonic.Midi, tonic.OffsetCents, tonic.A4));
    }

    [Theory]
    [InlineData("A3 +3.9c", 3.9)]
    [InlineData("A3 -12.5 cents", -12.5)]
    [InlineData("midi 57+50c", 50)]
    [InlineData("midi 57 -50 CENTS", -50)]
    public void A_note_may_lie_off_its_key_by_half_a_semitone(string text, double cents)
    {
        var tonic = Tonic.Parse(text);
        Assert.Equal((57, cents, (NoteName?)null), (tonic.Midi, tonic.OffsetCents, tonic.TypedName));
        Assert.Equal(220 * Math.Pow(2, cents / 1200), tonic.Hz, 1e-9);
    }

    [Theory]
    [InlineData("A3 +50.1c")]
    [InlineData("A3 -50.1c")]
    [InlineData("A3 +3.9")]
    [InlineData("A3 3.9c")]
    [InlineData("A3 +c")]
    [InlineData("midi")]
    [InlineData("midi x")]
    [InlineData("midi 57 x")]
    [InlineData("midi 97")]
    [InlineData("19.9Hz")]
    [InlineData("5001Hz")]
    public void What_is_beyond_is_refused(string text) => Assert.False(Tonic.TryParse(text, out _, out _));

    [Theory]
    [InlineData("A3, A4=432Hz", 432, 216)]
    [InlineData("6 kattai, a4 = 380 hz", 380, 190)]
    [InlineData("midi 69, A4=500Hz", 500, 500)]
    public void The_reference_may_follow(string text, double a4, double hz)
    {
        var tonic = Tonic.Parse(text);
        Assert.Equal(a4, tonic.A4);
        Assert.Equal(hz, tonic.Hz, 1e-9);
    }

    [Theory]
    [InlineData("A3, A4=379.9Hz", 5)]
    [InlineData("A3, A4=500.1Hz", 5)]
    [InlineData("A3, A4=432", 5)]
    [InlineData("A3, A4 432Hz", 5)]
    [InlineData("A3, B4=432Hz", 5)]
    [InlineData("A3,", 4)]
    public void A_reference_that_is_none_is_refused_with_its_place(string text, int column)
    {
        Assert.False(Tonic.TryParse(text, out _, out var error));
        Assert.Equal(column, error.Column);
        Assert.Contains("380 to 500 Hz", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, false)] // the nearest key of 20 Hz is D#0, below C1
    [InlineData(32, true)] // C1 is 32.703 Hz, B0 30.868: the border lies at 31.77
    [InlineData(31, false)]
    [InlineData(2150, true)] // C7 is 2093.005 Hz, C#7 2217.46: the border lies at 2154.3
    [InlineData(2160, false)]
    public void A_frequency_lies_in_the_range_where_its_nearest_key_does(int hz, bool isTonic) => Assert.Equal(isTonic, Tonic.TryParse($"{hz}Hz", out _, out _));

    [Theory]
    [InlineData("C#3", "C#3", "C#3")]
    [InlineData("midi 49", "midi 49", "C#3")]
    [InlineData("A3 +3.9c", "midi 57 +3.9c", "A3 +3.9 cents")]
    [InlineData("A3 -12.5c", "midi 57 -12.5c", "A3 -12.5 cents")]
    [InlineData("Db3, A4=432Hz", "Db3, A4=432Hz", "Db3")]
    public void Text_holds_the_whole_value_and_a_description_the_note(string typed, string text, string shown)
    {
        var tonic = Tonic.Parse(typed);
        Assert.Equal((text, shown), (tonic.ToText(), tonic.ToString()));
        Assert.Equal(tonic, Tonic.Parse(tonic.ToText()));
    }

    [Fact]
    public void A_report_may_leave_out_the_kattai()
    {
        Assert.Equal("220 Hz: A3, kattai 6, at A4 = 440 Hz", Tonic.Parse("A3").ToReport());
        Assert.Equal("220 Hz: A3, at A4 = 440 Hz", Tonic.Parse("A3").ToReport(hasKattai: false));
    }

    [Fact]
    public void Moved_by_octaves_a_typed_name_stays_and_by_other_steps_the_scale_chooses()
    {
        var typed = Tonic.Parse("Db3");
        Assert.Equal("Db5", typed.Transposed(24).TypedName?.ToString());
        Assert.Equal("Db2", typed.Transposed(-12).TypedName?.ToString());
        Assert.Null(typed.Transposed(5).TypedName);
        Assert.Equal(54, typed.Transposed(5).Midi);
        Assert.Throws<ArgumentOutOfRangeException>(() => typed.Transposed(60));
    }

    [Theory]
    [InlineData(8, 108)]
    [InlineData(0, 12)]
    public void Octaves_of_a_kattai_go_from_0_to_8_and_the_tonic_from_C1_to_C7(int octave, int midi) =>
        Assert.Contains(midi.ToString(System.Globalization.CultureInfo.InvariantCulture), Assert.Throws<ArgumentOutOfRangeException>(() => Tonic.FromKattai(1, octave)).Message, StringComparison.Ordinal);
}

namespace Warmup.Tests;

/// <summary>Angas and talas of one's own as text. Sources: the signs of the trade (I laghu, O drutam, U anudrutam; common practice), and the documented bounds (64 aksharas, the project's own).</summary>
public class AngaTextTests
{
    [Theory]
    [InlineData("I3", "I3", 3)]
    [InlineData("i9", "I9", 9)]
    [InlineData("o", "O", 2)]
    [InlineData("u", "U", 1)]
    [InlineData("clap", "U", 1)]
    [InlineData("clap wave", "O", 2)]
    [InlineData("Clap, little ring MIDDLE", "I4", 4)]
    [InlineData("clap silent wave", null, 3)]
    [InlineData("wave", null, 1)]
    [InlineData("clap little ring middle index thumb", null, 6)] // no laghu has six
    public void An_anga_is_read_by_its_sign_or_its_gestures(string text, string? sign, int aksharas)
    {
        var anga = Anga.Parse(text);
        Assert.Equal((sign, aksharas), (anga.Sign, anga.Aksharas));
        Assert.Equal(aksharas, anga.Gestures.Count);
        Assert.Equal(anga, Anga.Parse(anga.ToString()));
    }

    [Theory]
    [InlineData("I6", 1, "'I6' is not a gesture")]
    [InlineData("I44", 1, "'I44' is not a gesture")]
    [InlineData("clap jump", 6, "'jump' is not a gesture")]
    [InlineData("", 1, "the anga is missing")]
    public void What_is_no_anga_is_refused_at_its_place(string text, int column, string reason)
    {
        Assert.False(Anga.TryParse(text, out var anga, out var error));
        Assert.Equal(default, anga);
        Assert.Equal(column, error.Column);
        Assert.StartsWith(reason, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_anga_has_1_to_64_gestures()
    {
        var longest = string.Join(' ', Enumerable.Repeat("wave", 64));
        Assert.Equal(64, Anga.Parse(longest).Aksharas);
        Assert.False(Anga.TryParse(longest + " clap", out _, out var error));
        Assert.Equal(longest.Length + 2, error.Column);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Anga([(Kriya)(-1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Anga([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Anga([.. Enumerable.Repeat(Kriya.Wave, 65)]));
    }

    [Theory]
    [InlineData("a: I9+I9+I9+I9+I9+I9+I9+U", 64)]
    [InlineData("a: U", 1)]
    [InlineData("a b :I4 + O + clap silent", 8)]
    public void A_tala_of_ones_own_has_1_to_64_aksharas(string text, int aksharas)
    {
        var meter = Meter.Parse(text);
        Assert.Equal(aksharas, meter.Beats);
        Assert.Equal(aksharas, meter.Gestures.Count);
        Assert.Equal(meter, Meter.Parse(meter.ToText()));
    }

    [Theory]
    [InlineData("a: I9+I9+I9+I9+I9+I9+I9+ O", 26, "here they are 65")]
    [InlineData("a:", 3, "the anga is missing")]
    public void A_tala_that_is_none_is_refused_at_its_place(string text, int column, string reason)
    {
        Assert.False(Meter.TryParse(text, out var meter, out var error));
        Assert.Null(meter);
        Assert.Equal(column, error.Column);
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Adi (4+2+2)", "Adi")]
    [InlineData("6/8 (2 dotted beats)", "6/8")]
    [InlineData("rupaka-chapu (3)", "rupaka-chapu")]
    public void What_is_printed_after_a_name_may_stand_there(string text, string name) => Assert.Equal(name, Meter.Parse(text).Name);

    [Theory]
    [InlineData("Adi (4+2)", 5, "Adi is Adi (4+2+2); leave out '(4+2)' or mend it")]
    [InlineData("4/4 (4)", 5, "4/4 is 4/4; leave out '(4)' or mend it")]
    public void Anything_else_in_brackets_is_refused(string text, int column, string message)
    {
        Assert.False(Meter.TryParse(text, out var meter, out var error));
        Assert.Null(meter);
        Assert.Equal((column, message), (error.Column, error.Message));
    }

    [Theory]
    [InlineData("trisra eka", "tisra-jati eka")]
    [InlineData("kanda chapu", "khanda chapu")]
    [InlineData("roopaka chapu", "rupaka-chapu")]
    [InlineData("sankeerna dhruva", "sankirna-jati dhruva")]
    [InlineData("misra chapu wave", "misra chapu with waves")]
    [InlineData("tisra jampa taal", "tisra-jati jhampa")]
    public void Other_spellings_mean_the_same(string text, string name) => Assert.Equal(name, Meter.Parse(text).Name);

    [Fact]
    public void A_slip_is_told_at_most_three_names_the_nearest_first()
    {
        Assert.False(Meter.TryParse("matia", out _, out var error));
        Assert.Contains("perhaps chatusra-jati matya", error.Message, StringComparison.Ordinal);
        Assert.False(Meter.TryParse("misra-jati ek", out _, out error));
        Assert.StartsWith("unknown tala 'misra-jati ek'; perhaps misra-jati eka", error.Message, StringComparison.Ordinal);
        Assert.InRange(error.Message.Split(" or ").Length, 1, 3);
    }

    [Theory]
    [InlineData(6, 1, 6, false)] // a whole note has no half of it above
    [InlineData(3, 8, 3, false)]
    [InlineData(6, 2, 2, true)]
    [InlineData(64, 32, 64, false)]
    [InlineData(63, 32, 21, true)]
    public void A_number_above_three_that_three_divides_is_compound(int number, int type, int beats, bool isCompound)
    {
        var meter = Meter.TimeSignature(number, type);
        Assert.Equal((beats, isCompound), (meter.Beats, meter.IsCompound));
        Assert.Equal(meter, Meter.Additive([number], type));
        Assert.Equal(new Rational(number, type), meter.Beats * meter.BeatValue);
    }

    [Fact]
    public void Points_before_an_avartana_lie_in_none_of_its_angas() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Adi.AngaEnd(new Rational(-1, 2)));
}

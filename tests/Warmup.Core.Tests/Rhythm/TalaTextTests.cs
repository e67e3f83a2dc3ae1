namespace Warmup.Tests;

/// <summary>Reading meters: spellings of common practice, and messages that say where and what.</summary>
public class TalaTextTests
{
    [Theory]
    [InlineData("adi", "Adi")]
    [InlineData(" Ādi tāla ", "Adi")]
    [InlineData("chatusra-jati triputa", "Adi")]
    [InlineData("Caturaśra Tripuṭa", "Adi")]
    [InlineData("triputa", "tisra-jati triputa")]
    [InlineData("misra-jati jhampa", "misra-jati jhampa")]
    [InlineData("Mishra jati Jhampa talam", "misra-jati jhampa")]
    [InlineData("khanda ata", "khanda-jati ata")]
    [InlineData("rupaka", "chatusra-jati rupaka")]
    [InlineData("Rupakam", "chatusra-jati rupaka")]
    [InlineData("rupaka chapu", "rupaka-chapu")]
    [InlineData("khanda chapu", "khanda chapu")]
    [InlineData("Mishra Chapu", "misra chapu")]
    [InlineData("Eka", "chatusra-jati eka")]
    [InlineData("free", "free")]
    [InlineData("Free", "free")]
    [InlineData(" 7/8 ", "7/8")]
    [InlineData("2 + 2 + 3 / 8", "2+2+3/8")]
    [InlineData("6/8", "6/8")]
    public void Names_and_signatures_are_read(string text, string name) => Assert.Equal(name, Meter.Parse(text).Name);

    [Fact]
    public void Rupaka_says_which_one_it_is()
    {
        Assert.Equal("chatusra-jati rupaka (2+4)", Meter.Parse("rupaka").ToString());
        Assert.Equal("rupaka-chapu (3)", Meter.Parse("rupaka-chapu").ToString());
    }

    [Fact]
    public void Every_meter_reads_its_own_name()
    {
        IEnumerable<Meter> all = [.. Meter.Talas, .. Meter.Chapus, Meter.Free, Meter.TimeSignature(5, 4), Meter.TimeSignature(12, 8), Meter.Additive([3, 2, 3], 16)];
        foreach (var meter in all)
        {
            Assert.Equal(meter, Meter.Parse(meter.Name));
        }
    }

    [Theory]
    [InlineData("", 1, "empty")]
    [InlineData("  ", 1, "empty")]
    [InlineData("adhi", 0, "")]
    [InlineData("ady", 1, "perhaps Adi")]
    [InlineData("  khandaa-jati jampha", 0, "")]
    [InlineData("khanda chap", 1, "perhaps khanda chapu")]
    [InlineData("xyzzyplugh", 1, "write a tala such as adi")]
    [InlineData("chatusra chapu", 1, "perhaps")]
    [InlineData("7", 2, "lacks its beat; add it, such as 7/4")]
    [InlineData("0/4", 1, "between 1 and 64, not 0")]
    [InlineData("4/0", 3, "between 1 and 32, not 0")]
    [InlineData("4/6", 3, "1, 2, 4, 8, 16 or 32, not 6")]
    [InlineData("2+x/8", 3, "'x' is not a whole number")]
    [InlineData("2++3/8", 3, "'' is not a whole number")]
    [InlineData("2+3/", 5, "'' is not a whole number")]
    [InlineData("2+-3/8", 3, "'-3' is not a whole number")]
    [InlineData("99999999999/4", 1, "between 1 and 64, not 99999999999")]
    [InlineData("40+40/4", 1, "between 1 and 64, not 80")]
    public void What_is_no_meter_is_refused_at_its_place(string text, int column, string message)
    {
        var read = Meter.TryParse(text, out var meter, out var error);
        if (column == 0)
        {
            // A spelling that folding takes care of.
            Assert.True(read);
            return;
        }

        Assert.False(read);
        Assert.Null(meter);
        Assert.Equal(column, error!.Column);
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_text_is_refused_and_never_repeated_whole()
    {
        Assert.False(Meter.TryParse(new string('x', 100_000), out _, out var error));
        Assert.Contains("at most 800", error!.Message, StringComparison.Ordinal);
        Assert.False(Meter.TryParse(new string('9', 150) + "/4", out _, out error));
        Assert.True(error!.Message.Length < 200);
    }
}

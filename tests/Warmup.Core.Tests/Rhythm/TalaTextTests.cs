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

    /// <summary>Spellings of common practice: each jati with each family, with and without the words "jati" and "tala".</summary>
    [Fact]
    public void Jatis_and_families_are_read_in_every_usual_spelling()
    {
        string[] jatis = ["tisra trisra tryasra tisram", "chatusra caturasra chaturashra chathurasra", "khanda kanda", "misra mishra", "sankirna sankeerna sangeerna"];
        string[] families = ["dhruva druva dhruvam", "matya mathya mattiya matyam", "rupaka roopaka rupakam", "jhampa jampa jhampai", "triputa thriputa tripuda", "ata atta ada", "eka ekam"];
        Jati[] usual = [Jati.Chatusra, Jati.Chatusra, Jati.Chatusra, Jati.Misra, Jati.Tisra, Jati.Khanda, Jati.Chatusra];
        for (var f = 0; f < families.Length; f++)
        {
            foreach (var family in families[f].Split(' '))
            {
                Assert.Equal((family, Meter.Tala((TalaFamily)f, usual[f])), (family, Meter.Parse(family)));
                Assert.Equal(Meter.Tala((TalaFamily)f, usual[f]), Meter.Tala((TalaFamily)f));
                for (var j = 0; j < jatis.Length; j++)
                {
                    foreach (var jati in jatis[j].Split(' '))
                    {
                        var meter = Meter.Tala((TalaFamily)f, (Jati)j);
                        Assert.Equal((jati, family, meter), (jati, family, Meter.Parse($"{jati} {family}")));
                        Assert.Equal(meter, Meter.Parse($"{jati.ToUpperInvariant()}-jati_{family} Tala"));
                    }
                }
            }
        }

        foreach (var word in (string[])["jaati", "tal", "taal", "talam"])
        {
            Assert.Equal(Meter.Adi, Meter.Parse($"adi {word}"));
        }

        Assert.Equal(["tisra chapu", "khanda chapu", "misra chapu", "sankirna chapu"], ((string[])["tryasra chapu", "kanda chapu", "mishra chapu", "sangeerna chapu"]).Select(n => Meter.Parse(n).Name));
        Assert.Equal(["rupaka-chapu", "rupaka-chapu", "rupaka-chapu"], ((string[])["rupaka chapu", "roopaka-chapu", "rupakam chapu"]).Select(n => Meter.Parse(n).Name));
    }

    private static readonly (string Text, int Column, string Message)[] Faults =
    [
        ("4 /4x", 4, "'4x' is not a whole number"),
        ("65/4", 1, "the beats of a group must be between 1 and 64, not 65"),
        ("2+65/4", 3, "the beats of a group must be between 1 and 64, not 65"),
        ("64+1/4", 1, "the beats of an avartana must be between 1 and 64, not 65"),
        ("2+0/4", 3, "between 1 and 64, not 0"),
        ("4/64", 3, "the lower number of a time signature must be between 1 and 32, not 64"),
        ("4/33", 3, "between 1 and 32, not 33"),
        ("4/24", 3, "must be 1, 2, 4, 8, 16 or 32, not 24"),
        ("4/", 3, "'' is not a whole number"),
        ("3 4", 4, "the time signature '3 4' lacks its beat; add it, such as 3 4/4"),
        (": I4", 1, "the name '' of a tala"),
        ("my tala: I4 + ", 14, "the anga is missing"),
        ("my tala: I4 + + O", 14, "the anga is missing"),
        ("my tala: I4 + X", 15, "'X' is not a gesture"),
        ("tisra-jati matya (3+2+2)", 18, "tisra-jati matya is tisra-jati matya (3+2+3); leave out '(3+2+2)' or mend it"),
        ("6/8 (3 dotted beats)", 5, "6/8 is 6/8 (2 dotted beats)"),
        ("free (1)", 6, "free is free; leave out '(1)' or mend it"),
        ("jhampxyzxyzxy", 1, "write a tala such as adi"),
    ];

    [Fact]
    public void What_is_no_meter_is_refused_where_it_goes_wrong() => Assert.All(Faults, row =>
    {
        Assert.False(Meter.TryParse(row.Text, out var meter, out var error), row.Text);
        Assert.Null(meter);
        Assert.Contains(row.Message, error!.Message, StringComparison.Ordinal);
        Assert.Equal((row.Text, row.Column), (row.Text, error.Column));
    });

    [Theory]
    [InlineData("64/4", 64, 4)]
    [InlineData("63+1/32", 64, 32)]
    [InlineData("1/1", 1, 1)]
    [InlineData(" 3 + 2 / 16 ", 5, 16)]
    public void Time_signatures_reach_from_1_to_64_beats_of_1_to_32(string text, int beats, int type)
    {
        var meter = Meter.Parse(text);
        Assert.Equal((beats, type), (meter.Beats, meter.BeatType));
    }

    [Fact]
    public void Meters_made_in_code_keep_to_the_same_bounds()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.TimeSignature(0, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.TimeSignature(65, 4));
        Assert.Contains("must be 1, 2, 4, 8, 16 or 32, not 3", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.TimeSignature(4, 3)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.TimeSignature(4, 64));
        Assert.Equal(64, Meter.Additive([60, 4], 4).Beats);
        Assert.Contains("the beats of an avartana must be between 1 and 64, not 65", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([61, 4], 4)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([4, 0], 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([4, int.MaxValue], 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([], 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([2, 2], 5));
        Assert.Equal(64, Meter.Tala("long", [.. Enumerable.Repeat(Anga.Drutam, 32)]).Beats);
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Tala("longer", [.. Enumerable.Repeat(Anga.Drutam, 32), Anga.Anudrutam]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Tala("none", []));
        Assert.ThrowsAny<ArgumentException>(() => Meter.Tala(" ", [Anga.Drutam]));
        Assert.ThrowsAny<ArgumentException>(() => Meter.Tala(new string('a', 101), [Anga.Drutam]));
        Assert.Equal(100, Meter.Tala(new string('a', 100), [Anga.Drutam]).Name.Length);
    }

    [Fact]
    public void A_tala_of_ones_own_writes_its_angas_and_one_of_the_library_its_name()
    {
        Assert.Equal("Adi", Meter.Adi.ToText());
        Assert.Equal("7/8", Meter.Parse("7/8").ToText());
        Assert.Equal("evening: I4 + U + clap silent", Meter.Tala("evening", [Anga.Laghu(Jati.Chatusra), Anga.Anudrutam, Anga.Parse("clap silent")]).ToText());

        // With a known name and other angas, the angas must be written too.
        var other = Meter.Tala("Adi", [Anga.Laghu(Jati.Tisra)]);
        Assert.Equal("Adi: I3", other.ToText());
        Assert.Equal(other, Meter.Parse(other.ToText()));
        Assert.Equal(Meter.Adi, Meter.Tala("Adi", Meter.Adi.Angas));
    }

    [Fact]
    public void A_point_lies_in_the_anga_whose_end_comes_after_it()
    {
        // Adi is 4 + 2 + 2.
        Rational[] points = [0, new(7, 2), new(399, 100), 4, 5, new(599, 100), 6, 7, new(799, 100)];
        Assert.Equal([4, 4, 4, 6, 6, 6, 8, 8, 8], points.Select(Meter.Adi.AngaEnd));
        Assert.Contains("from 0 to less than 8, not at 8", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Adi.AngaEnd(8)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Free.AngaEnd(0));
    }

    [Theory]
    [InlineData("4/4", "4/4")]
    [InlineData("2+2+3/8", "2+2+3/8")]
    [InlineData("9/8", "9/8 (3 dotted beats)")]
    [InlineData("free", "free")]
    [InlineData("misra chapu", "misra chapu (3+4)")]
    [InlineData("misra jhampa", "misra-jati jhampa (7+1+2)")]
    public void A_meter_prints_what_its_name_does_not_say(string text, string printed)
    {
        Assert.Equal(printed, Meter.Parse(text).ToString());
        Assert.Equal(Meter.Parse(text), Meter.Parse(printed));
    }
}

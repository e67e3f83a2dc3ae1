using System.Globalization;

namespace Warmup.Tests;

/// <summary>
/// The thirty-five talas against the table tala35.tsv (computed from the anga rule; two published charts agree), row by row.
/// </summary>
public class TalaTests
{
    public static TheoryData<TalaRow> Rows => [.. TimeTables.Talas];

    [Theory]
    [MemberData(nameof(Rows), DisableDiscoveryEnumeration = true)]
    public void Angas_aksharas_and_gestures_are_those_of_the_published_charts(TalaRow row)
    {
        var meter = Meter.Tala(Enum.Parse<TalaFamily>(row.Tala), Enum.Parse<Jati>(row.Jati, ignoreCase: true));
        Assert.Equal(row.Angas, string.Concat(meter.Angas.ConvertAll(a => a.ToString()[0])));
        Assert.Equal(row.Groups, string.Join('+', meter.Groups));
        Assert.Equal(row.Aksharas, meter.Beats);
        Assert.Equal(row.Kriya, Gestures(meter));
    }

    [Fact]
    public void There_are_thirty_five_and_their_aksharas_add_up_to_393()
    {
        Assert.Equal(35, TimeTables.Talas.Count);
        Assert.Equal(35, Meter.Talas.Count);
        Assert.Equal(35, Meter.Talas.Distinct().Count());
        Assert.Equal(393, Meter.Talas.Sum(m => m.Beats));
    }

    [Fact]
    public void A_bare_name_has_the_jati_that_the_charts_call_its_default()
    {
        var defaults = TimeTables.Talas.Where(r => r.CommonName.StartsWith("default ", StringComparison.Ordinal)).ToList();
        Assert.Equal(7, defaults.Count);
        foreach (var row in defaults)
        {
            Assert.Equal(row.Groups, string.Join('+', Meter.Parse(row.CommonName["default ".Length..]).Groups));
        }
    }

    [Fact]
    public void Adi_is_chatusra_jati_triputa()
    {
        // One public chart prints Adi as 4+2+4; the rule I O O with a laghu of four gives 4+2+2.
        Assert.Equal("Adi", TimeTables.Talas.Single(r => r is { Tala: "Triputa", Jati: "chatusra" }).CommonName);
        Assert.Equal(Meter.Adi, Meter.Tala(TalaFamily.Triputa, Jati.Chatusra));
        Assert.Equal("I4 O O", string.Join(' ', Meter.Adi.Angas));
        Assert.Equal("Adi (4+2+2)", Meter.Adi.ToString());
    }

    [Theory]
    [InlineData("tisra chapu", "1+2")]
    [InlineData("khanda chapu", "2+3")]
    [InlineData("misra chapu", "3+4")]
    [InlineData("sankirna chapu", "4+5")]
    [InlineData("rupaka-chapu", "3")]
    public void Chapu_talas_have_the_groups_of_the_rules(string name, string groups)
    {
        // Misra and khanda chapu: lvnaga.wordpress.com, Talas in Carnatic Music 3; the others from memory.
        var meter = Meter.Parse(name);
        Assert.Equal(groups, string.Join('+', meter.Groups));
        Assert.Equal(meter.Beats, meter.Gestures.Count);
        Assert.Equal(Kriya.Clap, meter.Gestures[0]);
    }

    [Theory]
    [InlineData("misra chapu", "1 4 6", "")]
    [InlineData("khanda chapu", "1 3 4", "")]
    [InlineData("misra chapu with waves", "4 6", "1 2")]
    public void The_chapus_have_their_kriyas_where_teachers_give_them(string name, string claps, string waves)
    {
        // Three beats of 3, 2, 2 and of 2, 1, 2 aksharas: ajsriram.blogspot.com, Prominent Talas. The palm turned up on 1 and 2 of misra
        // chapu: lvnaga.wordpress.com, Talas in Carnatic Music 3.
        var gestures = Meter.Parse(name).Gestures;
        string Places(Kriya kriya) => string.Join(' ', Enumerable.Range(1, gestures.Count).Where(place => gestures[place - 1] == kriya));
        Assert.Equal((claps, waves), (Places(Kriya.Clap), Places(Kriya.Wave)));
    }

    [Fact]
    public void Chapu_alone_is_misra_chapu() => Assert.Equal("misra chapu (3+4)", Meter.Parse("chapu").ToString()); // lvnaga.wordpress.com

    [Fact]
    public void The_fingers_are_counted_from_the_little_one_and_begin_again_behind_the_thumb()
    {
        // Common practice; the order of the fingers from memory.
        Kriya[] expected =
        [
            Kriya.Clap, Kriya.LittleFinger, Kriya.RingFinger, Kriya.MiddleFinger, Kriya.IndexFinger, Kriya.Thumb, Kriya.LittleFinger,
            Kriya.RingFinger, Kriya.MiddleFinger,
        ];
        Assert.Equal(expected, Anga.Laghu(Jati.Sankirna).Gestures);
    }

    [Fact]
    public void A_value_that_is_no_jati_or_tala_is_refused_with_its_range()
    {
        Assert.Contains("between 0 and 4, not 5", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Tala(TalaFamily.Eka, (Jati)5)).Message, StringComparison.Ordinal);
        Assert.Contains("between 0 and 6, not 7", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Tala((TalaFamily)7, Jati.Misra)).Message, StringComparison.Ordinal);
    }

    private static string Gestures(Meter meter)
    {
        var names = meter.Gestures.ConvertAll(k => k switch
        {
            Kriya.Clap => "clap",
            Kriya.Wave => "wave",
            Kriya.Silent => "silent",
            _ => "count",
        });
        var at = 0;
        return string.Join(" | ", meter.Groups.Select(g =>
        {
            at += g;
            return string.Join('+', names.Skip(at - g).Take(g));
        }));
    }
}

/// <summary>Time signatures by the usual theory (common practice): 6/8 has two dotted beats, 7/8 seven eighths.</summary>
public class TimeSignatureTests
{
    [Theory]
    [InlineData("4/4", 4, "1/4", "4", 4)]
    [InlineData("3/4", 3, "1/4", "3", 4)]
    [InlineData("2/2", 2, "1/2", "2", 2)]
    [InlineData("3/8", 3, "1/8", "3", 8)]
    [InlineData("7/8", 7, "1/8", "7", 8)]
    [InlineData("6/8", 2, "3/8", "6", 8)]
    [InlineData("9/8", 3, "3/8", "9", 8)]
    [InlineData("12/8", 4, "3/8", "12", 8)]
    [InlineData("6/4", 2, "3/4", "6", 4)]
    [InlineData("12/16", 4, "3/16", "12", 16)]
    [InlineData("2+2+3/8", 7, "1/8", "2+2+3", 8)]
    [InlineData("3+3/8", 6, "1/8", "3+3", 8)]
    public void Beats_and_their_value(string text, int beats, string value, string upper, int lower)
    {
        var meter = Meter.Parse(text);
        Assert.Equal(beats, meter.Beats);
        Assert.Equal(value, meter.BeatValue.ToString());
        Assert.Equal((upper, lower), (string.Join('+', meter.SignatureGroups), meter.SignatureType));

        // A measure is as long as its signature says.
        Assert.Equal(new Rational(upper.Split('+').Sum(p => int.Parse(p, CultureInfo.InvariantCulture)), lower), meter.Beats * meter.BeatValue);
    }

    [Theory]
    [InlineData(0, 4, "between 1 and 64, not 0")]
    [InlineData(65, 4, "between 1 and 64, not 65")]
    [InlineData(4, 0, "1, 2, 4, 8, 16 or 32, not 0")]
    [InlineData(4, 6, "1, 2, 4, 8, 16 or 32, not 6")]
    [InlineData(4, 64, "1, 2, 4, 8, 16 or 32, not 64")]
    public void What_is_no_time_signature_is_refused_with_its_range(int number, int type, string message) =>
        Assert.Contains(message, Assert.Throws<ArgumentOutOfRangeException>(() => Meter.TimeSignature(number, type)).Message, StringComparison.Ordinal);

    [Fact]
    public void Groups_without_beats_and_too_long_sums_are_refused()
    {
        Assert.Contains("between 1 and 64, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([], 4)).Message, StringComparison.Ordinal);
        Assert.Contains("between 1 and 64, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([2, 0], 4)).Message, StringComparison.Ordinal);
        Assert.Contains("between 1 and 64, not 128", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Additive([64, 64], 4)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_end_of_an_anga_is_found_from_any_point_in_it()
    {
        Assert.Equal([4, 4, 6, 8, 8], ((Rational[])[0, new(7, 2), 4, 6, new(15, 2)]).Select(Meter.Adi.AngaEnd));
        Assert.Contains("less than 8", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Adi.AngaEnd(8)).Message, StringComparison.Ordinal);
    }
}

namespace Warmup.Tests;

/// <summary>Source: the angas of the talas in tala35.tsv (two published charts agree), and the groups of additive time signatures as they are written.</summary>
public class BeatAccentTests
{
    public static TheoryData<TalaRow> Rows => [.. TimeTables.Talas];

    private static string Marks(Meter meter, int from, int to) => string.Concat(Enumerable.Range(from, to - from).Select(b => meter.AccentOf(b) switch
    {
        BeatAccent.Avartana => '#',
        BeatAccent.Anga => '|',
        _ => '.',
    }));

    [Theory]
    [MemberData(nameof(Rows), DisableDiscoveryEnumeration = true)]
    public void The_first_beat_of_an_avartana_and_of_each_anga_are_accented(TalaRow row)
    {
        // A stroke for each anga of the chart, dots for its further aksharas.
        var angas = string.Concat(row.Groups.Split('+').Select(g => "|" + new string('.', int.Parse(g, System.Globalization.CultureInfo.InvariantCulture) - 1)));
        var avartana = "#" + angas[1..];
        var meter = Meter.Tala(Enum.Parse<TalaFamily>(row.Tala), Enum.Parse<Jati>(row.Jati, ignoreCase: true));
        Assert.Equal(avartana + avartana, Marks(meter, 0, 2 * row.Aksharas));
    }

    [Theory]
    [InlineData("adi", "#...|.|.")]
    [InlineData("2+2+3/8", "#.|.|..")]
    [InlineData("6/8", "#.")]
    [InlineData("4/4", "#...")]
    public void Time_signatures_are_accented_by_their_groups(string meter, string accents) =>
        Assert.Equal(accents, Marks(Meter.Parse(meter), 0, accents.Length));

    [Fact]
    public void Beats_of_a_count_in_lead_to_the_first_avartana() => Assert.Equal("...|.|.#..", Marks(Meter.Adi, -7, 3));

    [Fact]
    public void Beats_far_away_are_found() =>
        Assert.Equal((BeatAccent.Avartana, BeatAccent.Anga, BeatAccent.None), (Meter.Adi.AccentOf(8L << 40), Meter.Adi.AccentOf((-8L << 40) + 4), Meter.Adi.AccentOf((8L << 40) + 1)));

    [Fact]
    public void Free_rhythm_has_no_accents() => Assert.Equal("......", Marks(Meter.Free, -2, 4));

    [Fact]
    public void The_hand_does_the_same_in_every_avartana()
    {
        for (var beat = 0; beat < 16; beat++)
        {
            Assert.Equal(Meter.Adi.Gestures[beat % 8], Meter.Adi.KriyaOf(beat));
        }

        Assert.Null(Meter.TimeSignature(4, 4).KriyaOf(0));
        Assert.Null(Meter.Free.KriyaOf(0));
    }
}

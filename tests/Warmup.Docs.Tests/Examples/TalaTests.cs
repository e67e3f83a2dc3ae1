using Warmup.Midi;
using Warmup.Sheets;

namespace Warmup.Docs.Tests.Examples;

/// <summary>The page on adding a tala.</summary>
public sealed class TalaTests
{
    [Fact]
    public void A_tala_of_its_angas()
    {
        #region tala of angas
        var turn = new Anga([Kriya.Clap, Kriya.Silent, Kriya.Wave]);
        var evening = Meter.Tala("Evening", [Anga.Laghu(Jati.Chatusra), Anga.Drutam, turn]);
        var drill = new Drill
        {
            Scale = Catalogue.Default.Read("Mohanam"),
            Pattern = Pattern.Ladder,
            Tonic = Tonic.Parse("G3"),
            Meter = evening,
            Delivery = Delivery.LineByLine,
        };
        new TextSheetFormat().Save(drill.ToScore(), "evening.txt");
        new MidiFormat().Save(drill.ToScore(), "evening.mid");
        #endregion

        Assert.Equal((9, "Evening (4+2+3)"), (evening.Beats, evening.ToString()));
        var sheet = File.ReadAllText("evening.txt");
        Assert.Contains("Evening (4+2+3)", sheet, StringComparison.Ordinal);
        Assert.Contains("clap little ring middle | clap wave | clap . wave", sheet, StringComparison.Ordinal);

        // Line by line each line begins an avartana of nine aksharas.
        Assert.All(drill.ToScore().Sections[0].Lines, line => Assert.Equal(0, (line.Onset / 9).Denominator - 1));

        // The meta event of the time signature: nine quarters (2 to the power of 2).
        Assert.True(File.ReadAllBytes("evening.mid").AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0x58, 0x04, 9, 2]) > 0);
        File.Delete("evening.txt");
        File.Delete("evening.mid");
    }

    [Fact]
    public void A_tala_as_text()
    {
        #region tala as text
        var evening = Meter.Parse("Evening: I4 + O + clap silent wave");
        Console.WriteLine(evening);
        Console.WriteLine(evening.ToText());
        #endregion

        Assert.Equal(Meter.Tala("Evening", [Anga.Laghu(Jati.Chatusra), Anga.Drutam, new Anga([Kriya.Clap, Kriya.Silent, Kriya.Wave])]), evening);
        Assert.Equal("Evening: I4 + O + clap silent wave", evening.ToText());
    }

    [Theory]
    [InlineData("Evening: I4 + O + clap snap", "column 24", "'snap'")]
    [InlineData("Evening: I6", "column 10", "I3, I4, I5, I7 or I9")]
    [InlineData("Evening: I9 + I9 + I9 + I9 + I9 + I9 + I9 + I9", "column 45", "1 to 64")]
    [InlineData("Evening: I4 +", "column 14", "missing")]
    [InlineData(": I4", "column 1", "name")]
    public void What_is_not_a_tala_is_refused_at_its_place(string text, string place, string reason)
    {
        Assert.False(Meter.TryParse(text, out _, out var error));
        Assert.StartsWith(place, error.ToString(), StringComparison.Ordinal);
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_a_tala_is_refused_by_name()
    {
        Assert.Throws<ArgumentNullException>("name", () => Meter.Tala(null!, [Anga.Drutam]));
        Assert.Throws<ArgumentException>("name", () => Meter.Tala(" ", [Anga.Drutam]));
        Assert.Contains("between 1 and 64, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Tala("none", [])).Message, StringComparison.Ordinal);
        Assert.Contains("not 66", Assert.Throws<ArgumentOutOfRangeException>(() => Meter.Tala("long", Enumerable.Repeat(Anga.Drutam, 33).ToValueList())).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Anga([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Anga([(Kriya)8]));
    }
}

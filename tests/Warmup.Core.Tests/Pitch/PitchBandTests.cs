namespace Warmup.Tests;

/// <summary>Source: what the type promises of its name and its notes.</summary>
public class PitchBandTests
{
    private static readonly NoteName A3 = new('A', 0, 3);
    private static readonly NoteName E5 = new('E', 0, 5);

    [Fact]
    public void A_band_has_a_name_and_two_notes_and_was_measured_unless_it_says_otherwise()
    {
        var band = new PitchBand("Wren", A3, E5);
        Assert.Equal(("Wren", A3, E5, false), (band.Name, band.Low, band.High, band.IsAssumed));
        Assert.Equal("Wren (A3 to E5)", band.ToString());
        Assert.True((band with { IsAssumed = true }).IsAssumed);
    }

    [Fact]
    public void One_note_is_a_band_by_whatever_name() => Assert.Equal(60, new PitchBand("a", new NoteName('B', 1, 3), new NoteName('C', 0, 4)).Low.Midi);

    [Fact]
    public void Notes_upside_down_are_refused() =>
        Assert.Contains("E5", Assert.Throws<ArgumentException>(() => new PitchBand("Wren", E5, A3)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("a\nb")]
    [InlineData("a\u202Eb")]
    public void A_name_that_is_no_plain_text_is_refused(string name) => Assert.Throws<ArgumentException>(() => new PitchBand(name, A3, E5));

    [Fact]
    public void A_name_of_a_hundred_characters_is_the_longest()
    {
        Assert.Equal(100, new PitchBand(new string('x', 100), A3, E5).Name.Length);
        Assert.Contains("not 101", Assert.Throws<ArgumentException>(() => new PitchBand(new string('x', 101), A3, E5)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => new PitchBand(null!, A3, E5));
    }
}

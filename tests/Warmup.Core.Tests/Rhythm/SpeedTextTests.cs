namespace Warmup.Tests;

/// <summary>Speeds as people type them. Source: the documented forms, and notes an akshara = gati x 2^(kalam-1) / 4.</summary>
public class SpeedTextTests
{
    [Theory]
    [InlineData("2", 2, 4)]
    [InlineData(" Speed 4 ", 4, 4)]
    [InlineData("speed3", 3, 4)]
    [InlineData("1 gati 5", 1, 5)]
    [InlineData("4, nadai tisra", 4, 3)]
    [InlineData("khanda gati ten to the akshara", 4, 5)]
    [InlineData("Misra SEVEN to four AKSHARAS", 1, 7)]
    public void A_speed_is_read_by_its_number_or_its_notes(string text, int kalam, int gati) => Assert.Equal(new Speed(kalam, gati), Speed.Parse(text));

    [Theory]
    [InlineData("0")]
    [InlineData("5")]
    [InlineData("7")] // a gati by its number alone is no speed
    [InlineData("speed")]
    [InlineData("")]
    [InlineData("2 gati")]
    [InlineData("2 gati 8")]
    [InlineData("2 gati 3 4")]
    [InlineData("2 times 3")]
    [InlineData("tisra nadai three to the akshara x")]
    public void Any_other_speed_is_refused(string text) => Assert.False(Speed.TryParse(text, out _, out _));
}

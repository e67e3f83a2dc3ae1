namespace Warmup.Tests;

/// <summary>Source: the rules' section on bounds and text (S' upper, N_ lower, vakra: before zigzags, 2 to 12 different notes, 24 entries).</summary>
public class ScaleTextTests
{
    [Theory]
    [InlineData("S R2 G3 P D2 S' / S' D2 P G3 R2 S", "S R2 G3 P D2 S'", "S' D2 P G3 R2 S", true, false)]
    [InlineData("S R2 G3 P D2 S'", "S R2 G3 P D2 S'", "S' D2 P G3 R2 S", true, false)]
    [InlineData("S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S", "S R2 G3 P D2 S'", "S' N3 D2 P M1 G3 R2 S", false, false)]
    [InlineData("vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S", "S M1 G3 M1 P N3 S'", "S' N3 P M1 G3 R2 S", false, true)]
    [InlineData("  S   R2 G3\tP D2 S'  ", "S R2 G3 P D2 S'", "S' D2 P G3 R2 S", true, false)]
    public void Written_out_scales_are_read(string text, string ascent, string descent, bool symmetric, bool vakra)
    {
        var scale = Scale.Parse(text);
        Assert.Equal((ascent, descent), (string.Join(' ', scale.Ascent), string.Join(' ', scale.Descent)));
        Assert.Equal((symmetric, vakra), (scale.IsSymmetric, scale.IsVakra));
        Assert.Equal(scale, Catalogue.Default.Read(text));
    }

    [Theory]
    [InlineData("S R9 G3 P D2 S'", 3, "R9")] // unknown svara
    [InlineData("S R2 Q3 P D2 S'", 6, "Q3")]
    [InlineData("S R2 R2 G3 P D2 S'", 6, "R2")] // written twice without saying so
    [InlineData("S G3 R2 P D2 S'", 6, "R2")] // out of order without saying so
    [InlineData("S R2 G3 P D2 S' / S' D2 P R2 G3 S", 30, "G3")]
    [InlineData("S R2 G3 P D2 S' / S' D2 X P G3 R2 S", 25, "X")]
    [InlineData("S r2 G3 P D2 S'", 3, "r2")] // mixed upper and lower case
    public void A_fault_is_named_at_its_place(string text, int column, string token)
    {
        Assert.False(Scale.TryParse(text, out var scale, out var error));
        Assert.Null(scale);
        Assert.Equal((1, column), (error!.Line, error.Column));
        Assert.Contains(token, error.Message, StringComparison.Ordinal);
        Assert.False(Catalogue.Default.TryRead(text, out _, out _));
    }

    [Theory]
    [InlineData("S G3 R2 P D2 S'")]
    [InlineData("S R2 R2 G3 P D2 S'")]
    public void An_order_that_zigzags_is_accepted_when_it_says_so(string text)
    {
        Assert.False(Scale.TryParse(text, out _, out var error));
        Assert.Contains("vakra", error!.ToString(), StringComparison.Ordinal);
        Assert.True(Scale.TryParse("vakra: " + text, out var scale, out error), error?.ToString());
        Assert.Equal(text, string.Join(' ', scale!.Ascent));
    }

    [Theory]
    [InlineData("")]
    [InlineData("S")]
    [InlineData("/")]
    [InlineData("S R2 G3 P D2 S' /")]
    [InlineData("/ S' D2 P G3 R2 S")]
    [InlineData("S R2 G3 S' / S' G3 R2 S / S")]
    [InlineData("R2 G3 P D2")]
    [InlineData("vakra:")]
    [InlineData("S S'")]
    [InlineData("S R2 G3 P D2 S' / S D2 P G3 R2 S'")]
    [InlineData("S R2 G3 P D2 S' / D2 P G3 R2 S")]
    public void What_is_no_scale_is_refused_with_a_reason(string text)
    {
        Assert.False(Scale.TryParse(text, out var scale, out var error));
        Assert.Null(scale);
        Assert.NotEmpty(error!.Message);
        Assert.Equal(error, Assert.Throws<WarmupFormatException>(() => Scale.Parse(text)).Error);
    }

    [Fact]
    public void A_list_of_25_entries_is_refused_and_says_24()
    {
        var zigzag = string.Join(' ', Enumerable.Range(0, 11).Select(_ => "R2 G3"));
        Assert.True(Scale.TryParse($"vakra: S {zigzag} S'", out var longest, out var error), error?.ToString());
        Assert.Equal(24, longest!.Ascent.Count);
        Assert.False(Scale.TryParse($"vakra: S {zigzag} R2 S'", out _, out error));
        Assert.Contains("24", error!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_over_800_characters_is_refused_by_its_length()
    {
        Assert.False(Scale.TryParse("S R2 G3 P D2 S'" + new string(' ', 800), out _, out var error) && error is null);
        Assert.False(Scale.TryParse(string.Concat(Enumerable.Repeat("S R2 G3 ", 60)), out _, out error));
        Assert.True(error!.Message.Length < 500);
    }

    [Fact]
    public void Western_scales_are_written_in_numbers()
    {
        var scale = Scale.Parse("1 b3 4 b5 5 b7 1'");
        Assert.Equal([0, 3, 5, 6, 7, 10, 12], scale.Ascent.Select(t => t.Semitones));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("a\nb")]
    [InlineData("a\u202Eb")]
    [InlineData("a\u0000")]
    public void A_scale_needs_a_plain_name(string name) => Assert.ThrowsAny<ArgumentException>(() => new Scale(name, Catalogue.Default.Parent(15).Scale.Ascent));

    [Fact]
    public void A_name_of_101_characters_is_refused_with_the_bound()
    {
        Assert.Equal(100, new Scale(new string('a', 100), Catalogue.Default.Parent(1).Scale.Ascent).Name.Length);
        var message = Assert.ThrowsAny<ArgumentException>(() => new Scale(new string('a', 101), Catalogue.Default.Parent(1).Scale.Ascent)).Message;
        Assert.Contains("101", message, StringComparison.Ordinal);
        Assert.Contains("100", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lists_that_are_no_scale_are_refused()
    {
        Assert.ThrowsAny<ArgumentException>(() => new Scale("x", []));
        Assert.ThrowsAny<ArgumentException>(() => new Scale("x", [default(ScaleTone)]));
        Assert.ThrowsAny<ArgumentException>(() => new Scale("x", Catalogue.Default.Parent(1).Scale.Ascent, []));
        Assert.ThrowsAny<ArgumentException>(() => new Scale("x", Scale.Parse("S R1 M1 S'").Ascent, Scale.Parse("S R1 M1 P N3 / N3 P M1 R1 S").Descent));
    }
}

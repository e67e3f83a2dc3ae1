namespace Warmup.Tests;

/// <summary>Words to sing, lengths and exercises at the ends of their ranges. Source: the documented bounds (the project's own settings).</summary>
public class SungWordsTests
{
    private static readonly Scale Mohanam = Scale.Parse("S R2 G3 P D2 S'");

    private static IEnumerable<string?> Sung(Pattern pattern) => pattern.Expand(Mohanam).Lines.SelectMany(l => l.Notes.Select(n => n.Sung));

    [Fact]
    public void Words_begin_again_with_each_line_or_change_with_it()
    {
        var lines = Pattern.Parse("[S R G] + [S R]");
        Assert.Equal(["ma", "me", "ma", "ma", "me"], Sung(lines.Sung("ma", "me")));
        Assert.Equal(["ma", "ma", "ma", "me", "me"], Sung(lines.SungByLine("ma", "me")));
        Assert.Equal(["a", "a", "a", "a", "a"], Sung(lines.Sung("ma", "me").Sung("a"))); // the last words count
        Assert.Equal(["ma", "ma", "ma", "me", "me"], Sung(lines.Sung("a").SungByLine("ma", "me")));
    }

    [Theory]
    [InlineData("a")]
    [InlineData("l'au-be")]
    [InlineData("l\u2019au")]
    [InlineData("ā")]
    [InlineData("a\u0301")] // a letter and its mark
    [InlineData("\u0938\u093E")] // sa with its vowel sign, which is a mark
    [InlineData("\uD835\uDC1A")] // a letter of two units
    [InlineData("abcdefghijklmnopqrst")] // twenty
    public void Letters_marks_hyphens_and_apostrophes_can_be_sung(string word)
    {
        Assert.Equal(word, Sung(Pattern.Parse("[S]").Sung(word)).Single());
        Assert.Equal(Pattern.Run.Sung(word), Pattern.Parse(Pattern.Run.Sung(word).ToString()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("a b")]
    [InlineData("a1")]
    [InlineData("a.")]
    [InlineData("\uD83C\uDFB6")] // a picture
    [InlineData("a\u202Eb")]
    [InlineData("abcdefghijklmnopqrstu")] // twenty-one
    public void Anything_else_cannot(string word)
    {
        var refused = Assert.Throws<ArgumentException>(() => Pattern.Run.Sung("la", word));
        Assert.StartsWith("a sung word must have 1 to 20 letters, marks, hyphens or apostrophes, not '", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Pattern.Run.SungByLine(word));
    }

    [Fact]
    public void One_to_64_words_can_be_sung()
    {
        var words = Enumerable.Repeat("la", 65).ToArray();
        Assert.Equal(64, Sung(Pattern.Parse($"[{string.Join(' ', Enumerable.Repeat("S", 64))}]").Sung(words.AsSpan()[..64])).Count(w => w == "la"));
        Assert.Equal("1 to 64 words can be sung, not 65 (Parameter 'texts')", Assert.Throws<ArgumentException>(() => Pattern.Run.Sung(words)).Message);
        Assert.Throws<ArgumentException>(() => Pattern.Run.Sung());
    }

    [Fact]
    public void Lengths_go_from_1_to_4096_of_a_unit_to_4096_units()
    {
        // 64 x 64 = 4,096.
        var longest = Pattern.Parse("[S]").Stretch(64).Stretch(64);
        Assert.Equal(4_096, longest.Expand(Mohanam).Lines[0].Notes[0].Length);
        Assert.False(longest.Stretch(2).TryExpand(Mohanam, out _, out var refusal));
        Assert.Equal("a note or a silence would last 8192 units; lengths are from 1/4096 to 4096 units", refusal.Message);
        var shortest = Pattern.Parse("[S]").Shrink(64).Shrink(64);
        Assert.Equal(new Rational(1, 4_096), shortest.Expand(Mohanam).Lines[0].Notes[0].Length);
        Assert.False(shortest.Shrink(2).TryExpand(Mohanam, out _, out refusal));
        Assert.Contains("would last 1/8192 units", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_exercise_has_a_group_of_small_letters_a_number_and_a_meter()
    {
        var exercise = new Exercise("studio", 1, "three steps", Pattern.Run, "invented", "rupaka O I4");
        Assert.Equal(("studio-1", "studio-1: three steps", "chatusra-jati rupaka"), (exercise.Name, exercise.ToString(), exercise.Meter.Name));
        Assert.Equal("misra-jati jhampa", new Exercise("a", 1, "t", Pattern.Run, "s", "misra jhampa I7 U O").Meter.Name);
        Assert.Equal(Meter.Adi, new Exercise("a", 1, "t", Pattern.Run, "s").Meter);
        Assert.Equal(Meter.Adi, new Exercise("a", 1, "t", Pattern.Run, "s", "no such tala").Meter);
        Assert.StartsWith("a group must be small letters a to z, not 'Studio'", Assert.Throws<ArgumentException>(() => new Exercise("Studio", 1, "t", Pattern.Run, "s")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new Exercise("", 1, "t", Pattern.Run, "s"));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Exercise("a", 0, "t", Pattern.Run, "s"));
    }

    [Theory]
    [InlineData(1, 8)]
    [InlineData(1, 3)]
    [InlineData(5, 4)]
    [InlineData(-1, 4)]
    public void A_line_begins_a_quarter_a_half_three_quarters_or_one_akshara_after_the_beat_and_nowhere_else(int numerator, int denominator)
    {
        var drill = new Drill { Scale = Mohanam, Pattern = Pattern.Run, Tonic = Tonic.Parse("G3") };
        Assert.Throws<ArgumentOutOfRangeException>(() => drill with { Eduppu = new Rational(numerator, denominator) });
        Assert.Equal(1, (drill with { Eduppu = 1 }).ToScore().Sections[0].Eduppu);
    }
}

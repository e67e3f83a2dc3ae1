using System.Text.RegularExpressions;

namespace Warmup.Tests;

/// <summary>The patterns' text: what it reads, how it prints, and what it says where it cannot read. The language is the library's own.</summary>
public class PatternTextTests
{
    [Theory]
    [InlineData("ladder", "ladder")]
    [InlineData(" LADDER . Reversed+run ", "ladder.reversed + run")]
    [InlineData("(ladder + run) + (run + ladder)", "ladder + run + run + ladder")]
    [InlineData("((ladder + run)).ends", "(ladder + run).ends")]
    [InlineData("run.pairs(2)", "run.windows(3).ends")]
    [InlineData("run.span(2 2)", "run.transposed(2)")]
    [InlineData("run.span(-2 0)", "run.below(2)")]
    [InlineData("run.span(0 2)", "run.above(2)")]
    [InlineData("run.span(1,-1)", "run.span(1 -1)")]
    [InlineData("run.stretch(4 2)", "run.stretch(2)")]
    [InlineData("run.stretch(2 4)", "run.shrink(2)")]
    [InlineData("run.alternate(ladder + run).weave(figure(1, 2, 3))", "run.alternate(ladder + run).weave(figure(1 2 3))")]
    [InlineData("[S R G ; | M' , || / N_ -]", "[S R G , , M' , / N_ -]")]
    [InlineData("[ 1 2,3 ]", "[1 2 , 3]")]
    [InlineData("S R G / R G M", "[S R G / R G M]")]
    [InlineData(" 1 2 3 -1 ", "[1 2 3 -1]")]
    [InlineData("s r g m p d n S", "[S R G M P D N S']")]
    [InlineData("sa ri ga ma pa da ni Sa'", "[S R G M P D N S']")]
    [InlineData("do re mi fa sol la ti do'", "[S R G M P D N S']")]
    [InlineData("[so mi do , la_]", "[P G S , D_]")]
    [InlineData("Do Re | Mi / mi re do", "[S R G / G R S]")]
    [InlineData("Sa re Ga, Dha | ni_", "[S R G , D N_]")]
    [InlineData("run.sung(a, e i)", "run.sung(a e i)")]
    public void Text_is_read_and_printed_in_one_form(string text, string canonical)
    {
        var pattern = Pattern.Parse(text);
        Assert.Equal(canonical, pattern.ToString());
        Assert.Equal(pattern, Pattern.Parse(canonical));
        Assert.Equal(pattern.GetHashCode(), Pattern.Parse(canonical).GetHashCode());
    }

    [Theory]
    [InlineData("", 1, "expected a pattern")]
    [InlineData("ladr", 1, "unknown word 'ladr', perhaps ladder")]
    [InlineData("ladder.reverse", 8, "unknown word 'reverse', perhaps reversed")]
    [InlineData("ladder.endz", 8, "perhaps ends")]
    [InlineData("ladder.", 8, "the text ends; expected a combinator after the dot")]
    [InlineData("ladder.every(2)", 8, "the word 'every' is now called 'every-nth'")]
    [InlineData("run.Reach(1 -1)", 5, "the word 'Reach' is now called 'span'")]
    [InlineData("ladder.xyzzy", 8, "unknown word 'xyzzy'; the words that can stand here are reversed, ")]
    [InlineData("ladder.ladder", 8, "cannot follow a dot")]
    [InlineData("ends", 1, "needs a pattern before it")]
    [InlineData("ladder.take", 12, "needs a number from 1 to 10000 in parentheses")]
    [InlineData("ladder.take(0)", 13, "a number from 1 to 10000, not '0'")]
    [InlineData("ladder.take(1 2)", 15, "a number from 1 to 10000, not '2'")]
    [InlineData("ladder.notes(1)", 15, "needs 2 numbers from 1 to 1000")]
    [InlineData("ladder.notes(3 2)", 8, "the last note of 'notes' must be between 3 and 1000, not 2")]
    [InlineData("ladder.order(1 3)", 8, "must hold each number from 1 to 2 once, not '1 3'")]
    [InlineData("ladder.ends()", 12, "takes no parentheses")]
    [InlineData("ladder + ", 10, "the text ends; expected a pattern")]
    [InlineData("(ladder", 8, "not closed; expected ')'")]
    [InlineData("[S R", 1, "not closed; expected ']'")]
    [InlineData("[S R / ]", 8, "has no notes")]
    [InlineData("[, S]", 2, "the line has no note yet")]
    [InlineData("[- S]", 2, "the line has no note yet")]
    [InlineData("[S r]", 4, "mixes small and capital letters")]
    [InlineData("[S R2]", 4, "leave the number out")]
    [InlineData("[S 1]", 4, "letters and numbers are mixed")]
    [InlineData("[S X]", 4, "expected a svara letter")]
    [InlineData("[S 'R]", 4, "expected a svara letter")]
    [InlineData("[1 99]", 4, "a place must be between -28 and 29, not '99'")]
    [InlineData("run.notes(0 4)", 11, "'notes' counts from 1, so there is no 0; what counted from 0 is now notes(1 5)")]
    [InlineData("[0 1 2 -1]", 2, "places count from 1, the tonic, and the note below it is -1, so there is no 0; what counted from 0 is now 1 2 3 -1")]
    [InlineData("figure(0 1 2)", 8, "what counted from 0 is now figure(1 2 3)")]
    [InlineData("figure(1 0).ends", 10, "is now figure(2 1)")]
    [InlineData("run.returning(0)", 15, "what counted from 0 is now returning(1)")]
    [InlineData("figure(26)", 8, "1 to 64 places from -24 to 25")]
    [InlineData("figure()", 8, "1 to 64 places")]
    [InlineData("S R G .N", 7, "write N_ for the lower octave, N' for the upper")]
    [InlineData("S R N. S", 5, "write N_ for the lower octave, N' for the upper")]
    [InlineData("S R G M.reversed", 7, "put the lines in brackets: [S R G M].reversed")]
    [InlineData("s r G", 5, "mixes small and capital letters")]
    [InlineData("r g S", 5, "mixes small and capital letters")]
    [InlineData("S R1 G3", 3, "leave the number out")]
    [InlineData("[S''''']", 2, "at most 28 places above or below the tonic")]
    [InlineData("[S'_]", 2, "goes up and down at once")]
    [InlineData("run.sung(a1)", 10, "words to sing")]
    [InlineData("run.sung()", 10, "words to sing")]
    [InlineData("run.weave()", 11, "expected a pattern")]
    [InlineData("run.weave(run", 14, "expected ')'")]
    [InlineData("run run", 5, "expected '.', '+' or the end")]
    public void An_error_shows_the_place_and_what_was_expected(string text, int column, string expected)
    {
        Assert.False(Pattern.TryParse(text, out var pattern, out var error));
        Assert.Null(pattern);
        Assert.Equal(column, error!.Column);
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_word_says_what_it_does_and_how_it_is_written()
    {
        Assert.Equal(PatternLanguage.Standard.Words.Count, PatternLanguage.Standard.Words.ConvertAll(w => w.Name).ToHashSet().Count);
        Assert.All(PatternLanguage.Standard.Words.ToArray(), word =>
        {
            Assert.NotEmpty(word.Meaning);
            Assert.Contains(word.Name, word.Form, StringComparison.Ordinal);
            Assert.Equal(!word.IsPrimitive, word.Form.StartsWith('.'));
        });
    }

    /// <summary>The tables of docs/patterns.md list the words of the library, each once, with those that they are short for.</summary>
    [Fact]
    public void The_page_of_patterns_lists_every_word()
    {
        using var reader = new StreamReader(typeof(PatternTextTests).Assembly.GetManifestResourceStream("docs.patterns.md")!);
        var words = reader.ReadToEnd().Split("## Words", 2)[1].Split("\n## ", 2)[0];
        var listed = Regex.Matches(words, @"^\| (?<cell>[^|]+) \|", RegexOptions.Multiline)
            .SelectMany(row => Regex.Matches(row.Groups["cell"].Value, @"`\.?(?<name>[a-z-]+)(\([^`]*\))?`")).Select(m => m.Groups["name"].Value);
        Assert.Equal(PatternLanguage.Standard.Words.Select(w => w.Name).Order(), listed.Order());
    }

    [Fact]
    public void Patterns_are_read_as_any_type_that_is_parsed()
    {
        Assert.Equal(Pattern.Parse("ladder.ends"), Read<Pattern>("ladder.ends"));
        Assert.Equal(Research.PatternVocabulary.Usual, Read<Research.PatternVocabulary>(Research.PatternVocabulary.Usual.ToString()));
        Assert.False(Research.PatternVocabulary.TryParse("ladder .endz", out _, out var error));
        Assert.Equal((8, "unknown word 'endz', perhaps ends"), (error.Column, error.Message));
    }

    // As binders do: through the interfaces alone.
    private static T Read<T>(string text)
        where T : class, ISpanParsable<T>
    {
        Assert.False(T.TryParse("%".AsSpan(), null, out var none));
        Assert.Null(none);
        Assert.Throws<WarmupFormatException>(() => T.Parse("%".AsSpan(), null));
        Assert.True(T.TryParse(text.AsSpan(), null, out var read));
        Assert.Equal(read, T.Parse(text.AsSpan(), null));
        Assert.Equal(read, ReadString<T>(text));
        return read;
    }

    private static T ReadString<T>(string text)
        where T : class, IParsable<T>
    {
        Assert.False(T.TryParse("%", null, out var none) || T.TryParse(null, null, out none));
        Assert.Null(none);
        Assert.Throws<WarmupFormatException>(() => T.Parse("%", null));
        Assert.Throws<ArgumentNullException>(() => T.Parse(null!, null));
        Assert.True(T.TryParse(text, null, out var read));
        Assert.Equal(read, T.Parse(text, null));
        return read;
    }

    [Fact]
    public void A_hundred_patterns_in_a_row_are_one_sum_of_two_levels()
    {
        var sum = Enumerable.Repeat(Pattern.Ladder, 100).Aggregate((a, b) => a + b);
        Assert.Equal(101, sum.Nodes);

        // 64 levels are the most: 62 more fit, and no further one.
        var deepest = Enumerable.Range(0, 62).Aggregate(sum, (p, _) => p.Reversed());
        Assert.ThrowsAny<ArgumentException>(() => deepest.Reversed());
        Assert.Equal(700, sum.Expand(Scale.Parse("S R2 G3 M1 P D2 N3 S'")).Lines.Count);
    }
}

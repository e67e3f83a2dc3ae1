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

    private static readonly (string Text, int Column, string Expected)[] Faults =
    [
        ("+ run", 1, "unexpected '+ run'; expected a pattern: ladder, run, figure, empty, written lines in [ ] or a sum in ( )"),
        ("()", 2, "unexpected ')'; expected a pattern: ladder, "),
        ("(run + )", 8, "unexpected ')'; expected a pattern"),
        ("run.)", 5, "unexpected ')'; expected a combinator after the dot: reversed, "),
        ("run. . ends", 6, "expected a combinator after the dot"),
        ("run ends", 5, "unexpected 'ends'; expected '.', '+' or the end"),
        ("run)", 4, "unexpected ')'; expected '.', '+' or the end"),
        ("run.ENDZ", 5, "unknown word 'ENDZ', perhaps ends"),
        ("run.reversde", 5, "perhaps reversed"), // two letters of eight
        ("run.tkae", 5, "unknown word 'tkae'; the words that can stand here are "), // two letters of four are too many
        ("run.tak", 5, "perhaps take"),
        ("run.laddr", 5, "unknown word 'laddr'; the words that can stand here are "), // ladder cannot stand there
        ("fgure(1)", 1, "perhaps figure"),
        ("run.there-and-back-and-there-again-x", 5, "'; the words that can stand here are "),
        ("run.take(x 2)", 10, "a number from 1 to 10000, not 'x 2'"),
        ("run.take(2", 11, "a number from 1 to 10000, not the end of the text"),
        ("run.take()", 10, "a number from 1 to 10000, not 0"), // none, that is
        ("run.take 2", 10, "needs a number from 1 to 10000 in parentheses"),
        ("run.take(10001)", 10, "not '10001'"),
        ("run.notes(1 2 3)", 15, "2 numbers from 1 to 1000, separated by spaces, not '3'"),
        ("run.notes(0 4", 11, "what counted from 0 is now notes(1 5"),
        ("run.notes(5 0)", 13, "what counted from 0 is now notes(6 1)"),
        ("run.stretch()", 13, "1 to 2 numbers from 1 to 64, separated by spaces"),
        ("run.stretch(0 2)", 13, "not '0 2'"),
        ("run.transposed(25)", 16, "a number from -24 to 24, not '25'"),
        ("run.returning(26)", 15, "a place from -24 to 25, where 1 is the note that the line stands on and -1 the note below it, not '26'"),
        ("run.returning(-25)", 15, "a place from -24 to 25"),
        ("run.order(1 2 2)", 5, "an order of three numbers must hold each number from 1 to 3 once, not '1 2 2'"),
        ("run.order(65)", 11, "1 to 64 numbers from 1 to 64"),
        ("run.order(2)", 5, "an order of one number must hold"),
        ("run.sung(a", 11, "1 to 64 words to sing, separated by spaces, not the end of the text"),
        ("run.sung(a b1 c)", 12, "not 'b1 c'"),
        ("run.weave", 10, "'weave' needs a pattern in parentheses"),
        ("run.weave(ladder + )", 20, "expected a pattern"),
        ("run.ends(2)", 9, "'ends' takes no parentheses"),
        ("ladder(2)", 7, "'ladder' takes no parentheses"),
        ("run + [S X]", 10, "expected a svara letter"),
        ("run.repeat(10000).repeat(2)", 19, "at most 100000 notes in a seven-note scale, not 160000"),
        ("run\0", 4, "expected '.', '+' or the end"),
    ];

    /// <summary>More faults, in one test because each is quick.</summary>
    [Fact]
    public void What_cannot_be_read_is_told_where_it_stands() => Assert.All(Faults, row =>
    {
        Assert.False(Pattern.TryParse(row.Text, out var pattern, out var error), row.Text);
        Assert.Null(pattern);
        Assert.Contains(row.Expected, error!.Message, StringComparison.Ordinal);
        Assert.Equal((row.Text, row.Column), (row.Text, error.Column));
    });

    private static readonly (string Text, string Printed)[] Alike =
    [
        ("run.span(2 0)", "run.span(2 0)"),
        ("run.span(0 -2)", "run.span(0 -2)"),
        ("run.span(-2 1)", "run.span(-2 1)"),
        ("run.span(0 0)", "run.transposed(0)"),
        ("run.below(0)", "run.transposed(0)"),
        ("run.above(0)", "run.transposed(0)"),
        ("run.span(-24 24)", "run.span(-24 24)"),
        ("run.stretch(3 2)", "run.stretch(3 2)"),
        ("run.stretch(64 64)", "run.stretch(1)"),
        ("run.shrink(1)", "run.stretch(1)"),
        ("run.pairs(63)", "run.windows(64).ends"),
        ("run.take( 10000 )", "run.take(10000)"),
        ("figure(-24 25)", "figure(-24 25)"),
        ("run.returning(-1)", "run.returning(-1)"),
        ("run.order(2, 1)", "run.order(2 1)"),
        ("run.weave((ladder))", "run.weave(ladder)"),
        ("run + (ladder + run).ends + run", "run + (ladder + run).ends + run"),
    ];

    [Fact]
    public void Words_with_numbers_at_their_ends_are_printed_in_one_form() => Assert.All(Alike, row =>
    {
        Assert.Equal((row.Text, row.Printed), (row.Text, Pattern.Parse(row.Text).ToString()));
        Assert.Equal(Pattern.Parse(row.Text), Pattern.Parse(row.Printed));
    });

    [Fact]
    public void As_many_parts_as_the_bounds_allow_are_read()
    {
        Assert.Equal(200, Pattern.Parse(string.Join(" + ", Enumerable.Repeat("(run)", 200))).Operands.Count); // 64 is the bound of nesting only
        Assert.Equal(Pattern.Run, Pattern.Parse(new string('(', 64) + "run" + new string(')', 64)));
        Assert.False(Pattern.TryParse(new string('(', 65) + "run" + new string(')', 65), out _, out var error));
        Assert.Equal((65, "parentheses must be nested at most 64 deep"), (error.Column, error.Message));
        var places = string.Join(' ', Enumerable.Repeat("1", 64));
        Assert.Equal(64, Pattern.Parse($"figure({places})").Numbers.Count);
        Assert.False(Pattern.TryParse($"figure({places} 1)", out _, out error));
        Assert.Contains("1 to 64 places", error.Message, StringComparison.Ordinal);
        var words = string.Join(' ', Enumerable.Repeat("la", 64));
        Assert.Equal($"run.sung({words})", Pattern.Parse($"run.sung({words})").ToString());
        Assert.False(Pattern.TryParse($"run.sung({words} la)", out _, out error));
        Assert.Contains("1 to 64 words to sing", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ladder", "ladder")]
    [InlineData("figure", "figure(n n ...)")]
    [InlineData("ends", ".ends")]
    [InlineData("take", ".take(n)")]
    [InlineData("notes", ".notes(n n)")]
    [InlineData("span", ".span(n n)")]
    [InlineData("stretch", ".stretch(n)")] // a second number may be left out
    [InlineData("order", ".order(n n ...)")]
    [InlineData("weave", ".weave(pattern)")]
    [InlineData("sung", ".sung(word word ...)")]
    public void A_word_shows_what_it_takes(string name, string form) =>
        Assert.Equal(form, PatternLanguage.Standard.Words.First(w => w.Name == name).Form);

    [Fact]
    public void A_pattern_is_taken_apart_and_built_anew()
    {
        static Pattern Anew(string text, string operands, params int[] numbers) => Pattern.Parse(text).With(
            operands.Length == 0 ? [] : operands.Split(", ").Select(Pattern.Parse).ToValueList(), ValueList.Create<int>(numbers));
        Assert.Equal("run.take(2)", Anew("ladder.take(3)", "run", 2).ToString());
        Assert.Equal("figure(1 3)", Anew("figure(1 2)", string.Empty, 0, 2).ToString());
        Assert.Equal("run.weave(ladder)", Anew("ladder.weave(run)", "run, ladder").ToString());
        Assert.Equal("ladder.sung(a e)", Anew("run.sung(a e)", "ladder").ToString());
        Assert.Equal("run + ladder + run", Anew("run + ladder", "run, ladder, run").ToString());
        Assert.Equal("[S R]", Anew("[S R]", string.Empty).ToString());
        Assert.Equal("'take' takes one operand, not 2 (Parameter 'operands')", Assert.Throws<ArgumentException>(() => Anew("ladder.take(3)", "run, run", 2)).Message);
        Assert.Equal("'weave' takes two operands, not 1 (Parameter 'operands')", Assert.Throws<ArgumentException>(() => Anew("ladder.weave(run)", "run")).Message);
        Assert.Equal("'take' takes a number from 1 to 10000, not 0 (Parameter 'numbers')", Assert.Throws<ArgumentException>(() => Anew("ladder.take(3)", "run", 0)).Message);
        Assert.Contains("the last note of 'notes'", Assert.Throws<ArgumentException>(() => Anew("run.notes(1 2)", "run", 3, 2)).Message, StringComparison.Ordinal);

        var weave = Pattern.Parse("ladder.weave(run + run)");
        Assert.Equal(("weave", 0, 2), (weave.Word, weave.Numbers.Count, weave.Operands.Count));
        Assert.Equal(("+", 2), (weave.Operands[1].Word, weave.Operands[1].Operands.Count));
        Assert.Equal(("[]", 0, 0), (Pattern.Parse("[S]").Word, Pattern.Parse("[S]").Numbers.Count, Pattern.Parse("[S]").Operands.Count));
        Assert.Equal([0, 2], Pattern.Parse("figure(1 3)").Numbers.ToArray()); // in code steps count from 0
    }

    [Fact]
    public void Numbers_given_in_code_keep_to_the_same_ranges()
    {
        foreach (var refused in (Func<Pattern>[])[
            () => Pattern.Figure(), () => Pattern.Figure(new int[65]), () => Pattern.Figure(25), () => Pattern.Figure(-25), () => Pattern.Run.Rhythm(), () => Pattern.Run.Rhythm(new int[65]),
            () => Pattern.Run.Rhythm(1, 0), () => Pattern.Run.Rhythm(65), () => Pattern.Run.Order(), () => Pattern.Run.Order(2), () => Pattern.Run.Order(1, 1),
            () => Pattern.Run.Order([.. Enumerable.Range(1, 65)]), () => Pattern.Run.Order(0, 1), () => Pattern.Run.Order(-1), () => Pattern.Run.Notes(0, 1), () => Pattern.Run.Notes(2, 1),
            () => Pattern.Run.Notes(1, 1_001), () => Pattern.Run.Pairs(0), () => Pattern.Run.Pairs(64), () => Pattern.Run.Below(-1), () => Pattern.Run.Below(25), () => Pattern.Run.Above(-1),
            () => Pattern.Run.Transposed(-25), () => Pattern.Run.Span(0, 25), () => Pattern.Run.Returning(25), () => Pattern.Run.EveryNth(0), () => Pattern.Run.EveryNth(1_001)])
        {
            Assert.ThrowsAny<ArgumentException>(refused);
        }

        foreach (var kept in (Pattern[])[
            Pattern.Figure(new int[64]), Pattern.Figure(24, -24), Pattern.Run.Rhythm(64, 1), Pattern.Run.Rhythm([.. Enumerable.Repeat(2, 64)]), Pattern.Run.Order([.. Enumerable.Range(1, 64).Reverse()]),
            Pattern.Run.Notes(1_000, 1_000), Pattern.Run.Pairs(63), Pattern.Run.Below(24), Pattern.Run.Above(24), Pattern.Run.Span(-24, 24), Pattern.Run.Returning(-24), Pattern.Run.EveryNth(1_000)])
        {
            Assert.Equal(kept, Pattern.Parse(kept.ToString()));
        }

        Assert.StartsWith("a figure must have 1 to 64 steps, not 0", Assert.Throws<ArgumentException>(() => Pattern.Figure()).Message, StringComparison.Ordinal);
        Assert.StartsWith("a rhythm must have 1 to 64 numbers, not 0", Assert.Throws<ArgumentException>(() => Pattern.Run.Rhythm()).Message, StringComparison.Ordinal);
        Assert.StartsWith("an order of two numbers must hold each number from 1 to 2 once, not '1 1'", Assert.Throws<ArgumentException>(() => Pattern.Run.Order(1, 1)).Message, StringComparison.Ordinal);
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

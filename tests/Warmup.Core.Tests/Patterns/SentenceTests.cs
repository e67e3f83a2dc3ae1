using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>
/// Patterns said in plain English. The sentences are the project's own; what a test can see is held here for every word with numbers of
/// all kinds: open places, "one lines", "2." for an ordinal, a minus sign where the sentence must say "down".
/// </summary>
public partial class SentenceTests
{
    private static readonly int[] Numbers = [-10_000, -24, -13, -2, -1, 0, 1, 2, 3, 4, 11, 12, 13, 21, 22, 23, 24, 63, 64, 111, 1_000, 10_000];

    [Theory]
    [InlineData("ladder.every-nth(2)", "of each line the first note and every second note after it are kept")]
    [InlineData("ladder.every-nth(1)", "every note of each line is kept")]
    [InlineData("ladder.every-nth(12)", "every twelfth note after it")]
    [InlineData("ladder.every-nth(13)", "every 13th note after it")]
    [InlineData("ladder.every-nth(22)", "every 22nd note after it")]
    [InlineData("ladder.every-nth(23)", "every 23rd note after it")]
    [InlineData("ladder.every-nth(24)", "every 24th note after it")]
    [InlineData("ladder.every-nth(111)", "every 111th note after it")]
    [InlineData("ladder.every-nth(113)", "every 113th note after it")]
    [InlineData("ladder.every-nth(101)", "every 101st note after it")]
    [InlineData("ladder.hold(12)", "held twelve units longer")]
    [InlineData("ladder.hold(13)", "held 13 units longer")]
    [InlineData("ladder.transposed(0)", "the whole rule stays in its place")]
    [InlineData("ladder.above(1)", "it reaches one step further up")]
    [InlineData("ladder.returning(3)", "the note two steps above the tonic is sung")]
    [InlineData("ladder.fill(1)", "a whole number of units")]
    [InlineData("ladder.fill(4)", "until the line's length is a multiple of four units")]
    [InlineData("ladder.windows(1)", "each note becomes a line of its own")]
    [InlineData("ladder.windows(3)", "a window of three notes slides over each line")]
    [InlineData("ladder.order(1)", "the lines stay in their order")]
    [InlineData("ladder.sung(a e)", "the notes are sung on a, e in turn")]
    [InlineData("ladder.sung-by-line(a)", "all lines are sung on a")]
    [InlineData("ladder.rhythm(2)", "the lengths of each line's notes are multiplied by 2")]
    [InlineData("ladder.stretch(2)", "multiplied by 2")]
    [InlineData("ladder.take(1)", "only the first line is kept")]
    [InlineData("ladder.take(2)", "only the first two lines are kept")]
    [InlineData("[S] + [R / G]", "the written line is S; then the written lines are R / G")]
    [InlineData("ladder.every-nth(21)", "every 21st note after it")]
    [InlineData("ladder.every-nth(112)", "every 112th note after it")]
    [InlineData("ladder.rotate(-2)", "the last two lines are moved to the beginning")]
    [InlineData("ladder.rotate(-1)", "the last line is moved to the beginning")]
    [InlineData("ladder.rotate(1)", "the first line is moved to the end")]
    [InlineData("ladder.rotate(0)", "the lines stay in their order")]
    [InlineData("ladder.transposed(-1)", "the whole rule moves down one step of the scale")]
    [InlineData("ladder.span(-2 13)", "its lower end moves down two steps and its upper end moves up 13 steps")]
    [InlineData("ladder.span(0 -1)", "its lower end stays in its place and its upper end moves down one step")]
    [InlineData("ladder.below(1)", "it reaches one step further down")]
    [InlineData("ladder.returning(1)", "after each note the tonic is sung")]
    [InlineData("ladder.returning(-3)", "after each note the note three steps below the tonic is sung")]
    [InlineData("ladder.notes(2 2)", "of each line only the second note is kept")]
    [InlineData("ladder.notes(2 4)", "of each line only notes 2 to 4 are kept")]
    [InlineData("figure(-1 1 3)", "the figure one step below, 1, 3 is sung from the tonic")]
    [InlineData("ladder.drop(1)", "the first line is left out")]
    [InlineData("ladder.repeat(1)", "the whole is sung once")]
    [InlineData("ladder.each-line(2)", "each line is sung twice before the next")]
    [InlineData("ladder.stretch(3 2)", "all lengths and silences are multiplied by 3/2")]
    [InlineData("ladder.rhythm(2 1 1)", "the lengths of each line's notes are multiplied in turn by 2, 1 and 1")]
    [InlineData("ladder.sung(a)", "all notes are sung on a")]
    [InlineData("run.alternate(ladder.ends)", "the lines of two patterns take turns: (one line goes over")]
    [InlineData("run.weave(run).take(2)", "all of this together: (within each line the notes of two patterns take turns: ")]
    [InlineData("(run + ladder).repeat(2)", "all of this together: (one line goes over the whole scale from the tonic to the upper tonic; then each line starts")]
    public void A_sentence_is_plain_English(string pattern, string expected) =>
        Assert.Contains(expected, Pattern.Parse(pattern).Describe(), StringComparison.Ordinal);

    [Fact]
    public void Every_word_with_numbers_of_all_kinds_is_said_in_plain_English()
    {
        var said = 0;
        foreach (var word in PatternLanguage.Standard.Words)
        {
            var written = Written(word).Where(t => Pattern.TryParse(t, out _, out _)).ToList();
            Assert.NotEmpty(written);
            foreach (var text in written)
            {
                var sentence = Pattern.Parse(text).Describe();
                Assert.True(IsPlain(sentence), $"{text}: {sentence}");
                said++;
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{said} sentences");
        Assert.True(said > 500);
    }

    [Fact]
    public void What_words_mean_is_plain_English_too() => Assert.All(PatternLanguage.Standard.Words.ToArray(), word =>
    {
        Assert.True(IsPlain(word.Meaning), word.Meaning);
        Assert.InRange(word.ToString().Length, 1, 200);
    });

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 300)]
    public bool Every_pattern_has_a_sentence(Pattern pattern) =>
        pattern.Describe() is { Length: > 5 } sentence && !sentence.Contains('{', StringComparison.Ordinal) && !sentence.Contains(";;", StringComparison.Ordinal);

    [Theory]
    [InlineData("ladder.drop(9)", "no lines; ")]
    [InlineData("ladder.take(1)", "one line; ")]
    [InlineData("ladder.take(2)", "two lines; ")]
    [InlineData("ladder.repeat(2)", "14 lines; ")]
    public void The_lines_of_a_scale_are_counted(string pattern, string beginning) =>
        Assert.StartsWith(beginning, Pattern.Parse(pattern).Describe(Scale.Parse("S R2 G3 M1 P D2 N3 S'")), StringComparison.Ordinal);

    private static IEnumerable<string> Written(PatternWord word)
    {
        var before = word.IsPrimitive ? string.Empty : "ladder.";
        if (word.Form.EndsWith("(n)", StringComparison.Ordinal))
        {
            return Numbers.Select(n => $"{before}{word.Name}({n})");
        }

        if (word.Form.EndsWith("(n n)", StringComparison.Ordinal))
        {
            return from a in Numbers from b in Numbers select $"{before}{word.Name}({a} {b})";
        }

        return word.Form.EndsWith("(n n ...)", StringComparison.Ordinal) ? ((string[])["1", "2 1", "1 2", "3 1 2", "-2 0 5", "0 -1", "64", "24"]).Select(n => $"{before}{word.Name}({n})")
            : word.Form.EndsWith("(pattern)", StringComparison.Ordinal) ? [$"{before}{word.Name}(run)", $"{before}{word.Name}(run + ladder.take(1))"]
            : word.Form.EndsWith("(word word ...)", StringComparison.Ordinal) ? [$"{before}{word.Name}(a)", $"{before}{word.Name}(a e i)"]
            : [before + word.Name];
    }

    private static bool IsPlain(string sentence) => sentence.Length > 5
        && !Blemish().IsMatch(sentence)
        && sentence.Trim() == sentence
        && !sentence.EndsWith('.');

    // An open place; "1 lines"; "one lines"; "2." for an ordinal; a negative number; two spaces; words of the wrong place.
    [GeneratedRegex(@"[{}]|\b(1|one) (line|note|step|unit|time|place|number|word)s\b|\d\.(\s|$)|-\d|  |\bbehind\b|\bso many\b|\bfurther on\b")]
    private static partial Regex Blemish();
}

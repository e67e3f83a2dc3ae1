using System.Reflection;
using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>
/// What one would think and is not so: the counterexamples of docs/laws.md, written out by hand. The scales are common practice; the
/// shares of the generators are the project's own.
/// </summary>
public class LawCounterexampleTests
{
    private const string Shankarabharanam = "S R2 G3 M1 P D2 N3 S'";
    private const string Mohanam = "S R2 G3 P D2 S'";
    private const string Bilahari = "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S";
    private const string Bhairavi = "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S";
    private const string Kedaram = "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S";

    private static readonly (string Pattern, string Normal)[] WordByWord =
    [
        ("ladder.take(2).take(3)", "ladder.take(2)"),
        ("ladder.take(3).take(2)", "ladder.take(2)"),
        ("ladder.drop(9999).drop(1)", "ladder.drop(10000)"),
        ("ladder.drop(10000).drop(1)", "ladder.drop(10000).drop(1)"),
        ("ladder.rotate(3).rotate(-1)", "ladder.rotate(2)"),
        ("ladder.rotate(3).rotate(-3)", "ladder"),
        ("ladder.rotate(9999).rotate(1)", "ladder.rotate(10000)"),
        ("ladder.rotate(10000).rotate(1)", "ladder.rotate(10000).rotate(1)"),
        ("ladder.rotate(-10000).rotate(-1)", "ladder.rotate(-10000).rotate(-1)"),
        ("ladder.last-first.last-first", "ladder"),
        ("ladder.order(2 1).order(2 1)", "ladder.order(2 1).order(2 1)"),
        ("[S].repeat(100).repeat(100)", "[S].repeat(10000)"),
        ("[S].repeat(100).repeat(101)", "[S].repeat(100).repeat(101)"),
        ("run.each-note(2).each-note(32)", "run.each-note(64)"),
        ("run.each-note(2).each-note(33)", "run.each-note(2).each-note(33)"),
        ("run.every-nth(2).every-nth(500)", "run.every-nth(1000)"),
        ("run.every-nth(2).every-nth(501)", "run.every-nth(2).every-nth(501)"),
        ("run.hold(63).hold(1)", "run.hold(64)"),
        ("run.hold(64).hold(1)", "run.hold(64).hold(1)"),
        ("run.rest(63).rest(1)", "run.rest(64)"),
        ("run.rest(64).rest(1)", "run.rest(64).rest(1)"),
        ("run.fill(4).fill(4)", "run.fill(4)"),
        ("run.fill(4).fill(8)", "run.fill(4).fill(8)"),
        ("run.stretch(2).stretch(32)", "run.stretch(64)"),
        ("run.stretch(2).stretch(33)", "run.stretch(2).stretch(33)"),
        ("run.shrink(2).shrink(32)", "run.shrink(64)"),
        ("run.shrink(2).shrink(33)", "run.shrink(2).shrink(33)"),
        ("run.stretch(3 2).shrink(3)", "run.shrink(2)"),
        ("run.stretch(3).shrink(3)", "run"),
        ("run.glide.staccato", "run.staccato"),
        ("run.swell.swell", "run.swell"),
        ("run.sung(a).sung(e)", "run.sung(e)"),
        ("run.sung-by-line(a).sung-by-line(e)", "run.sung-by-line(e)"),
        ("run.sung(a).sung-by-line(e)", "run.sung(a).sung-by-line(e)"),
        ("ladder.ends.ends", "ladder.ends"),
        ("ladder.join.join", "ladder.join"),
        ("ladder.each-line(1).each-note(1).every-nth(1).rotate(0).rhythm(1 1).stretch(1).order(1 2 3).transposed(0)", "ladder"),
        ("ladder.order(1 3 2)", "ladder.order(1 3 2)"),
        ("ladder.rhythm(1 2)", "ladder.rhythm(1 2)"),
        ("ladder.span(0 1).span(0 -1)", "ladder"),
        ("ladder.span(1 0).span(-1 0)", "ladder"),
        ("ladder.above(24).above(1)", "ladder.above(24).above(1)"),
        ("ladder.below(24).below(1)", "ladder.below(24).below(1)"),
        ("ladder.span(24 24).span(-1 1)", "ladder.span(24 24).span(-1 1)"),
        ("ladder.span(24 24).span(1 -1)", "ladder.span(24 24).span(1 -1)"),
        ("ladder.swapped.swapped", "ladder"),
        ("ladder.swapped.mirrored", "ladder.mirrored.swapped"),
        ("ladder.swapped.transposed(1)", "ladder.transposed(1).swapped"),
        ("ladder.mirrored.span(1 -2)", "ladder.span(2 -1).mirrored"),
        ("ladder.grow.mirrored", "ladder.mirrored.grow"),
        ("ladder.returning(1).mirrored", "ladder.returning(1).mirrored"),
        ("ladder.take(2).reversed", "ladder.reversed.take(2)"),
        ("ladder.up-down.reversed", "ladder.reversed.up-down"),
        ("ladder.up-down.ends", "ladder.ends.up-down"),
        ("ladder.up-down.take(2)", "ladder.up-down.take(2)"),
        ("ladder.take(2).up-down", "ladder.take(2).up-down"),
        ("ladder.ends.reversed", "ladder.reversed.ends"),
        ("ladder.each-note(2).reversed", "ladder.reversed.each-note(2)"),
        ("ladder.stretch(2).reversed", "ladder.reversed.stretch(2)"),
        ("ladder.rest(2).reversed", "ladder.reversed.rest(2)"),
        ("ladder.glide.reversed", "ladder.reversed.glide"),
        ("ladder.swell.reversed", "ladder.reversed.swell"),
        ("ladder.hold(2).reversed", "ladder.hold(2).reversed"),
        ("ladder.rhythm(2 1).reversed", "ladder.rhythm(2 1).reversed"),
        ("ladder.sung(a e).reversed", "ladder.sung(a e).reversed"),
        ("ladder.every-nth(2).reversed", "ladder.every-nth(2).reversed"),
        ("ladder.fill(4).reversed", "ladder.fill(4).reversed"),
        ("ladder.backwards.reversed", "ladder.backwards.reversed"),
        ("ladder.grow.reversed", "ladder.grow.reversed"),
        ("ladder.grow.ends", "ladder.grow.ends"),
        ("ladder.join.take(1)", "ladder.join.take(1)"),
        ("ladder.each-line(2).ends", "ladder.ends.each-line(2)"),
        ("ladder.each-line(2) + run.each-line(2)", "(ladder + run).each-line(2)"),
        ("ladder.split(2) + run.split(2)", "(ladder + run).split(2)"),
        ("ladder.grow + run.grow", "(ladder + run).grow"),
        ("ladder.windows(2) + run.windows(2)", "(ladder + run).windows(2)"),
        ("ladder.notes(1 2) + run.notes(1 2)", "(ladder + run).notes(1 2)"),
        ("ladder.reversed + run.reversed", "(ladder + run).reversed"),
        ("ladder.returning(1) + run.returning(1)", "(ladder + run).returning(1)"),
        ("ladder.join + run.join", "ladder.join + run.join"),
        ("ladder.take(2) + run.take(2)", "ladder.take(2) + run.take(2)"),
        ("ladder.up-down + run.up-down", "ladder.up-down + run.up-down"),
        ("ladder.sung-by-line(a e) + run.sung-by-line(a e)", "ladder.sung-by-line(a e) + run.sung-by-line(a e)"),
        ("ladder.ends.swapped + run.ends.swapped", "(ladder + run).swapped.ends"),
        ("run.ends + empty + ladder.ends", "(run + ladder).ends"),
        ("empty + empty", "empty"),
        ("empty.weave(run)", "run"),
        ("run.alternate(empty)", "run"),
        ("empty.alternate(empty)", "empty"),
        ("ladder.mirrored.weave(run.mirrored)", "ladder.weave(run).mirrored"),
        ("ladder.ends.weave(run.ends)", "ladder.ends.weave(run.ends)"),
        ("ladder.reversed.weave(run.reversed)", "ladder.reversed.weave(run.reversed)"),
        ("ladder.reversed.alternate(run.reversed)", "ladder.alternate(run).reversed"),
        ("ladder.returning(1).alternate(run.returning(1))", "ladder.alternate(run).returning(1)"),
        ("ladder.returning(1).weave(run.returning(1))", "ladder.returning(1).weave(run.returning(1))"),
        ("ladder.take(2).alternate(run.take(2))", "ladder.take(2).alternate(run.take(2))"),
        ("ladder.ends.alternate(run.hold(1))", "ladder.ends.alternate(run.hold(1))"),
    ];

    [Theory]
    [InlineData(Bilahari, "ladder.backwards", "R S / G R S / P M G R S / D P M G R S / S' N D P M G R S", "ladder.reversed", "R S / G R S / M G R S / P M G R S / D P M G R S / N D P M G R S / S' N D P M G R S")]
    [InlineData(Bilahari, "ladder.take(3).backwards.ends", "R S / G S / P S", "ladder.take(3).reversed.ends", "R S / G S / M S")]
    [InlineData(Kedaram, "run.grow.take(3)", "S M / S M G / S M G M", "ladder.take(3)", "S M G M / S M G M P / S M G M P N")]
    [InlineData(Mohanam, "ladder.take(2).up-down", "S R / S R G / S' D / S' D P", "ladder.up-down.take(2)", "S R / S R G")]
    [InlineData(Mohanam, "run.above(1).up-down", "S R G P D S' R' / S' D P G R S D_", "run.up-down.above(1)", "S R G P D S' R' / R' S' D P G R S")]
    [InlineData(Mohanam, "figure(1 3).mirrored.returning(1).take(1)", "S' S P S", "figure(1 3).returning(1).mirrored.take(1)", "S' P S'")]
    [InlineData(Mohanam, "figure(1 4).join.split(3)", "S P R / D G S'", "figure(1 4)", "S P / R D / G S'")]
    [InlineData(Mohanam, "figure(1 4).last-first.take(1)", "G S'", "figure(1 4).take(1).last-first", "S P")]
    [InlineData(Bilahari, "run.transposed(5)", "S' R' G' P' D' S''", "run.swapped.transposed(5)", "D N S' R' G' M' P' D'")] // an octave up, not down
    public void What_one_would_think_equal_is_not(string scale, string one, string oneLines, string other, string otherLines)
    {
        var read = Scale.Parse(scale);
        Assert.Equal(oneLines, Pattern.Parse(one).Expand(read).ToLetters());
        Assert.Equal(otherLines, Pattern.Parse(other).Expand(read).ToLetters());
    }

    [Fact]
    public void There_and_back_does_not_begin_with_the_whole_line_where_the_turning_note_changes() =>
        Assert.NotEqual(
            Pattern.Parse("ladder.drop(4).take(1)").Expand(Scale.Parse(Bhairavi)).Lines[0].ToTones(), // S R2 G2 M1 P D2
            string.Join(' ', Pattern.Parse("ladder.drop(4).take(1).there-and-back").Expand(Scale.Parse(Bhairavi)).Lines[0].Notes.Take(6))); // ... P D1

    [Fact]
    public void Backwards_does_not_undo_itself_where_a_note_has_two_forms_in_one_list()
    {
        // S N1 S' / S' N3 N1 S: the descent's N3 takes the form N1 on the way up, and N1 stays N1 on the way back.
        var scale = new Scale("two forms", Tones("S N1 S'"), Tones("S' N3 N1 S"));
        var rule = Pattern.Figure(0).Swapped();
        Assert.Equal("S / N1 / N3 / S'", rule.Expand(scale).ToTones());
        Assert.Equal("S / N1 / N1 / S'", rule.Backwards().Backwards().Expand(scale).ToTones());
    }

    [Fact]
    public void Reversed_does_not_keep_the_number_of_lines()
    {
        var scale = Scale.Parse(Bilahari);
        Assert.Equal((5, 7), (Pattern.Ladder.Expand(scale).Lines.Count, Pattern.Ladder.Reversed().Expand(scale).Lines.Count));
    }

    [Fact]
    public void The_normal_form_does_not_find_all_equal_patterns()
    {
        Assert.Equal(Pattern.Parse("figure(1 2)").Expand(Scale.Parse(Shankarabharanam)).ToTones(), Pattern.Parse("run.windows(2)").Expand(Scale.Parse(Shankarabharanam)).ToTones());
        Assert.NotEqual(Pattern.Parse("figure(1 2)").Normalize(), Pattern.Parse("run.windows(2)").Normalize());
    }

    [Theory]
    [InlineData("ladder.take(3).ends", "ladder.ends.take(3)")]
    [InlineData("ladder.ends.mirrored", "ladder.mirrored.ends")]
    [InlineData("ladder.reversed.mirrored.reversed", "ladder.mirrored")]
    [InlineData("ladder.transposed(2).transposed(-2)", "ladder")]
    [InlineData("ladder.mirrored.above(1)", "ladder.below(1).mirrored")]
    [InlineData("ladder.drop(1).drop(2) + empty", "ladder.drop(3)")]
    [InlineData("ladder.ends + run.ends + run", "(ladder + run).ends + run")]
    [InlineData("ladder.ends.alternate(run.ends)", "ladder.alternate(run).ends")]
    [InlineData("run.up-down.below(1).ends", "run.ends.up-down.below(1)")]
    [InlineData("run.up-down.above(1).mirrored", "run.mirrored.up-down.below(1)")]
    [InlineData("run.up-down.above(24).above(24)", "run.up-down.above(24).above(24)")] // one word cannot hold the sum
    [InlineData("run.repeat(2).repeat(3).repeat(1)", "run.repeat(6)")]
    [InlineData("run.repeat(200).repeat(60).take(1)", "run.repeat(200).repeat(60).take(1)")]
    [InlineData("empty.ends.repeat(3)", "empty")]
    public void Normal_forms_of_small_patterns(string pattern, string normal) => // each by one or two laws of docs/laws.md
        Assert.Equal(Pattern.Parse(normal), Pattern.Parse(pattern).Normalize());

    /// <summary>
    /// What merges, cancels or changes places, and what looks as if it did and does not: up to the largest number that a word takes, and
    /// where the two give other lines. In one test, because each is quick.
    /// </summary>
    [Fact]
    public void Normal_forms_word_by_word() => Assert.All(WordByWord, row =>
    {
        var (pattern, normal) = (Pattern.Parse(row.Pattern), Pattern.Parse(row.Normal));
        Assert.Equal((row.Pattern, normal), (row.Pattern, pattern.Normalize()));
        foreach (var scale in (string[])[Shankarabharanam, Bilahari])
        {
            Assert.Equal(Sounds(pattern, scale), Sounds(normal, scale));
        }
    });

    /// <summary>Each law of the page has its test and each test its law.</summary>
    [Fact]
    public void The_page_of_laws_and_the_tests_name_each_other()
    {
        using var reader = new StreamReader(typeof(LawCounterexampleTests).Assembly.GetManifestResourceStream("docs.laws.md")!);
        var named = Regex.Matches(reader.ReadToEnd(), @"^\| .* \| `(\w+)` \|\s*$", RegexOptions.Multiline).Select(m => m.Groups[1].Value).ToList();
        var tests = typeof(LawTests).GetMethods().Where(m => m.GetCustomAttribute<PropertyAttribute>() is not null).Select(m => m.Name).ToList();
        Assert.Equal(tests.Order(), named.Order());
        Assert.True(tests.Count >= 25);
    }

    /// <summary>No law passes for want of cases: at least 30 % of the scales differ up and down and at least 20 % zigzag.</summary>
    [Fact]
    public void Generated_scales_have_their_shares()
    {
        var scales = ScaleGenerators.Scales.Sample(4_000, new Rnd(1), 50);
        var asymmetric = scales.Count(s => !s.IsSymmetric) * 100.0 / scales.Length;
        var vakra = scales.Count(s => s.IsVakra) * 100.0 / scales.Length;
        TestContext.Current.TestOutputHelper?.WriteLine($"{asymmetric:0.0} % differ up and down, {vakra:0.0} % zigzag, {scales.Count(s => !s.HasUpperTonic) * 100.0 / scales.Length:0.0} % have no upper tonic");
        Assert.InRange(asymmetric, 30, 100);
        Assert.InRange(vakra, 20, 100);
        Assert.All(Enumerable.Range(Scale.FewestNotes, Scale.MostNotes - Scale.FewestNotes + 1), n => Assert.Contains(scales, s => s.Ascent.Select(t => t.Degree).Distinct().Count() == n));
    }

    [Fact]
    public void Generated_patterns_use_every_kind_of_word_and_most_have_lines()
    {
        var patterns = PatternGenerators.Patterns.Sample(6_000, new Rnd(2), 50);
        var scale = Scale.Parse(Bilahari);
        var used = patterns.SelectMany(WordsIn).ToHashSet();
        var lines = patterns.Count(p => p.TryExpand(scale, out var e, out _) && !e!.Lines.IsEmpty) * 100.0 / patterns.Length;
        TestContext.Current.TestOutputHelper?.WriteLine($"{lines:0.0} % have lines in Bilahari; unused words: {string.Join(", ", PatternLanguage.Standard.Words.Select(w => w.Name).Except(used))}");
        Assert.True(PatternLanguage.Standard.Words.Select(w => w.Name).Except(used).All(w => w is "empty" or "pairs" or "sung" or "sung-by-line" or "span" or "glide" or "staccato" or "swell"), "the generators leave words out");
        Assert.InRange(lines, 70, 100);
    }

    private static string Sounds(Pattern pattern, string scale) =>
        pattern.TryExpand(Scale.Parse(scale), out var expansion, out var refusal)
            ? string.Join(" / ", expansion.Lines.ConvertAll(l => string.Join(' ', l.Notes.ConvertAll(n => $"{n.Tone} {n.Length} {n.Rest} {n.Sung} {n.Joining} {n.Loudness}"))))
            : $"refused: {refusal.Code}";

    private static IEnumerable<string> WordsIn(Pattern pattern) => pattern.Operands.SelectMany(WordsIn).Append(pattern.Word);

    private static ValueList<ScaleTone> Tones(string text) =>
        text.Split(' ').Select(word => ScaleTone.Parse(word)).ToValueList();
}

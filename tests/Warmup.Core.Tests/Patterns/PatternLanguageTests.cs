using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Warmup.Research;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>
/// A combinator that somebody outside adds, used as a stranger uses it: through the public surface only. The words, their lines and their
/// laws are invented for this test and follow from their definitions.
/// </summary>
public class PatternLanguageTests
{
    private static readonly Scale Mohanam = Scale.Parse("S R2 G3 P D2 S'");
    private static readonly Scale Bilahari = Scale.Parse("S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S");

    // Each line with its last n notes first: a rotation of the line's notes.
    private static readonly Combinator Turned = new Combinator("turned", "each line with its last n notes first", TurnNotes)
    {
        Laws = CombinatorLaws.EachLine,
        Sentence = numbers => numbers[0] == 1 ? "each line begins with its last note" : $"each line begins with its last {numbers[0]} notes",
    }.WithNumbers(1, 8);

    // The lines in the opposite order: what last-first does.
    private static readonly Combinator Overturned = new("overturned", "the lines from the last to the first", input => input.Lines.Reverse().ToValueList())
    {
        Laws = CombinatorLaws.LineOrder | CombinatorLaws.UndoesItself,
    };

    // Each line, then the scale's tonic: twice as many notes at most.
    private static readonly Combinator Homeward = new("home-ward", "each line, then the tonic", GoHome)
    {
        Growth = _ => 2,
        Laws = CombinatorLaws.EachLine | CombinatorLaws.IsIdempotent,
    };

    private static readonly Combinator Plain = new("plain", "each line as it is", input => input.Lines);

    private static readonly PatternLanguage Studio = PatternLanguage.Standard.With(Turned).With(Overturned).With(Homeward).With(Plain);

    [Fact]
    public void A_pattern_with_an_added_word_is_built_expanded_and_printed()
    {
        var pattern = Turned.Apply(Pattern.Ladder.Take(3), 1);
        Assert.Equal("ladder.take(3).turned(1)", pattern.ToString());
        Assert.Equal("R S / G S R / P S R G", pattern.Expand(Mohanam).ToLetters());
        Assert.Equal(("turned", 1), (pattern.Word, pattern.Numbers[0]));
        Assert.Equal(Pattern.Ladder.Take(3), pattern.Operands[0]);
        Assert.Equal("S R S / S R G S", Homeward.Apply(Pattern.Ladder).Take(2).Expand(Mohanam).ToLetters());
    }

    [Theory]
    [InlineData("ladder.turned(2)")]
    [InlineData("(ladder + run.turned(1)).overturned")]
    [InlineData("run.weave(ladder.plain).home-ward.turned(3)")]
    public void Its_text_and_its_json_are_read_back_to_an_equal_pattern(string text)
    {
        var pattern = Studio.Parse(text);
        Assert.Equal(text, pattern.ToString());
        Assert.Equal(pattern, Studio.Parse(pattern.ToString()));
        Assert.Equal(pattern.GetHashCode(), Studio.Parse(text).GetHashCode());
        using var stream = new MemoryStream();
        PatternFile.Write(pattern, stream);
        Assert.Equal(pattern, PatternFile.Read(stream.ToArray(), Studio));
        Assert.Contains("unknown word", Assert.Throws<WarmupFormatException>(() => PatternFile.Read(stream.ToArray())).Message, StringComparison.Ordinal);
        Assert.False(Pattern.TryParse(text, out _, out _));
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 100)]
    public bool Every_pattern_of_the_library_is_read_the_same_in_a_larger_language(Pattern pattern) => Studio.Parse(pattern.ToString()) == pattern;

    [Fact]
    public void Words_are_compared_by_what_they_are()
    {
        var again = new Combinator("turned", "each line with its last n notes first", TurnNotes) { Laws = CombinatorLaws.EachLine, Sentence = Turned.Sentence }.WithNumbers(1, 8);
        Assert.Equal(Turned, again);
        Assert.Equal(Turned.Apply(Pattern.Run, 2), again.Apply(Pattern.Run, 2));
        Assert.Equal(PatternLanguage.Standard.With(Turned), PatternLanguage.Standard.With(again));
        Assert.NotEqual(Turned, Turned with { Laws = CombinatorLaws.None });
        Assert.NotEqual(Turned.Apply(Pattern.Run, 2), (Turned with { Laws = CombinatorLaws.None }).Apply(Pattern.Run, 2));
        Assert.NotEqual(Turned.Apply(Pattern.Run, 2), Turned.Apply(Pattern.Run, 3));
        Assert.NotEqual(PatternLanguage.Standard, Studio);
    }

    [Theory]
    [InlineData("ladder.plain.mirrored", "ladder.plain.mirrored")] // nothing is promised: the word stays where it stands
    [InlineData("ladder.plain.plain", "ladder.plain.plain")]
    [InlineData("ladder.plain + run.plain", "ladder.plain + run.plain")]
    [InlineData("ladder.mirrored.mirrored.plain", "ladder.plain")] // what stands inside is still put in order
    [InlineData("ladder.turned(1).mirrored", "ladder.mirrored.turned(1)")] // each line by itself
    [InlineData("ladder.take(2).turned(1)", "ladder.turned(1).take(2)")]
    [InlineData("ladder.turned(1) + run.turned(1)", "(ladder + run).turned(1)")]
    [InlineData("ladder.turned(1) + run.turned(2)", "ladder.turned(1) + run.turned(2)")]
    [InlineData("ladder.turned(1).alternate(run.turned(1))", "ladder.alternate(run).turned(1)")]
    [InlineData("ladder.overturned.overturned", "ladder")] // undoes itself
    [InlineData("ladder.overturned.ends.overturned", "ladder.ends")]
    [InlineData("ladder.home-ward.home-ward", "ladder.home-ward")] // twice is once
    [InlineData("empty.plain", "empty")]
    public void The_normal_form_builds_on_the_laws_that_a_word_promises(string text, string normal)
    {
        var (pattern, form) = (Studio.Parse(text), Studio.Parse(normal));
        Assert.Equal(form, pattern.Normalize());
        foreach (var scale in (Scale[])[Mohanam, Bilahari])
        {
            Assert.Equal(pattern.Expand(scale).ToTones(), form.Expand(scale).ToTones());
        }
    }

    /// <summary>What the words of this test promise is tried by the suite that tries the library's own.</summary>
    [Fact]
    public void The_law_suite_takes_an_added_word_as_any_other()
    {
        LawSuite.Check(PatternRule.Of("turned", p => Turned.Apply(p, 2)), PatternLaws.IsTotal, PatternLaws.KeepsLineCount, PatternLaws.WorksLineByLine, PatternLaws.KeepsNotes).ThrowIfBroken();
        LawSuite.Check(PatternRule.Of("overturned", p => Overturned.Apply(p)), PatternLaws.UndoesItself, PatternLaws.KeepsNotes).ThrowIfBroken();
        Assert.False(LawSuite.Check(PatternRule.Of("turned", p => Turned.Apply(p, 2)), PatternLaws.UndoesItself)[0].IsKept);
    }

    [Fact]
    public void It_is_described_and_listed_with_the_others()
    {
        Assert.EndsWith("; each line begins with its last note", Turned.Apply(Pattern.Ladder, 1).Describe(), StringComparison.Ordinal);
        Assert.EndsWith("; each line begins with its last 3 notes", Turned.Apply(Pattern.Ladder, 3).Describe(), StringComparison.Ordinal);
        Assert.StartsWith("seven lines; ", Plain.Apply(Pattern.Ladder).Describe(Scale.Parse("S R2 G3 M1 P D2 N3 S'")), StringComparison.Ordinal);
        Assert.EndsWith("; each line as it is", Plain.Apply(Pattern.Ladder).Describe(), StringComparison.Ordinal);
        var words = Studio.Words;
        Assert.Equal(PatternLanguage.Standard.Words.Count + 4, words.Count);
        Assert.Equal(".turned(n): each line with its last n notes first", words[^4].ToString());
        Assert.Equal(Turned.ToString(), words[^4].ToString());
        Assert.Equal((".home-ward", false), (words[^2].Form, words[^2].IsPrimitive));
        Assert.EndsWith("of the library, and turned, overturned, home-ward and plain", Studio.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Patterns_over_added_words_are_enumerated()
    {
        var enumeration = new PatternEnumeration(PatternVocabulary.Parse("ladder .turned(1) .overturned", Studio), 3);
        // L | L.turned, L.overturned | L.turned.turned, L.turned.overturned; overturned.turned and overturned twice are no normal forms.
        Assert.Equal([1, 2, 2], Enumerable.Range(1, 3).Select(n => (int)enumeration.CountOfSize(n)));
        Assert.All(Enumerable.Range(0, (int)enumeration.Count), i => Assert.Equal(i, enumeration.IndexOf(enumeration[i])));
    }

    [Theory]
    [InlineData("ladder.turnd(1)", 8, "unknown word 'turnd', perhaps turned")]
    [InlineData("ladder.turned", 14, "'turned' needs a number from 1 to 8 in parentheses")]
    [InlineData("ladder.turned(9)", 15, "a number from 1 to 8, not '9'")]
    [InlineData("ladder.plain(1)", 13, "'plain' takes no parentheses")]
    [InlineData("turned(1)", 1, "needs a pattern before it")]
    public void A_wrong_text_is_told_in_the_same_words(string text, int column, string expected)
    {
        Assert.False(Studio.TryParse(text, out _, out var error));
        Assert.Equal(column, error.Column);
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ends")]
    [InlineData("every")] // what a word of the library was called
    [InlineData("")]
    [InlineData("-turned")]
    [InlineData("turned-")]
    [InlineData("turned--round")]
    [InlineData("Turned")]
    [InlineData("turned2")]
    [InlineData("turned round")]
    [InlineData("über")]
    [InlineData("a-name-that-is-longer-than-any-word")]
    public void A_name_that_is_in_use_or_is_no_word_is_refused(string name) =>
        Assert.Equal("name", Assert.Throws<ArgumentException>(() => new Combinator(name, "nothing", input => input.Lines)).ParamName);

    [Fact]
    public void A_language_has_each_word_once() =>
        Assert.Contains("'turned' already", Assert.Throws<ArgumentException>(() => Studio.With(Turned)).Message, StringComparison.Ordinal);

    [Fact]
    public void Numbers_and_bounds_that_do_not_fit_are_refused()
    {
        Assert.Contains("'turned' takes a number from 1 to 8, not 9", Assert.Throws<ArgumentException>(() => Turned.Apply(Pattern.Run, 9)).Message, StringComparison.Ordinal);
        Assert.Contains("'turned' needs a number from 1 to 8", Assert.Throws<ArgumentException>(() => Turned.Apply(Pattern.Run)).Message, StringComparison.Ordinal);
        Assert.Contains("'plain' takes no numbers", Assert.Throws<ArgumentException>(() => Plain.Apply(Pattern.Run, 1)).Message, StringComparison.Ordinal);
        Assert.Contains("'turned' takes a number from 1 to 8, not 0", Assert.Throws<ArgumentException>(() => Turned.Apply(Pattern.Run, 1).With([Pattern.Run], [0])).Message, StringComparison.Ordinal);
        Assert.Equal("run.turned(2)", Turned.Apply(Pattern.Ladder, 1).With([Pattern.Run], [2]).ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => Plain.WithNumbers(2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Plain.WithNumbers(0, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Plain.WithNumbers(0, 1, 3, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Plain.WithNumbers(0, 1, 1, 65));
        Assert.ThrowsAny<ArgumentException>(() => Plain with { Laws = CombinatorLaws.EachLine | CombinatorLaws.LineOrder });
        Assert.ThrowsAny<ArgumentException>(() => Plain with { Laws = (CombinatorLaws)16 });
        Assert.Throws<ArgumentNullException>(() => Plain with { Growth = null! });
        Assert.ThrowsAny<ArgumentException>(() => new Combinator("empty-handed", " ", input => input.Lines));
        Assert.ThrowsAny<ArgumentException>(() => new Combinator("long-winded", new string('a', 201), input => input.Lines));
    }

    [Fact]
    public void The_bounds_of_patterns_hold_for_added_words()
    {
        var many = new Combinator("many", "each line n times", input => [.. Enumerable.Repeat(input.Lines, input.Numbers[0]).SelectMany(l => l.AsEnumerable())])
        {
            Growth = numbers => numbers[0],
        }.WithNumbers(1, 50_000);
        Assert.Contains("at most 100000 notes", Assert.ThrowsAny<ArgumentException>(() => many.Apply(Pattern.Run, 50_000)).Message, StringComparison.Ordinal);
        var language = PatternLanguage.Standard.With(many);
        Assert.False(language.TryParse("run.many(50000)", out _, out var error));
        Assert.Equal((5, "a pattern must have at most 100000 notes in a seven-note scale, not 400000"), (error.Column, error.Message));

        // Within the bound in seven notes, and refused in a scale of more places before the function is called.
        var long12 = Scale.Parse("vakra: S R1 R2 R1 R2 G2 G3 M1 M2 P D1 D2 N2 N3 S'");
        Assert.False(many.Apply(Pattern.Run, 12_000).TryExpand(long12, out _, out var refusal));
        Assert.Equal(FindingCode.PatternTooLong, refusal.Code);
        var deep = Pattern.Run;
        for (var level = 1; level < 64; level++)
        {
            deep = Plain.Apply(deep);
        }

        Assert.Contains("at most 64 levels", Assert.ThrowsAny<ArgumentException>(() => Plain.Apply(deep)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_numbers_and_growth_reach_the_ends_of_their_ranges()
    {
        static Combinator Named(string name) => new(name, "each line as it is", input => input.Lines);
        Assert.Equal(32, Named(new string('a', 32)).Name.Length);
        Assert.Throws<ArgumentException>(() => Named(new string('a', 33)));
        Assert.Equal(("a-b", "z"), (Named("a-b").Name, Named("z").Name));
        Assert.Equal(200, new Combinator("long-winded", new string('a', 200), input => input.Lines).Meaning.Length);
        Assert.Equal("run.plain(2)", Plain.WithNumbers(2, 2).Apply(Pattern.Run, 2).ToString());
        Assert.Equal(64, Plain.WithNumbers(0, 1, 1, 64).Apply(Pattern.Run, new int[64]).Numbers.Count);
        Assert.Throws<ArgumentException>(() => Plain.WithNumbers(0, 1, 1, 64).Apply(Pattern.Run, new int[65]));
        Assert.Throws<ArgumentException>(() => Plain.WithNumbers(0, 1, 2).Apply(Pattern.Run, 1)); // two and no more, where the most is not said
        Assert.NotNull((Plain with { Growth = _ => 100_000 }).Apply(Pattern.Parse("[S]")));
        Assert.Contains("has a Growth of 100001; it must be 1 to 100000", Assert.Throws<InvalidOperationException>(() => (Plain with { Growth = _ => 100_001 }).Apply(Pattern.Parse("[S]"))).Message, StringComparison.Ordinal);
        Assert.Equal(CombinatorLaws.EachLine | CombinatorLaws.UndoesItself | CombinatorLaws.IsIdempotent, (Plain with { Laws = CombinatorLaws.EachLine | CombinatorLaws.UndoesItself | CombinatorLaws.IsIdempotent }).Laws);
    }

    /// <summary>A line of m notes that grows counts as m(m + 1)/2, so that growing shows how long a word's longest line may be.</summary>
    [Fact]
    public void The_longest_line_follows_from_what_a_word_promises()
    {
        static string Refusal(Pattern pattern) => Assert.ThrowsAny<ArgumentException>(() => pattern.Grow().Repeat(10_000)).Message;
        var lines = Pattern.Parse("run + [S R]"); // ten notes, eight in the longer line
        Assert.EndsWith("not 450000", Refusal(Overturned.Apply(lines)), StringComparison.Ordinal); // whole lines: 10 x 9/2
        Assert.EndsWith("not 1700000", Refusal(Homeward.Apply(lines)), StringComparison.Ordinal); // each line, twice as long: 20 x 17/2
        Assert.EndsWith("not 550000", Refusal(Plain.Apply(lines)), StringComparison.Ordinal); // nothing promised: all may be one line, 10 x 11/2
    }

    [Fact]
    public void A_slip_is_told_the_nearest_word_and_of_two_the_first_by_the_alphabet()
    {
        static Combinator Named(string name) => new(name, "each line as it is", input => input.Lines);
        var language = PatternLanguage.Standard.With(Named("zab")).With(Named("zaa"));
        Assert.False(language.TryParse("run.zac", out _, out var error));
        Assert.Equal("unknown word 'zac', perhaps zaa", error.Message);
        Assert.False(language.TryParse("run.zabb", out _, out error));
        Assert.Equal("unknown word 'zabb', perhaps zab", error.Message);
        Assert.True(language.TryParse("run.ZAA", out var pattern, out _));
        Assert.Equal("run.zaa", pattern.ToString());
        Assert.NotEqual(language, PatternLanguage.Standard.With(Named("zaa")).With(Named("zab")));
        Assert.Equal($"{PatternLanguage.Standard.Words.Count} words of the library", PatternLanguage.Standard.ToString());
        Assert.True(PatternLanguage.Standard.Equals((object)PatternLanguage.Standard));
        Assert.False(PatternLanguage.Standard.Equals("words"));
    }

    [Fact]
    public void A_pattern_that_the_scale_refuses_is_described_without_its_lines()
    {
        Assert.Equal("the written line is S M", Pattern.Parse("[S M]").Describe(Mohanam));
        Assert.StartsWith("one line; the written line is S M", Pattern.Parse("[S M]").Describe(Scale.Parse("S M1 S'")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_combinator_that_breaks_its_promise_is_told_so()
    {
        var doubled = new Combinator("doubled", "each line twice", input => [.. input.Lines, .. input.Lines]);
        Assert.Contains("promises at most 8", Assert.Throws<InvalidOperationException>(() => doubled.Apply(Pattern.Run).Expand(Scale.Parse("S R2 G3 M1 P D2 N3 S'"))).Message, StringComparison.Ordinal);
        var grown = doubled with { Growth = _ => 2, Laws = CombinatorLaws.EachLine };
        Assert.Contains("made two lines of 1", Assert.Throws<InvalidOperationException>(() => grown.Apply(Pattern.Run).Expand(Mohanam)).Message, StringComparison.Ordinal);
        Assert.Contains("Growth of 0", Assert.Throws<InvalidOperationException>(() => (doubled with { Growth = _ => 0 }).Apply(Pattern.Run)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_combinator_refuses_a_scale_as_the_library_does()
    {
        var seven = new Combinator("seven", "lines of a seven-note scale only", input => input.Scale.Ascent.Count == 8
            ? input.Lines
            : throw new PatternException(new Finding(FindingCode.PatternRefused, Severity.Error, $"{input.Scale.Name} has not seven notes", "take a scale of seven notes")));
        Assert.False(seven.Apply(Pattern.Run).TryExpand(Mohanam, out _, out var refusal));
        Assert.Equal("take a scale of seven notes", refusal.Fix);
        Assert.True(seven.Apply(Pattern.Run).TryExpand(Scale.Parse("S R2 G3 M1 P D2 N3 S'"), out _, out _));
    }

    [Fact]
    public void A_drill_is_made_from_it()
    {
        var drill = new Drill { Scale = Mohanam, Pattern = Turned.Apply(Pattern.Ladder, 1), Tonic = Tonic.Parse("G3") };
        Assert.Equal(20, drill.ToScore().NoteCount);
    }

    private static ValueList<Line> TurnNotes(CombinatorInput input) => input.Lines.ConvertAll(line =>
    {
        var by = input.Numbers[0] % line.Notes.Count;
        LineNote[] turned = [.. line.Notes.TakeLast(by), .. line.Notes.SkipLast(by)];
        return new Line(turned.Select(n => n with { Approach = Approach.Leap }).ToValueList());
    });

    private static ValueList<Line> GoHome(CombinatorInput input) => input.Lines.ConvertAll(line => line.Notes[^1].Tone == input.Scale.Ascent[0]
        ? line
        : new Line([.. line.Notes, new LineNote(input.Scale.Ascent[0], ScaleDirection.Ascent, Approach.Leap, 1)]));
}

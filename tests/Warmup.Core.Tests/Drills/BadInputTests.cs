using System.Globalization;

namespace Warmup.Tests;

/// <summary>Source: the documented bounds of patterns and drills; each refusal must carry the value, the range or the place.</summary>
public class BadInputTests
{
    private static readonly Scale Mohanam = Catalogue.Default.Read("mohanam");

    private static Drill Drill(Pattern pattern) => new() { Scale = Mohanam, Pattern = pattern, Tonic = Tonic.Parse("C4") };

    [Theory]
    [InlineData("ladderr", 1, "ladderr")]
    [InlineData("ladder.revresed", 8, "revresed")]
    [InlineData("ladder + ladderr", 10, "ladderr")]
    [InlineData("ladder.reversed.", 17, "")]
    [InlineData("ladder +", 9, "")]
    [InlineData("(ladder", 8, ")")]
    [InlineData("ladder)", 7, ")")]
    [InlineData("ladder ladder", 8, "ladder")]
    [InlineData("ladder.take", 12, "")]
    [InlineData("ladder.take()", 13, "")]
    [InlineData("ladder.take(0)", 13, "0")]
    [InlineData("ladder.take(10001)", 13, "10001")]
    [InlineData("ladder.repeat(0)", 15, "0")]
    [InlineData("ladder.repeat(99999999999999999999)", 15, "")]
    [InlineData("figure()", 8, "")]
    [InlineData("figure(1 26)", 10, "25")]
    [InlineData("figure(1 x)", 10, "x")]
    [InlineData("figure(2.5)", 9, "")]
    [InlineData("ladder ? ladder", 8, "?")]
    [InlineData(".reversed", 1, "")]
    public void A_fault_of_a_pattern_is_named_at_its_place(string text, int column, string token)
    {
        Assert.False(Pattern.TryParse(text, out var pattern, out var error));
        Assert.Null(pattern);
        Assert.Equal((1, column), (error!.Line, error.Column));
        Assert.Contains(token, error.Message, StringComparison.Ordinal);
        Assert.Equal(error, Assert.Throws<WarmupFormatException>(() => Pattern.Parse(text)).Error);
    }

    [Theory]
    [InlineData("ladder.take(10001)", "10000")]
    [InlineData("ladder.repeat(0)", "10000")]
    [InlineData("figure(1 26)", "24")]
    public void A_number_out_of_range_is_refused_with_the_range(string text, string bound)
    {
        Assert.False(Pattern.TryParse(text, out _, out var error));
        Assert.Contains(bound, error!.Message.Replace(",", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    public void An_empty_pattern_text_is_refused(string text)
    {
        Assert.False(Pattern.TryParse(text, out _, out var error));
        Assert.NotEmpty(error!.Message);
    }

    [Theory]
    [InlineData("(", ")")]
    [InlineData("", ".reversed")]
    [InlineData("(", ").there-and-back")]
    [InlineData("", " + ladder")]
    public void Ten_thousand_levels_are_refused_and_do_not_overflow_the_stack(string before, string after)
    {
        var text = string.Concat(Enumerable.Repeat(before, 10_000)) + "ladder" + string.Concat(Enumerable.Repeat(after, 10_000));
        Assert.False(Pattern.TryParse(text, out _, out var error));
        Assert.True(error!.Message.Length < 500);
        var shorter = string.Concat(Enumerable.Repeat(before, 450)) + "ladder" + string.Concat(Enumerable.Repeat(after, 450));
        if (shorter.Length <= 10_000 && !Pattern.TryParse(shorter, out _, out error))
        {
            Assert.True(error!.Column >= 1);
        }
    }

    [Fact]
    public void Nesting_is_bounded_at_64()
    {
        var pattern = Pattern.Ladder;
        for (var depth = 1; depth < 64; depth++)
        {
            pattern = pattern.Reversed();
        }

        Assert.Equal(64, pattern.Nodes);
        Assert.Equal(pattern, Pattern.Parse(pattern.ToString()));
        Assert.Contains("64", Assert.ThrowsAny<ArgumentException>(() => pattern.Reversed()).Message, StringComparison.Ordinal);
        Assert.ThrowsAny<ArgumentException>(() => pattern + Pattern.Ladder);
    }

    [Fact]
    public void Parts_are_bounded_at_1000()
    {
        var pattern = Pattern.Figure(0);
        while (pattern.Nodes < 500)
        {
            pattern += pattern;
        }

        Assert.Contains("1000", Assert.ThrowsAny<ArgumentException>(() => pattern + pattern).Message.Replace(",", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_100000_notes_are_refused_with_the_bound()
    {
        // 35 notes in a seven-note scale: 2,857 times is 99,995, 2,858 times is 100,030.
        var parent = Catalogue.Default.Parent(15).Scale;
        Assert.Equal(99_995, Pattern.Ladder.Repeat(2_857).Expand(parent).NoteCount);
        foreach (Action refused in new Action[]
        {
            () => Pattern.Ladder.Repeat(2_858).Expand(parent),
            () => Pattern.Ladder.Repeat(10_000).Repeat(10_000).Expand(parent),
        })
        {
            var thrown = Assert.ThrowsAny<Exception>(refused);
            Assert.True(thrown is ArgumentException or PatternException, thrown.GetType().Name);
            Assert.Contains("100000", thrown.Message.Replace(",", string.Empty, StringComparison.Ordinal), StringComparison.Ordinal);
        }

        // Small by the usual count, large in a scale of twelve notes: 90 notes a ladder.
        var chromatic = Catalogue.Default.Read("chromatic");
        var big = Pattern.Ladder.Repeat(2_000);
        Assert.False(big.TryExpand(chromatic, out var lines, out var refusal));
        Assert.Null(lines);
        Assert.Equal((FindingCode.PatternTooLong, Severity.Error), (refusal!.Code, refusal.Severity));
        Assert.False((Drill(big) with { Scale = chromatic }).TryToScore(out _, out refusal));
        Assert.Equal(FindingCode.PatternTooLong, refusal!.Code);
    }

    [Fact]
    public void A_drill_of_very_many_notes_is_made_in_good_time()
    {
        var score = (Drill(Pattern.Ladder.Repeat(2_857)) with { Scale = Catalogue.Default.Parent(15).Scale }).ToScore();
        Assert.Equal(99_995, score.NoteCount);
    }

    [Theory]
    [InlineData("empty")]
    [InlineData("ladder.drop(10)")]
    [InlineData("empty + empty.repeat(3)")]
    public void A_pattern_without_lines_is_refused_as_a_drill(string text)
    {
        var pattern = Pattern.Parse(text);
        Assert.Empty(pattern.Expand(Mohanam).Lines);
        Assert.False(Drill(pattern).TryToScore(out var score, out var refusal));
        Assert.Null(score);
        Assert.Equal((FindingCode.PatternEmpty, Severity.Error), (refusal!.Code, refusal.Severity));
        Assert.NotEmpty(refusal.Fix);
        Assert.Equal(refusal, Assert.Throws<PatternException>(() => Drill(pattern).ToScore()).Finding);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-60")]
    [InlineData("9")]
    [InlineData("401")]
    [InlineData("1000000000")]
    [InlineData("9.99")]
    public void A_tempo_out_of_range_is_refused_with_value_and_range(string text)
    {
        Assert.True(Rational.TryParse(text, out var tempo, out _));
        var message = Assert.Throws<ArgumentOutOfRangeException>(() => Drill(Pattern.Ladder) with { Tempo = tempo }).Message;
        Assert.Contains("10", message, StringComparison.Ordinal);
        Assert.Contains("400", message, StringComparison.Ordinal);
        Assert.Contains(tempo.ToString(), message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("10")]
    [InlineData("400")]
    [InlineData("72.5")]
    [InlineData("400/3")]
    public void A_tempo_at_and_inside_the_bounds_is_kept_exactly(string text)
    {
        Assert.True(Rational.TryParse(text, out var tempo, out _));
        Assert.Equal(tempo, (Drill(Pattern.Ladder) with { Tempo = tempo, Delivery = Delivery.LineByLine }).ToScore().Sections[0].Tempo);
    }

    [Theory]
    [InlineData("a\u0000b")]
    [InlineData("a\nb")]
    [InlineData("a\u202Eb")]
    public void A_title_or_a_vowel_with_control_characters_is_refused(string text)
    {
        Assert.ThrowsAny<ArgumentException>(() => Drill(Pattern.Ladder) with { Title = text });
        Assert.ThrowsAny<ArgumentException>(() => Syllables.Vowel(text));
    }

    [Fact]
    public void A_lone_surrogate_is_refused_as_text()
    {
        Assert.ThrowsAny<ArgumentException>(() => Drill(Pattern.Ladder) with { Title = "a\uD800" });
        Assert.ThrowsAny<ArgumentException>(() => Syllables.Vowel("\uDC00a"));
    }

    [Theory]
    [InlineData("ladder\0")]
    [InlineData("ladder\0.reversed")]
    [InlineData("\0ladder")]
    [InlineData("figure(1\0 1)")]
    public void A_null_character_does_not_end_a_pattern(string text)
    {
        Assert.False(Pattern.TryParse(text, out _, out var error));
        Assert.Equal(text.IndexOf('\0', StringComparison.Ordinal) + 1, error!.Column);
    }

    [Theory]
    [InlineData("mohan\u2028m")]
    [InlineData("mohan\u2029m")]
    [InlineData("mohan\u202Em")]
    [InlineData("mohan\u001B[31mm")]
    [InlineData("mohan\nm")]
    public void A_message_about_a_typed_text_stays_on_one_line(string text)
    {
        _ = Catalogue.Default.TryRead(text, out _, out var error); // a forgiving reader may take it
        Assert.DoesNotContain(error?.ToString() ?? string.Empty, c => char.IsControl(c) || c is '\u2028' or '\u2029' or '\u202E');
        Assert.False(Pattern.TryParse(text, out _, out error));
        Assert.DoesNotContain(error!.ToString(), c => char.IsControl(c) || c is '\u2028' or '\u2029' or '\u202E');
    }

    [Fact]
    public void A_title_of_10001_characters_and_a_vowel_of_21_are_refused_with_the_bound()
    {
        Assert.Equal(10_000, (Drill(Pattern.Ladder) with { Title = new string('a', 10_000) }).ToScore().Title.Length);
        Assert.Contains("10000", Assert.ThrowsAny<ArgumentException>(() => Drill(Pattern.Ladder) with { Title = new string('a', 10_001) }).Message, StringComparison.Ordinal);
        Assert.Contains("20", Assert.ThrowsAny<ArgumentException>(() => Syllables.Vowel(new string('a', 21))).Message, StringComparison.Ordinal);
        Assert.ThrowsAny<ArgumentException>(() => Syllables.Vowel(string.Empty));
    }

    [Fact]
    public void A_note_outside_MIDI_is_refused_by_its_name()
    {
        // 24 steps of a five-note scale are nearly five octaves: far below MIDI note 0 from C1 (24).
        var drill = Drill(Pattern.Figure(-24, 0)) with { Tonic = Tonic.FromMidi(24) };
        Assert.False(drill.TryToScore(out var score, out var refusal));
        Assert.Null(score);
        Assert.Equal((FindingCode.OutsideMidi, Severity.Error), (refusal!.Code, refusal.Severity));
        Assert.Contains("127", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_out_of_range_is_refused_by_its_constructor()
    {
        Assert.ThrowsAny<ArgumentException>(() => Pattern.Figure());
        Assert.ThrowsAny<ArgumentException>(() => Pattern.Figure(new int[65]));
        Assert.Contains("24", Assert.ThrowsAny<ArgumentException>(() => Pattern.Figure(25)).Message, StringComparison.Ordinal);
        Assert.ThrowsAny<ArgumentException>(() => Pattern.Figure(int.MinValue));
        foreach (var bad in new[] { 0, -1, 10_001, int.MaxValue })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Pattern.Ladder.Take(bad));
            Assert.Throws<ArgumentOutOfRangeException>(() => Pattern.Ladder.Drop(bad));
            Assert.Contains(bad.ToString(CultureInfo.InvariantCulture), Assert.Throws<ArgumentOutOfRangeException>(() => Pattern.Ladder.Repeat(bad)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_tuning_needs_a_name_and_twelve_places_from_the_unison()
    {
        Assert.ThrowsAny<ArgumentException>(() => new Tuning(" ", Tuning.Just.Intervals));
        Assert.Contains("11", Assert.ThrowsAny<ArgumentException>(() => new Tuning("x", Tuning.Just.Intervals.Take(11).ToValueList())).Message, StringComparison.Ordinal);
        Assert.ThrowsAny<ArgumentException>(() => new Tuning("x", Tuning.Just.Intervals.Reverse().ToValueList()));
    }
}

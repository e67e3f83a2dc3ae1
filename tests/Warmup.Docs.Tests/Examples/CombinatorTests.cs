using Warmup.Testing;

namespace Warmup.Docs.Tests.Examples;

#region combinator of your own
/// <summary>The words of this studio.</summary>
public static class StudioPatterns
{
    /// <summary>Each line with its last notes first: with 1, S R G becomes G S R.</summary>
    public static Combinator LastNotesFirst { get; } = new Combinator("last-notes-first", "each line with its last n notes first", Turn)
    {
        Sentence = numbers => numbers[0] == 1 ? "each line begins with its last note" : $"each line begins with its last {numbers[0]} notes",
        Laws = CombinatorLaws.EachLine,
    }.WithNumbers(lowest: 1, highest: 8);

    /// <summary>The words of the library and of this studio.</summary>
    public static PatternLanguage Language { get; } = PatternLanguage.Standard.With(LastNotesFirst);

    private static ValueList<Line> Turn(CombinatorInput input) => input.Lines.ConvertAll(line =>
    {
        var last = input.Numbers[0] % line.Notes.Count;
        LineNote[] turned = [.. line.Notes.TakeLast(last), .. line.Notes.SkipLast(last)];
        return new Line([.. turned.Select(note => note with { Approach = Approach.Leap })]);
    });
}
#endregion

/// <summary>The page on adding a combinator.</summary>
public sealed class CombinatorTests
{
    [Fact]
    public void It_is_used_like_the_librarys_own()
    {
        #region combinator used
        var pattern = StudioPatterns.LastNotesFirst.Apply(Pattern.Ladder, 1);
        var mohanam = Catalogue.Default.Read("Mohanam");
        Console.WriteLine(pattern);                             // ladder.last-notes-first(1)
        Console.WriteLine(pattern.Expand(mohanam).ToLetters()); // R S / G S R / P S R G / ...
        Console.WriteLine(pattern.Describe(mohanam));           // five lines; ... each line begins with its last note
        var same = StudioPatterns.Language.Parse("ladder.last-notes-first(1)") == pattern; // true
        #endregion

        Assert.True(same);
        Assert.Equal("ladder.last-notes-first(1)", pattern.ToString());
        Assert.Equal("R S / G S R / P S R G / D S R G P / S' S R G P D", pattern.Expand(mohanam).ToLetters());
        Assert.StartsWith("five lines; ", pattern.Describe(mohanam), StringComparison.Ordinal);
        Assert.EndsWith("; each line begins with its last note", pattern.Describe(mohanam), StringComparison.Ordinal);
        Assert.Equal(20, new Drill { Scale = mohanam, Pattern = pattern, Tonic = Tonic.Parse("G3") }.ToScore().NoteCount);
    }

    [Fact]
    public void It_is_written_as_JSON_and_read_back()
    {
        var pattern = StudioPatterns.LastNotesFirst.Apply(Pattern.Ladder, 2);
        using var file = new MemoryStream();
        #region combinator in a file
        PatternFile.Write(pattern, file);
        var read = PatternFile.Read(file.ToArray(), StudioPatterns.Language);
        #endregion
        Assert.Equal(pattern, read);
    }

    [Fact]
    public void The_law_suite_holds_it_to_what_it_promises()
    {
        #region combinator held to its laws
        var rule = PatternRule.Of("last note first", p => StudioPatterns.LastNotesFirst.Apply(p, 1));
        LawSuite.Check(rule, PatternLaws.WorksLineByLine, PatternLaws.KeepsLineCount, PatternLaws.KeepsNotes, PatternLaws.StaysInTheScale).ThrowIfBroken();
        #endregion
    }

    [Fact]
    public void A_law_that_it_does_not_keep_is_shown_by_the_smallest_case()
    {
        var rule = PatternRule.Of("last note first", p => StudioPatterns.LastNotesFirst.Apply(p, 1));
        #region law that is broken
        var claim = LawSuite.Check(rule, PatternLaws.UndoesItself)[0];
        Console.WriteLine(claim.Describe());
        #endregion

        // Of three notes the last one first is a turn of three: twice is nothing only for lines of up to two.
        Assert.False(claim.IsKept);
        Assert.NotNull(claim.Failure);
        Assert.Contains(claim.Failure.Pattern.Expand(claim.Failure.Scale).Lines, l => l.Notes.Count > 2);

        // The case that the page shows, read from the page, breaks the law; what stands around it is what is printed.
        var shown = Repository.Blocks.Single(b => b.Page == "docs/add-a-combinator.md" && b.Language == "text").Code.Split('\n');
        Assert.Equal(claim.Describe().Split('\n')[..2], shown[..2]);
        string[] values = [.. shown[2..].Select(l => l.Trim().Split(' ', 2)[1].Trim())];
        Assert.Equal(LawVerdict.Broken, PatternLaws.UndoesItself.Check(rule, Pattern.Parse(values[0]), Pattern.Parse(values[1]), Scale.Parse(values[2])));
    }

    [Fact]
    public void Lines_of_your_own_need_no_word()
    {
        var mohanam = Catalogue.Default.Read("Mohanam");
        #region lines of your own
        var lines = Pattern.Ladder.Expand(mohanam).Lines.Where(line => line.Notes.Count % 2 == 0).ToValueList();
        var drill = new Drill { Scale = mohanam, Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Title = "even lines" };
        var score = drill.ToScore(new Expansion(lines));
        #endregion
        Assert.Equal(2 + 4 + 6, score.NoteCount);
    }
}

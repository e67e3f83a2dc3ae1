using Warmup.Testing;

namespace Warmup.Docs.Tests.Examples;

#region combinator of your own
/// <summary>Combinators of this studio.</summary>
public static class StudioPatterns
{
    /// <summary>Each line, then its mirror image from the upper tonic down: S R G becomes S R G / S' N D.</summary>
    /// <param name="pattern">The pattern.</param>
    public static Pattern WithImages(this Pattern pattern) => pattern.Alternate(pattern.Mirrored());

    /// <summary>Of each line's notes the last one first: S R G becomes G S R.</summary>
    /// <param name="lines">The lines.</param>
    public static ValueList<Line> LastNoteFirst(ValueList<Line> lines) => lines.ConvertAll(line =>
        line.Notes.Count < 2 ? line : new Line(
        [
            line.Notes[^1] with { Approach = Approach.Leap },
            line.Notes[0] with { Approach = Approach.Leap },
            .. ((IEnumerable<LineNote>)line.Notes).Skip(1).SkipLast(1),
        ]));
}
#endregion

/// <summary>The page on adding a combinator.</summary>
public sealed class CombinatorTests
{
    [Fact]
    public void It_is_used_like_the_librarys_own()
    {
        #region combinator used
        var mohanam = Catalogue.Default.Read("Mohanam");
        Console.WriteLine(Pattern.Ladder.Take(2).WithImages().Expand(mohanam).ToLetters());

        var turned = StudioPatterns.LastNoteFirst(Pattern.Ladder.Expand(mohanam).Lines);
        var drill = new Drill { Scale = mohanam, Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Title = "last note first" };
        var score = drill.ToScore(new Expansion(turned, []));
        #endregion

        Assert.Equal("S R / S' D / S R G / S' D P", Pattern.Ladder.Take(2).WithImages().Expand(mohanam).ToLetters());
        Assert.Equal("R S / G S R / P S R G / D S R G P / S' S R G P D", string.Join(" / ", turned.ConvertAll(l => l.ToLetters())));
        Assert.Equal(20, score.NoteCount);
    }

    [Fact]
    public void The_law_suite_holds_it_to_what_it_claims()
    {
        #region combinator held to its laws
        var images = PatternRule.Of("with images", StudioPatterns.WithImages);
        var lastFirst = PatternRule.OfLines("last note first", StudioPatterns.LastNoteFirst);
        LawSuite.Check(images, PatternLaws.IsTotal, PatternLaws.KeepsEmpty, PatternLaws.StaysInTheScale).ThrowIfBroken();
        LawSuite.Check(lastFirst, PatternLaws.KeepsNotes, PatternLaws.KeepsLineCount, PatternLaws.WorksLineByLine).ThrowIfBroken();
        #endregion
    }

    [Fact]
    public void A_law_that_it_does_not_keep_is_shown_by_the_smallest_case()
    {
        #region law that is broken
        var rule = PatternRule.OfLines("last note first", StudioPatterns.LastNoteFirst);
        var claim = LawSuite.Check(rule, PatternLaws.UndoesItself)[0];
        Console.WriteLine(claim.Describe());
        #endregion

        // Of three notes the last one first is a turn of three: twice is not at all only for lines of up to two.
        Assert.False(claim.IsKept);
        Assert.NotNull(claim.Failure);
        Assert.Contains(claim.Failure.Pattern.Expand(claim.Failure.Scale).Lines, l => l.Notes.Count > 2);

        // The case that the page shows, read from the page, breaks the law; what stands around it is what is printed.
        var shown = Repository.Blocks.Single(b => b.Page == "docs/add-a-combinator.md" && b.Language == "text").Code.Split('\n');
        Assert.Equal(claim.Describe().Split('\n')[..2], shown[..2]);
        string[] values = [.. shown[2..].Select(l => l.Trim().Split(' ', 2)[1].Trim())];
        Assert.Equal(LawVerdict.Broken, PatternLaws.UndoesItself.Check(rule, Pattern.Parse(values[0]), Pattern.Parse(values[1]), Scale.Parse(values[2])));
    }
}

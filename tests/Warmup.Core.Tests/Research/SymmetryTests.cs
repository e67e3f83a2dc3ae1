using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>The laws of symmetry against lines that are compared here note by note, and against what docs/laws.md says must hold.</summary>
public class SymmetryTests
{
    private static readonly Scale Plain = Catalogue.Default.Read("S R2 G3 M1 P D2 N3 S'");

    // Five notes up, seven down.
    private static readonly Scale Uneven = Catalogue.Default.Read("bilahari");

    [Theory]
    [InlineData("run.there-and-back", "palindrome, last-first, reversed, swapped, backwards, turned alike, undone backwards")]
    [InlineData("run", "last-first, swapped, turned alike, undone backwards")]
    [InlineData("ladder", "swapped, turned alike, undone backwards")]
    [InlineData("ladder.up-down", "swapped, turned alike, undone backwards")]
    [InlineData("[S P S]", "palindrome, last-first, reversed, swapped, backwards, turned alike, undone backwards")]
    public void The_laws_of_small_patterns_in_seven_notes_are_those_found_by_hand(string pattern, string holding) =>
        Assert.Equal(holding, Holding(SymmetryLaws.Of(Pattern.Parse(pattern), Plain)));

    [Fact]
    public void In_a_scale_that_differs_up_and_down_refilling_takes_another_list()
    {
        // S R G P D S' goes back as S' N D P M G R S by backwards; reversed grows on the descent and is read backwards: the same line. Back again it has five notes up.
        var laws = SymmetryLaws.Of(Pattern.Run, Uneven);
        Assert.True(laws is { IsTurnedAlike: true, IsUndoneBackwards: true, IsSwapped: false, IsReversed: false }, laws.ToString());

        // The first three lines of the ladder end on S, R and G; on the descent too, but there the fourth ends on M.
        Assert.False(SymmetryLaws.Of(Pattern.Ladder, Uneven).IsTurnedAlike);
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 150)]
    public bool Each_law_says_whether_the_lines_sound_alike(Pattern pattern, Scale scale)
    {
        var laws = SymmetryLaws.Of(pattern, scale);
        var plain = LinesOf(pattern, scale);
        bool? Same(Func<Pattern, Pattern> turn, Func<Pattern, Pattern>? other = null, params Func<Pattern, Pattern>[] between)
        {
            Line[]?[] all = [plain, LinesOf(pattern, scale, turn), other is null ? plain : LinesOf(pattern, scale, other), .. between.Select(b => LinesOf(pattern, scale, b))];
            return Array.Exists(all, a => a is null) ? null : Alike(all[1]!, all[2]!);
        }

        return laws.IsPalindrome == plain?.All(l => Alike([l], [new Line(l.Notes.Reverse().ToValueList())]))
            && laws.IsLastFirst == Same(p => p.LastFirst())
            && laws.IsReversed == Same(p => p.Reversed())
            && laws.IsMirrored == Same(p => p.Mirrored())
            && laws.IsSwapped == Same(p => p.Swapped())
            && laws.IsBackwards == Same(p => p.Backwards())
            && laws.IsTurnedAlike == Same(p => p.Backwards(), p => p.Reversed())
            && laws.IsUndoneBackwards == Same(p => p.Backwards().Backwards(), null, p => p.Backwards());
    }

    // Laws 10 and 11 of docs/laws.md. A list that zigzags is no other list backwards, though it is the same scale both ways.
    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 150)]
    public bool Where_the_scale_is_the_same_both_ways_the_two_ways_to_turn_never_differ(Pattern pattern, Scale scale)
    {
        var laws = SymmetryLaws.Of(pattern, new Scale("same", scale.Ascent));
        return scale.IsVakra || !scale.HasUpperTonic || laws.IsTurnedAlike != false && laws.IsUndoneBackwards != false;
    }

    [Fact]
    public void A_pattern_that_the_scale_refuses_says_nothing_at_all()
    {
        var laws = SymmetryLaws.Of(Pattern.Parse("[S M]"), Catalogue.Default.Read("mohanam"));
        Assert.Equal("none (8 say nothing)", laws.ToString());
        Assert.Throws<OperationCanceledException>(() => SymmetryLaws.Of(Pattern.Ladder, Plain, new CancellationToken(true)));
    }

    private static string Holding(SymmetryLaws laws) => laws.ToString().Split(" (")[0];

    private static Line[]? LinesOf(Pattern pattern, Scale scale, Func<Pattern, Pattern>? turn = null)
    {
        try
        {
            return (turn is null ? pattern : turn(pattern)).TryExpand(scale, out var expansion, out _) ? [.. expansion.Lines] : null;
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static bool Alike(Line[] one, Line[] other) => one.Length == other.Length && one.Zip(other).All(pair => pair.First.SoundsAs(pair.Second));
}

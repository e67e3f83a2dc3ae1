using System.Text;

namespace Warmup.Sheets.Tests;

/// <summary>Letters at more than one pitch. Bhairavi's lists from derived.tsv, which names its sources: up with D2, down with D1.</summary>
public class VariantTests
{
    private const string Legend = "D1 D2: a letter that has more than one pitch here is written with its variant";

    private static readonly Score Bhairavi = Made("ladder.there-and-back");

    [Fact]
    public void The_lines_have_the_variant_of_the_letter_that_has_two_and_of_no_other()
    {
        var last = Sheet.Of(Bhairavi).Sections[0].Blocks[0].Lines[^1].Signs.Where(s => s.Tone is not null).Select(s => s.Tone!.ToString());
        Assert.Equal("S R G M P D2 N S' N D1 P M G R S", string.Join(' ', last));
    }

    [Fact]
    public void All_outputs_tell_the_two_apart_and_their_legends_say_so()
    {
        var text = Written(new TextSheetFormat(), Bhairavi);
        Assert.Contains(" D2 ", text, StringComparison.Ordinal);
        Assert.Contains(" D1 ", text, StringComparison.Ordinal);
        Assert.Contains(Legend, text, StringComparison.Ordinal);

        // The eye gets a subscript, the screen reader a plain number.
        var page = Written(new HtmlFormat(), Bhairavi);
        Assert.Contains(">D\u2082<", page, StringComparison.Ordinal);
        Assert.Contains("P, D2, N, upper S", page, StringComparison.Ordinal);
        Assert.Contains("N, D1, P, M", page, StringComparison.Ordinal);
        Assert.Contains(Legend, page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_script_has_them_too_and_solfa_needs_none()
    {
        Assert.Equal(["\u0BA41", "\u0BA42"], Sheet.Of(Made("ladder.there-and-back", Syllables.Tamil)).LettersWithVariant);
        Assert.Empty(Sheet.Of(Made("ladder.there-and-back", Syllables.Solfa)).LettersWithVariant);
    }

    [Fact]
    public void Where_each_letter_has_one_pitch_it_stands_alone_and_the_legend_is_silent()
    {
        Assert.Empty(Sheet.Of(Made("ladder")).LettersWithVariant);
        Assert.Empty(Sheet.Of(Made("ladder")).VariantLegend);
        Assert.DoesNotContain("its variant", Written(new TextSheetFormat(), Made("ladder")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_legend_does_not_give_hidden_notes_away() => Assert.Empty(Sheet.Of(Bhairavi).WithHiddenNotes().LettersWithVariant);

    private static Score Made(string pattern, Syllables? syllables = null) => new Drill
    {
        Scale = Scale.Parse("S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S"),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.Parse("C4"),
        Syllables = syllables ?? Syllables.SvaraLetters,
    }.ToScore();

    private static string Written(IScoreFormat format, Score score)
    {
        using var stream = new MemoryStream();
        format.Write(score, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}

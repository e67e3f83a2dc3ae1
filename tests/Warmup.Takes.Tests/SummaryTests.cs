namespace Warmup.Takes.Tests;

/// <summary>What a report says in sentences. The drill is S R / S R G / S R G P in Mohanam, where G to P is a step; what is expected was counted by hand.</summary>
public class SummaryTests
{
    private static readonly Score Three = ScoreOf("[S R / S R G / S R G P]");

    [Fact]
    public void Kinds_of_notes_are_counted_apart()
    {
        var skills = TakeSummary.Skills(Three, Heard(Three, (4, 40), (5, -26)));
        Assert.Equal([new("starting notes of lines", 3, 2, 3), new("steps", 6, 5, 3)], skills);
    }

    [Fact]
    public void What_went_well_and_what_to_work_on_are_two_things()
    {
        var words = TakeSummary.Words(Three, Heard(Three, (4, 40)));
        Assert.Equal("9 notes were heard, 8 of them in tune, which is within 25 cents.", words[0]);
        Assert.Equal("What went well: starting notes of lines, 3 of 3 in tune.", words[1]);
        Assert.Equal("The one thing to work on: steps; 5 of 6 were in tune, the median was 3 cents off.", words[2]);
    }

    [Fact]
    public void Of_one_kind_alone_that_was_off_nothing_is_praised()
    {
        var score = ScoreOf("[S R G P]");
        var words = TakeSummary.Words(score, Heard(score, (2, 60)));
        Assert.DoesNotContain(words, w => w.StartsWith("What went well", StringComparison.Ordinal));
        Assert.Contains("The one thing to work on: steps; 2 of 3 were in tune, the median was 3 cents off.", words);
    }

    [Fact]
    public void Where_all_was_in_tune_nothing_stands_out()
    {
        var words = TakeSummary.Words(Three, Heard(Three));
        Assert.StartsWith("What went well: ", words[1], StringComparison.Ordinal);
        Assert.Equal("Nothing stands out to work on: all kinds of notes were in tune.", words[2]);
    }

    /// <summary>More than a quarter off, of two notes at least: one of three is, one of four is not, and a note alone tells nothing.</summary>
    [Theory]
    [InlineData(3, 2, true)]
    [InlineData(4, 3, false)]
    [InlineData(2, 2, false)]
    [InlineData(1, 0, false)]
    public void A_line_stays_off_where_more_than_a_quarter_was(int heard, int inTune, bool expected)
    {
        var line = new TakeLine { Line = 2, Round = 1, Times = 1, BrokenOff = 0, Heard = heard, InTune = inTune };
        Assert.Equal(expected ? [2] : [], TakeSummary.OffLines(new TakeReport { IsDrill = true, Lines = [line] }));
    }

    [Fact]
    public void A_take_that_is_not_the_drill_is_not_judged() =>
        Assert.Equal(["This is not the drill: nobody sings. Nothing was judged."], TakeSummary.Words(Three, new TakeReport { IsDrill = false, Reason = "nobody sings" }));

    private static Score ScoreOf(string pattern) =>
        new Drill { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse("C4"), Tempo = 60 }.ToScore();

    /// <summary>Every note sung 3 cents above, but for some.</summary>
    private static TakeReport Heard(Score score, params (int Index, int Cents)[] off) => new()
    {
        IsDrill = true,
        Notes = score.Sections[0].Notes.Select((_, i) => new TakeNote
        {
            Index = i,
            Line = 1,
            Round = 1,
            Status = NoteStatus.Sung,
            Tone = default,
            Cents = off.FirstOrDefault(o => o.Index == i, (Index: i, Cents: 3)).Cents,
        }).ToValueList(),
    };
}

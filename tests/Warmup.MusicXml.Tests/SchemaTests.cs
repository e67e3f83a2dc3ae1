using FsCheck;
using FsCheck.Fluent;

namespace Warmup.MusicXml.Tests;

/// <summary>Files against the W3C's schema of MusicXML 4.0 (Music Notation Community Group, final report of 1 June 2021).</summary>
public class SchemaTests
{
    public static TheoryData<string> Names => [.. Samples.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_sample_is_valid(string name)
    {
        Schema.SkipWhereMissing();
        foreach (var options in Samples.Options)
        {
            Assert.Empty(Schema.Errors(ReadScore.Bytes(Samples.All[name], options)));
        }
    }

    [Fact]
    public void Generated_scores_are_valid()
    {
        Schema.SkipWhereMissing();
        Prop.ForAll(Drills.Scores.ToArbitrary(), score => Assert.Empty(Schema.Errors(ReadScore.Bytes(score)))).QuickCheckThrowOnFailure();
    }

    [Theory]
    [MemberData(nameof(TextTests.Titles), MemberType = typeof(TextTests))]
    public void A_title_of_any_text_is_valid(string title)
    {
        Schema.SkipWhereMissing();
        Assert.Empty(Schema.Errors(ReadScore.Bytes((Drills.Of() with { Title = title }).ToScore())));
    }

    [Fact]
    public void The_schema_finds_a_note_without_a_duration()
    {
        Schema.SkipWhereMissing();
        var text = System.Text.Encoding.UTF8.GetString(ReadScore.Bytes(Samples.All["first speed"]));
        var broken = text.Replace("<duration>1</duration>", string.Empty, StringComparison.Ordinal);
        Assert.NotEmpty(Schema.Errors(System.Text.Encoding.UTF8.GetBytes(broken)));
    }
}

using System.Text;

namespace Warmup.Voices.Tests;

/// <summary>
/// Source: Maslan et al. 2011, J Voice 25:709-713 (three trials: 21.77, 21.67, 22.80 s); the documented file format; the project's own
/// fractions and bounds.
/// </summary>
public class VoiceSingerTests
{
    private static readonly NoteName Low = NoteName.FromMidi(55);
    private static readonly NoteName High = NoteName.FromMidi(74);

    private static Rational Seconds(int hundredths) => new(hundredths, 100);

    private static ValueList<Singer> Read(string members) => SingersFile.Read(Encoding.UTF8.GetBytes(
        $$"""{"schema":"urn:warmup:singers:1","singers":[{"alias":"Mira",{{members}}}]}"""));

    private static string Refused(string members) => Assert.Throws<WarmupFormatException>(() => Read(members)).Error.Message;

    private static ValueList<Singer> RoundTrip(ValueList<Singer> singers)
    {
        using var stream = new MemoryStream();
        SingersFile.Write(singers, stream);
        return SingersFile.Read(stream.ToArray());
    }

    [Fact]
    public void Maslan_2011_three_trials_give_the_best_or_the_median()
    {
        ValueList<Rational> trials = [Seconds(2177), Seconds(2167), Seconds(2280)];
        Assert.Equal(Seconds(2280), SustainedTone.Of(trials));
        Assert.Equal(Seconds(2177), SustainedTone.Of(trials, TrialRule.Median));
        Assert.Equal(Seconds(2172), SustainedTone.Of([Seconds(2177), Seconds(2167)], TrialRule.Median));
        Assert.Equal(Seconds(2280), new Singer("a", Low, High, trials, TrialRule.Best).SustainedSeconds);
    }

    [Theory]
    [InlineData(Experience.Beginner, 800, 80)] // 0.4 of 20 s
    [InlineData(Experience.Intermediate, 1000, 40)]
    [InlineData(Experience.Advanced, 1200, 40)]
    public void The_capacity_is_the_documented_fraction_of_the_tone(Experience experience, int hundredths, int shortest)
    {
        var singer = new Singer("a", Low, High, 20, experience);
        Assert.Equal((Seconds(hundredths), Seconds(shortest)), (singer.BreathSeconds, singer.ShortestBreathSeconds));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(400)]
    public void A_tone_of_0_or_400_seconds_is_refused_also_among_trials(int seconds)
    {
        Assert.Contains("between 1 and 120", Assert.Throws<ArgumentOutOfRangeException>(() => new Singer("a", Low, High, seconds)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Singer("a", Low, High, [10, seconds], TrialRule.Median));
        Assert.Contains("between 1 and 120", Refused($"\"low\":\"G3\",\"high\":\"D5\",\"trials\":[10,{seconds}]"), StringComparison.Ordinal);
    }

    [Fact]
    public void There_are_1_to_14_trials()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SustainedTone.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SustainedTone.Of(Enumerable.Repeat(new Rational(9), 15).ToValueList()));
        Assert.Equal(9, SustainedTone.Of(Enumerable.Repeat(new Rational(9), 14).ToValueList(), TrialRule.Median));
    }

    [Fact]
    public void The_full_range_holds_the_comfortable_one()
    {
        var singer = new Singer("a", Low, High, 10) { FullLow = NoteName.FromMidi(50), FullHigh = NoteName.FromMidi(80) };
        Assert.Equal(("D3", "G#5"), (singer.FullLow.ToString(), singer.FullHigh.ToString()));
        Assert.Throws<ArgumentException>(() => singer with { FullLow = NoteName.FromMidi(56) });
        Assert.Throws<ArgumentException>(() => singer with { FullHigh = NoteName.FromMidi(73) });
        Assert.Throws<ArgumentException>(() => singer with { FullHigh = NoteName.FromMidi(109) });
    }

    [Fact]
    public void A_note_beyond_the_full_range_is_said_to_be()
    {
        var drill = new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4"), Tempo = 200 };
        var singer = new Singer("a", Low, NoteName.FromMidi(67), 100, Experience.Advanced);
        Assert.DoesNotContain("beyond", drill.ToScore().Check(singer)[^1].Message, StringComparison.Ordinal);
        Assert.DoesNotContain("beyond", drill.ToScore().Check(singer with { FullHigh = NoteName.FromMidi(72) })[^1].Message, StringComparison.Ordinal);
        Assert.Contains("beyond the full range's A#4", drill.ToScore().Check(singer with { FullHigh = NoteName.FromMidi(70) })[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_the_first_form_is_read_and_written_as_before()
    {
        const string First = """
            {
              "schema": "urn:warmup:singers:1",
              "singers": [
                {
                  "alias": "Wren",
                  "low": "A3",
                  "high": "E5",
                  "sustainedSeconds": 14.5,
                  "experience": "advanced"
                }
              ]
            }

            """;
        var singers = SingersFile.Read(Encoding.UTF8.GetBytes(First));
        Assert.Equal(new Singer("Wren", NoteName.FromMidi(57), NoteName.FromMidi(76), new Rational(29, 2), Experience.Advanced), Assert.Single(singers.ToArray()));
        using var stream = new MemoryStream();
        SingersFile.Write(singers, stream);
        Assert.Equal(First, Encoding.UTF8.GetString(stream.ToArray()));
    }

    [Fact]
    public void The_new_members_are_read_and_written_back()
    {
        var singer = Assert.Single(Read("""
            "low":"G3","high":"D5","trials":[12.5,13,12.75],"trialRule":"median","voice":"Soprano","fullLow":"E3","fullHigh":"A5"
            """).ToArray());
        Assert.Equal((new Rational(51, 4), TrialRule.Median, "soprano", "E3", "A5", false), (singer.SustainedSeconds, singer.TrialRule, singer.Voice, singer.FullLow.ToString(), singer.FullHigh.ToString(), singer.IsRangeAssumed));
        Assert.Equal([singer], RoundTrip([singer]));
    }

    [Fact]
    public void A_comfortable_voice_type_stands_in_for_the_range_and_is_known_to()
    {
        var singer = Assert.Single(Read("\"voice\":\"adult woman, beginner\",\"sustainedSeconds\":12").ToArray());
        Assert.Equal(("A3", "D5", true), (singer.Low.ToString(), singer.High.ToString(), singer.IsRangeAssumed));
        Assert.Equal([singer], RoundTrip([singer]));
        Assert.Equal(singer, Singer.FromVoice("Mira", VoiceTypes.Find("adult woman, beginner")!, 12));
        Assert.Throws<ArgumentException>(() => Singer.FromVoice("Mira", VoiceTypes.Find("soprano")!, 12));
    }

    [Theory]
    [InlineData("\"voice\":\"soprano\",\"sustainedSeconds\":12", "measured")]
    [InlineData("\"voice\":\"whistler\",\"low\":\"G3\",\"high\":\"D5\",\"sustainedSeconds\":12", "whistler")]
    [InlineData("\"voice\":\"child 6-7\",\"low\":\"G3\",\"sustainedSeconds\":12", "high")]
    [InlineData("\"low\":\"G3\",\"high\":\"D5\",\"sustainedSeconds\":12,\"trials\":[12]", "both")]
    [InlineData("\"low\":\"G3\",\"high\":\"D5\",\"sustainedSeconds\":12,\"trialRule\":\"best\"", "trials")]
    [InlineData("\"low\":\"G3\",\"high\":\"D5\",\"trials\":[12],\"trialRule\":\"mean\"", "mean")]
    [InlineData("\"low\":\"G3\",\"high\":\"D5\",\"trials\":[]", "1 and 14")]
    [InlineData("\"low\":\"G3\",\"high\":\"D5\",\"sustainedSeconds\":12,\"fullLow\":\"A3\"", "A3")]
    [InlineData("\"low\":\"G3\",\"high\":\"D5\",\"sustainedSeconds\":12,\"fullHigh\":\"H9\"", "fullHigh")]
    [InlineData("\"low\":\"D5\",\"high\":\"G3\",\"sustainedSeconds\":12", "swap")]
    public void Bad_members_are_named(string members, string expected) => Assert.Contains(expected, Refused(members), StringComparison.Ordinal);

    [Fact]
    public void Ten_thousand_singers_are_read_and_a_huge_file_is_refused()
    {
        var many = Enumerable.Range(0, 10_000).Select(i => new Singer($"voice {i}", Low, High, [10, 11, 12], TrialRule.Best)).ToValueList();
        Assert.Equal(many, RoundTrip(many));
        Assert.Contains("8000000", Assert.Throws<WarmupFormatException>(() => SingersFile.Read(new byte[8_000_001])).Message, StringComparison.Ordinal);
    }
}

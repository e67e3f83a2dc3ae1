namespace Warmup.Midi.Tests;

/// <summary>
/// Notes are played louder where the tala counts: the accents by akshara. How much is the project's own setting (12, 8 and 4 above 90);
/// which aksharas begin an anga is written out here by hand from the meters' own sums.
/// </summary>
public class AccentTests
{
    private const int Base = 90;

    [Theory]
    [InlineData("adi", "12 4 4 4 8 4 8 4 12 4 4 4")] // 4 + 2 + 2
    [InlineData("rupaka", "12 4 8 4 4 4 12 4 8")] // 2 + 4
    [InlineData("khanda chapu", "12 4 8 4 4 12 4 8")] // 2 + 3
    [InlineData("3/4", "12 4 4 12 4 4")]
    public void The_first_akshara_of_an_avartana_is_loudest_then_those_of_the_angas(string meter, string accents)
    {
        var heard = Heard.From((Files.Drill() with { Meter = Meter.Parse(meter) }).ToScore());
        var expected = Numbers(accents);
        Assert.Equal(expected.Select(a => Base + a), heard.Voice.Take(expected.Length).Select(n => n.Velocity));
    }

    [Fact]
    public void Notes_between_the_aksharas_have_no_accent()
    {
        var heard = Heard.From((Files.Drill() with { Speeds = [Speed.Second] }).ToScore());
        Assert.Equal(Numbers("12 0 4 0 4 0 4 0 8 0 4 0 8 0 4 0 12 0").Select(a => Base + a), heard.Voice.Take(18).Select(n => n.Velocity));
    }

    [Fact]
    public void Accents_go_with_the_avartana_behind_a_count_in_and_between_answers()
    {
        // S R in a line of 2 aksharas with as much to answer: the second line begins at akshara 4, an anga, and goes on to 6.
        var heard = Heard.From((Files.Drill(pattern: "ladder.take(2)") with { CountIn = 2 }).ToScore().WithAnswers());
        Assert.Equal(Numbers("12 4 8 4 8").Select(a => Base + a), heard.Voice.Select(n => n.Velocity));
    }

    [Fact]
    public void Free_rhythm_has_none()
    {
        var heard = Heard.From((Files.Drill() with { Meter = Meter.Free }).ToScore());
        Assert.All(heard.Voice, n => Assert.Equal(Base, n.Velocity));
    }

    [Fact]
    public void Accents_are_the_callers_and_end_at_127()
    {
        var score = Files.Drill().ToScore();
        var heard = Heard.From(score, new MidiOptions { VoiceVelocity = 100, AvartanaAccent = 126, AngaAccent = 20, AksharaAccent = 0 });
        Assert.Equal(Numbers("127 100 100 100 120 100 120 100 127"), heard.Voice.Take(9).Select(n => n.Velocity));
        var even = new MidiOptions { AvartanaAccent = 0, AngaAccent = 0, AksharaAccent = 0 };
        Assert.All(Heard.From(score, even).Voice, n => Assert.Equal(Base, n.Velocity));
        Assert.StartsWith("AngaAccent must be between 0 and 126, not 127", Refusal(() => new MidiOptions { AngaAccent = 127 }), StringComparison.Ordinal);
        Assert.StartsWith("AvartanaAccent must be between 0 and 126, not -1", Refusal(() => new MidiOptions { AvartanaAccent = -1 }), StringComparison.Ordinal);
        Assert.StartsWith("AksharaAccent must be between 0 and 126, not 200", Refusal(() => new MidiOptions { AksharaAccent = 200 }), StringComparison.Ordinal);
    }

    private static string Refusal(Func<object> make) => Assert.Throws<ArgumentOutOfRangeException>(make).Message;

    private static int[] Numbers(string text) => [.. text.Split(' ').Select(int.Parse)];
}

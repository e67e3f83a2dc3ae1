using System.Text;

namespace Warmup.Voices.Tests;

/// <summary>The outermost values a singer can have, and what is said beyond them. Source: the documented bounds.</summary>
public class SingerLimitsTests
{
    private static Singer Voice(string low, string high) => new("Mira", NoteName.Parse(low), NoteName.Parse(high), 20);

    private static string Refused(Action make) => Assert.ThrowsAny<ArgumentException>(make).Message;

    [Fact]
    public void Each_end_of_each_range_has_its_own_bounds()
    {
        Assert.Contains("the lowest comfortable note must be between C1 and C8, not B0", Refused(() => Voice("B0", "C4")), StringComparison.Ordinal);
        Assert.Contains("the highest comfortable note must be between C1 and C8, not C#8", Refused(() => Voice("C4", "C#8")), StringComparison.Ordinal);
        Assert.Contains("the lowest comfortable note D4 lies above the highest, C4; swap them", Refused(() => Voice("D4", "C4")), StringComparison.Ordinal);
        Assert.Equal("Mira (C4 to C4)", Voice("C4", "C4").ToString());
        Assert.Contains(
            "the lowest note of the full range must be between C1 and C8, not B0", Refused(() => _ = Voice("C4", "C5") with { FullLow = NoteName.Parse("B0") }), StringComparison.Ordinal);
        Assert.Contains(
            "the highest note of the full range must be between C1 and C8, not C#8", Refused(() => _ = Voice("C4", "C5") with { FullHigh = NoteName.Parse("C#8") }), StringComparison.Ordinal);
        Assert.Contains("lies above the lowest comfortable note C4", Refused(() => _ = Voice("C4", "C5") with { FullLow = NoteName.Parse("C#4") }), StringComparison.Ordinal);
        Assert.Contains("lies below the highest comfortable note C5", Refused(() => _ = Voice("C4", "C5") with { FullHigh = NoteName.Parse("B4") }), StringComparison.Ordinal);
    }

    [Fact]
    public void The_full_range_may_be_the_comfortable_one()
    {
        var singer = Voice("C4", "C5") with { FullLow = NoteName.Parse("C4"), FullHigh = NoteName.Parse("C5") };
        Assert.Equal((singer.Low, singer.High), (singer.FullLow, singer.FullHigh));
    }

    [Fact]
    public void An_alias_that_begins_with_a_control_character_is_refused_at_its_first_position() =>
        Assert.Contains("U+0007 at position 1", Refused(() => _ = new Singer("\aMira", NoteName.Parse("C4"), NoteName.Parse("C5"), 20)), StringComparison.Ordinal);

    [Fact]
    public void A_member_that_stands_twice_in_a_class_is_refused()
    {
        var json = """{"schema":"urn:warmup:singers:1","singers":[{"alias":"Mira","low":"G3","low":"C3","high":"D5","sustainedSeconds":14.5}]}""";
        Assert.Contains("low", Assert.Throws<WarmupFormatException>(() => SingersFile.Read(Encoding.UTF8.GetBytes(json))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_range_that_was_assumed_from_the_voice_says_so()
    {
        var voice = VoiceTypes.All.First(v => v.IsComfortable);
        Assert.Equal($"undated: {voice.Low} to {voice.High} (assumed), 20 s", Singer.FromVoice("Mira", voice, 20).Measurement.ToString());
        Assert.Equal("undated: C4 to C5, 20 s", Voice("C4", "C5").Measurement.ToString());
    }

    [Fact]
    public void A_measured_range_is_written_also_where_the_singer_has_a_voice()
    {
        var voice = VoiceTypes.All.First(v => v.IsComfortable);
        var measured = new Singer("Mira", voice.Low, voice.High, 20) { Voice = voice.Name };
        using var file = new MemoryStream();
        SingersFile.Write([measured, Singer.FromVoice("Wren", voice, 20)], file);
        var text = Encoding.UTF8.GetString(file.ToArray());
        Assert.Equal(2, text.Split("\"low\"").Length); // once: the range that came from the voice is not written
        Assert.Equal([false, true], SingersFile.Read(file.ToArray()).Select(s => s.IsRangeAssumed));
    }
}

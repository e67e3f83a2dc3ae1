using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>
/// Source: Xu and Sun 2002, J Acoust Soc Am 111:1399-1413 (speakers): fastest complete rise 89.6 + 8.7 d ms, fall 100.4 + 5.8 d ms; levels
/// and steady parts are the project's own settings; notes a second are plain arithmetic.
/// </summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class AgilityTests
{
    private static Singer Voice(Experience experience) => new("Mira", NoteName.FromMidi(40), NoteName.FromMidi(90), 120, experience);

    private static Drill Drill(string pattern, int tempo, int kalam) => new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.FromMidi(57),
        Tempo = tempo,
        Speeds = [new Speed(kalam)],
    };

    private static Finding[] TooFast(Drill drill, Experience experience) => [.. drill.ToScore().Check(Voice(experience)).Where(f => f.Code == VoiceFindingCode.TooFast)];

    [Theory]
    [InlineData(2, 1070)]
    [InlineData(-2, 1120)]
    [InlineData(7, 1505)]
    [InlineData(-7, 1410)]
    [InlineData(12, 1940)]
    [InlineData(-12, 1700)]
    [InlineData(0, 0)]
    public void Xu_and_Sun_2002_changes_of_2_7_and_12_semitones(int semitones, int tenthsOfMilliseconds) =>
        Assert.Equal(new Rational(tenthsOfMilliseconds, 10_000), AgilityLimits.ChangeSeconds(semitones));

    [Theory]
    [InlineData(Experience.Beginner, 3, 100)]
    [InlineData(Experience.Intermediate, 5, 50)]
    [InlineData(Experience.Advanced, 8, 10)]
    public void The_levels_settings_are_those_documented(Experience experience, int notes, int milliseconds)
    {
        var limits = AgilityLimits.Of(experience);
        Assert.Equal((new Rational(notes), new Rational(milliseconds, 1000)), (limits.NotesASecond, limits.SteadySeconds));
    }

    [Theory]
    [InlineData(60, 3, Experience.Beginner, false)] // third speed at 60: 4 notes a second
    [InlineData(60, 3, Experience.Intermediate, true)]
    [InlineData(80, 3, Experience.Intermediate, false)] // 5.33 notes a second
    [InlineData(75, 3, Experience.Intermediate, true)] // 5 notes a second, exactly the most
    [InlineData(80, 3, Experience.Advanced, true)]
    [InlineData(60, 2, Experience.Beginner, true)]
    [InlineData(90, 2, Experience.Beginner, true)] // 3 notes a second, exactly the most
    [InlineData(91, 2, Experience.Beginner, false)]
    [InlineData(120, 3, Experience.Advanced, true)] // 8 notes a second, steps of 2 semitones need 107 + 10 and 112 + 10 ms of 125
    public void Third_speed_at_60_has_4_notes_a_second_and_at_80_5_and_a_third(int tempo, int kalam, Experience experience, bool fits) =>
        Assert.Equal(fits, TooFast(Drill("figure(0 1 0 1)", tempo, kalam), experience).Length == 0);

    [Fact]
    public void The_limit_that_binds_is_named()
    {
        // A step: 107 + 50 ms, less than the 200 ms of 5 notes a second.
        var cap = TooFast(Drill("figure(0 1).take(1)", 80, 3), Experience.Intermediate)[0];
        Assert.Contains("5.33 notes a second", cap.Message, StringComparison.Ordinal);
        Assert.Contains("own setting", cap.Message, StringComparison.Ordinal);

        // An octave up: 194 + 10 ms, more than the 125 ms of 8 notes a second; 6 notes a second give 167.
        var leap = TooFast(Drill("figure(0 7).take(1)", 90, 3), Experience.Advanced)[0];
        Assert.Contains("12 semitones up", leap.Message, StringComparison.Ordinal);
        Assert.Contains("204 ms", leap.Message, StringComparison.Ordinal);
        Assert.Contains("167 ms", leap.Message, StringComparison.Ordinal);
        Assert.Contains("speakers", leap.Message, StringComparison.Ordinal);
        Assert.Equal((1.0 / 6, 0.204), (leap.Measured!.Value, leap.Limit!.Value));
    }

    [Theory]
    [InlineData(1, ThroatLimit.NotesASecond)]
    [InlineData(12, ThroatLimit.Leap)]
    [InlineData(-12, ThroatLimit.Leap)]
    public void Small_steps_are_bound_by_the_level_wide_leaps_by_the_change(int semitones, ThroatLimit binding)
    {
        AgilityLimits.Of(Experience.Advanced).LeastSeconds(semitones, out var found);
        Assert.Equal(binding, found);
    }

    [Property(MaxTest = 300)]
    public void A_tempo_that_is_suggested_clears_a_continuous_drill_of_one_line(Drill drill)
    {
        var one = drill with { Delivery = Delivery.Continuous, Pattern = drill.Pattern.Take(1), Tempo = 200, Speeds = [new Speed(3, 4)] };
        foreach (var finding in TooFast(one, Experience.Beginner))
        {
            var number = System.Text.RegularExpressions.Regex.Match(finding.Fix, @"tempo of (\d+) at most").Groups[1].Value;
            var tempo = int.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
            Assert.Empty(TooFast(one with { Tempo = tempo }, Experience.Beginner));
            Assert.NotEmpty(TooFast(one with { Tempo = tempo + 1 }, Experience.Beginner));
        }
    }

    [Property(MaxTest = 500)]
    public void A_slower_tempo_never_makes_agility_worse(Drill drill, Singer singer, byte slower)
    {
        var continuous = drill with { Delivery = Delivery.Continuous };
        var fast = TooFast(continuous, singer.Experience);
        var slow = TooFast(continuous with { Tempo = Rational.Max(Tempo.Slowest, drill.Tempo.Start - slower) }, singer.Experience);
        Assert.Subset(fast.Select(f => f.Place!.Value.Line).ToHashSet(), slow.Select(f => f.Place!.Value.Line).ToHashSet());
    }

    [Property]
    public void A_higher_level_never_finds_more(Drill drill)
    {
        var counts = new[] { Experience.Beginner, Experience.Intermediate, Experience.Advanced }.Select(e => TooFast(drill, e).Length).ToArray();
        Assert.True(counts[0] >= counts[1] && counts[1] >= counts[2], string.Join(" ", counts));
    }

    [Fact]
    public void Values_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new AgilityLimits { NotesASecond = 10 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AgilityLimits { NotesASecond = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new AgilityLimits { SteadySeconds = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => AgilityLimits.ChangeSeconds(128));
    }
}

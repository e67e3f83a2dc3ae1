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
        Assert.Equal(fits, TooFast(Drill("figure(1 2 1 2)", tempo, kalam), experience).Length == 0);

    [Fact]
    public void The_limit_that_binds_is_named()
    {
        // A step: 107 + 50 ms, less than the 200 ms of 5 notes a second.
        var cap = TooFast(Drill("figure(1 2).take(1)", 80, 3), Experience.Intermediate)[0];
        Assert.Contains("5.33 notes a second", cap.Message, StringComparison.Ordinal);
        Assert.Contains("own setting", cap.Message, StringComparison.Ordinal);

        // An octave up: 194 + 10 ms, more than the 125 ms of 8 notes a second; 6 notes a second give 167.
        var leap = TooFast(Drill("figure(1 8).take(1)", 90, 3), Experience.Advanced)[0];
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

    [Fact]
    public void A_leap_inside_the_line_is_found_where_it_is()
    {
        // 100 a minute in the third speed: 150 ms a note. Steps need 125 ms (8 notes a second), the sixth from G3 up to S' 89.6 + 8 x 8.7 +
        // 10 = 169.2 ms.
        var finding = Assert.Single(TooFast(Drill("[S R G S' N D]", 100, 3), Experience.Advanced));
        Assert.Equal(new ScorePlace(1, 1, new Rational(3, 4)), finding.Place);
        Assert.Contains("8 semitones up", finding.Message, StringComparison.Ordinal);
        Assert.Equal((0.15, 0.1692), (finding.Measured!.Value, finding.Limit!.Value), new Near());
    }

    [Fact]
    public void Each_line_that_is_too_fast_is_told_once_with_its_worst_change()
    {
        // The fifth (89.6 + 60.9 + 10 = 160.5 ms) and the octave (204 ms) are both more than 150 ms; the octave is told. The second line has
        // only steps, the third a fifth.
        var findings = TooFast(Drill("[S P S R S S' N D] + [M G M] + [G M G N M G]", 100, 3), Experience.Advanced);
        Assert.Equal([1, 3], findings.Select(f => f.Place!.Value.Line));
        Assert.Contains("12 semitones up", findings[0].Message, StringComparison.Ordinal);
        Assert.Equal(findings.Length, findings.Select(f => f.Place!.Value.Line).Distinct().Count());
    }

    [Fact]
    public void A_leap_from_the_last_note_of_a_section_to_the_first_of_the_next_counts()
    {
        var first = Drill("[S R G R]", 100, 3) with { Meter = Meter.Parse("1/4"), Title = "low" };
        var second = Drill("[S' N D N]", 100, 3) with { Meter = Meter.Parse("1/4"), Title = "high" };
        Assert.Empty(TooFast(first, Experience.Advanced));
        Assert.Empty(TooFast(second, Experience.Advanced));
        var score = Score.Join("both", [first.ToScore(), second.ToScore()]);
        var finding = Assert.Single(score.Check(Voice(Experience.Advanced)), f => f.Code == VoiceFindingCode.TooFast);
        Assert.Equal(new ScorePlace(2, 1, 0, "high"), finding.Place);
    }

    [Theory]
    [InlineData("[S , S' , N S']", 5)]
    [InlineData("[N S' , S , S']", 1)]
    public void The_change_that_would_have_to_be_slowed_most_is_told_wherever_it_stands(string line, int unit)
    {
        // 150 a minute in the third speed: 100 ms a unit. Up the octave needs 204 ms and has 200; N to S' needs 125 ms (8 notes a second) and
        // has 100: less, but it would have to be slowed by a quarter, the octave by a fiftieth.
        var finding = Assert.Single(TooFast(Drill(line, 150, 3), Experience.Advanced));
        Assert.Equal(new Rational(unit, 4), finding.Place!.Value.Beat);
        Assert.Equal((0.1, 0.125), (finding.Measured!.Value, finding.Limit!.Value), new Near());
    }

    [Fact]
    public void Of_equally_hurried_changes_the_first_is_told_in_each_section()
    {
        // 150 ms a note; each rise of an octave needs 204 ms, each fall, the one into the second section too, 100.4 + 69.6 + 10 = 180 ms.
        var part = (Drill("[S S' S S']", 100, 3) with { Meter = Meter.Parse("1/4"), Title = "leaps" }).ToScore();
        var findings = Score.Join("twice", [part, part]).Check(Voice(Experience.Advanced)).Where(f => f.Code == VoiceFindingCode.TooFast);
        Assert.Equal([new ScorePlace(1, 1, new Rational(1, 4), "leaps"), new ScorePlace(2, 1, new Rational(1, 4), "leaps")], findings.Select(f => f.Place!.Value));
    }

    [Fact]
    public void A_fall_is_told_as_one()
    {
        // 100.4 + 5.8 x 12 + 10 = 180 ms; 6 notes a second give 167.
        var fall = Assert.Single(TooFast(Drill("[S' S]", 90, 3), Experience.Advanced));
        Assert.StartsWith("S' to S (12 semitones down) has 167 ms; the leap rule needs 180 ms", fall.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rise_that_ends_too_fast_is_found_in_its_last_times_only()
    {
        // Second speed: 2, 2.67 and 3.33 notes a second; a beginner's most is 3. Seven lines each time.
        var findings = TooFast(Drill("ladder", 60, 2) with { Tempo = TempoRamp.Parse("60 to 100 by 20") }, Experience.Beginner);
        Assert.Equal(Enumerable.Range(15, 7), findings.Select(f => f.Place!.Value.Line));
    }

    [Fact]
    public void Where_both_limits_need_the_same_time_the_notes_a_second_are_named()
    {
        // A tone up: 107 ms, and 18 ms steady make 125 ms, an eighth of a second.
        var limits = new AgilityLimits { NotesASecond = 8, SteadySeconds = new Rational(18, 1000) };
        Assert.Equal(new Rational(1, 8), limits.LeastSeconds(2, out var binding));
        Assert.Equal(ThroatLimit.NotesASecond, binding);
        Assert.True(limits.LeastSeconds(3, out binding) > new Rational(1, 8));
        Assert.Equal(ThroatLimit.Leap, binding);
    }

    [Property(MaxTest = 300)]
    public void The_lines_found_are_those_with_a_change_that_is_too_quick(Drill drill, Singer singer, byte changes)
    {
        // Every pair of notes, without the shortcut for narrow sections.
        var limits = AgilityLimits.Of(singer.Experience);
        var wanted = drill with { Tempo = changes % 2 == 0 ? drill.Tempo : TempoRamp.Parse("60 to 240 by 60") };
        var score = wanted.ToScore();
        var section = score.Sections[0];
        var lines = new SortedSet<int>();
        for (var n = 1; n < section.Notes.Count; n++)
        {
            var (from, to) = (section.Notes[n - 1], section.Notes[n]);
            if (section.SecondsAt(to.Onset) - section.SecondsAt(from.Onset) < limits.LeastSeconds(section.PitchOf(to).Midi - section.PitchOf(from).Midi, out _))
            {
                lines.Add(to.LineIndex + 1);
            }
        }

        Assert.Equal(lines, score.Check(singer).Where(f => f.Code == VoiceFindingCode.TooFast).Select(f => f.Place!.Value.Line));
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

    private sealed class Near : IEqualityComparer<(double A, double B)>
    {
        public bool Equals((double A, double B) x, (double A, double B) y) => Math.Abs(x.A - y.A) < 1e-9 && Math.Abs(x.B - y.B) < 1e-9;

        public int GetHashCode((double A, double B) obj) => 0;
    }
}

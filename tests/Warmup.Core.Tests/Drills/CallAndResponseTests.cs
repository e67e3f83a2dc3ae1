using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// That a teacher gives a line and the class answers it is common practice. Expectations are counted by hand from the rules of lines,
/// holds and breaths, or are sums made in the test.
/// </summary>
public class CallAndResponseTests
{
    [Fact]
    public void Each_line_is_followed_by_a_silence_of_its_own_length()
    {
        // S R / S R G / S R G M in Adi at one note an akshara: lines of 2, 3 and 4, each twice as long, 18 in all: three avartanas.
        var section = Drill("ladder.take(3)").ToScore().WithAnswers().Sections[0];
        Assert.Equal([(0, 4, 2), (4, 6, 3), (10, 8, 4)], section.Lines.ConvertAll(l => (Whole(l.Onset), Whole(l.Length), Whole(l.Answer))));
        Assert.Equal([0, 1, 4, 5, 6, 10, 11, 12, 13], section.Notes.ConvertAll(n => Whole(n.Onset)));
        Assert.Equal([(0, true), (8, false), (16, false)], section.Measures.ConvertAll(m => (Whole(m.Onset), m.IsLineStart)));
        Assert.Equal(24, section.Length);
    }

    [Fact]
    public void Line_by_line_the_answer_has_the_hold_and_the_breath_too()
    {
        // Adi at 60: S, R held to 7, breath to 8; the answer from 8 to 16.
        var section = (Drill("ladder.take(2)") with { Delivery = Delivery.LineByLine }).ToScore().WithAnswers().Sections[0];
        Assert.Equal([(0, 16, 8), (16, 16, 8)], section.Lines.ConvertAll(l => (Whole(l.Onset), Whole(l.Length), Whole(l.Answer))));
        Assert.Equal([(0, 1), (1, 6), (16, 1), (17, 1), (18, 5)], section.Notes.ConvertAll(n => (Whole(n.Onset), Whole(n.Length))));
        Assert.Equal([(7, 1, 1), (23, 1, 4)], section.Breaths.ConvertAll(b => (Whole(b.Onset), Whole(b.Length), b.AfterNote)));
        Assert.Equal([true, false, true, false], section.Measures.ConvertAll(m => m.IsLineStart));
    }

    [Fact]
    public void In_free_rhythm_the_answer_has_its_own_bar()
    {
        var section = (Drill("ladder.take(3)") with { Meter = Meter.Free }).ToScore().WithAnswers().Sections[0];
        Assert.Equal([(0, 2, true), (2, 2, false), (4, 3, true), (7, 3, false), (10, 4, true), (14, 4, false)],
            section.Measures.ConvertAll(m => (Whole(m.Onset), Whole(m.Length), m.IsLineStart)));
    }

    [Fact]
    public void Drone_title_and_findings_stay_and_every_section_is_answered()
    {
        var one = Drill("ladder.take(2)").ToScore();
        var score = Score.Join(one.Title, [one, (Drill("ladder.ends") with { Tempo = 90 }).ToScore()]);
        var answered = score.WithAnswers();
        Assert.Equal((score.Drone, score.Title, score.Findings), (answered.Drone, answered.Title, answered.Findings));
        Assert.Equal(score.Sections[1].Lines.Count, answered.Sections[1].Lines.Count);
        Assert.All(answered.Sections, s => Assert.All(s.Lines, l => Assert.Equal(l.Length, l.Answer * 2)));
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Notes_keep_their_place_in_the_line_and_nothing_sounds_in_an_answer(Sung sung)
    {
        // The generator's own answers cannot be answered again.
        var score = ScoreGenerators.Join(sung.Drills.Select(d => d.ToScore()));
        foreach (var (plain, section) in score.Sections.Zip(score.WithAnswers().Sections))
        {
            Answered(plain, section);
        }
    }

    private static void Answered(Section plain, Section section)
    {
        var at = plain.Lines[0].Onset;
        foreach (var (before, line) in plain.Lines.Zip(section.Lines))
        {
            Assert.Equal(at, line.Onset);
            Assert.Equal((before.Length, before.Length * 2), (line.Answer, line.Length));
            at += line.Length;
        }

        for (var i = 0; i < plain.Notes.Count; i++)
        {
            var (before, note) = (plain.Notes[i], section.Notes[i]);
            Assert.Equal(before.Onset - plain.Lines[before.LineIndex].Onset, note.Onset - section.Lines[note.LineIndex].Onset);
            Assert.Equal(
                (before.Length, before.PitchIndex, plain.SyllableOf(before), before.IsHeld, before.LineIndex),
                (note.Length, note.PitchIndex, section.SyllableOf(note), note.IsHeld, note.LineIndex));
            Assert.True(note.Onset + note.Length <= section.Lines[note.LineIndex].Onset + section.Lines[note.LineIndex].Answer);
        }

        foreach (var breath in section.Breaths)
        {
            Assert.Equal(section.Notes[breath.AfterNote].Onset + section.Notes[breath.AfterNote].Length, breath.Onset);
        }

        // The measures follow each other without gaps, hold everything, and there is none to spare.
        var end = Rational.Zero;
        foreach (var measure in section.Measures)
        {
            Assert.Equal(end, measure.Onset);
            end += measure.Length;
        }

        Assert.Equal(section.Length, end);
        Assert.True(at <= end && at > section.Measures[^1].Onset);
        Assert.All(section.Measures, m => Assert.Equal(section.Lines.Any(l => l.Onset == m.Onset), m.IsLineStart));
    }

    [Fact]
    public void A_count_in_is_not_answered_and_tempi_change_with_their_lines()
    {
        // One avartana of count-in, then S R / S R G at 60, again at 90: lines of 2 and 3, doubled.
        var drill = Drill("ladder.take(2)") with { CountIn = 1, Tempo = new TempoRamp(60, 30, 90) };
        var section = drill.ToScore().WithAnswers().Sections[0];
        Assert.Equal([8, 12, 18, 22], section.Lines.ConvertAll(l => Whole(l.Onset)));
        var change = Assert.Single(section.TempoChanges);
        Assert.Equal((18, 90, 18), (Whole(change.Onset), Whole(change.Tempo), Whole(change.Seconds)));

        // 20 aksharas of lines and answers behind the 8: to 28, so the section ends at 32 = 18 s + 14 x 60 / 90 s.
        Assert.Equal(new Rational(82, 3), section.Seconds);
    }

    [Theory]
    [InlineData(1, "ladder.take(3)", 4)] // 18 aksharas a time in Adi: 72 are nine avartanas
    [InlineData(3, "ladder.take(3)", 4)]
    [InlineData(5, "ladder.take(3)", 8)]
    [InlineData(1, "ladder.take(2)", 4)] // 10 a time: 40
    [InlineData(2, "ladder.take(3).drop(2)", 2)] // 8 a time
    public void The_times_to_the_first_beat_are_counted_with_the_answers(int times, string pattern, int needed) => Assert.Equal(
        needed,
        (Drill(pattern) with { Repetitions = times }).ToScore().WithAnswers().Sections[0].RoundsToFirstBeat);

    [Fact]
    public void Answers_to_answers_are_refused()
    {
        var score = Drill("ladder").ToScore().WithAnswers();
        Assert.Contains("has answers already", Assert.Throws<ArgumentException>(score.WithAnswers).Message, StringComparison.Ordinal);
    }

    private static Drill Drill(string pattern) => new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.FromMidi(60),
    };

    private static int Whole(Rational value)
    {
        Assert.True(value.IsInteger);
        return (int)value.Numerator;
    }
}

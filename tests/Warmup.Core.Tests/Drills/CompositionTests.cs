using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Notes of one's own in time. Sources: a drill's score, whose notes put in by hand give the same section; and small compositions worked out
/// by hand.
/// </summary>
[Properties(Arbitrary = [typeof(Arbitraries)], MaxTest = 200)]
public class CompositionTests
{
    private static ScaleTone S => default;
    private static readonly ScaleTone R = new(new Degree(2));
    private static readonly ScaleTone P = new(new Degree(5));

    private static Composition Of(params TimedLine[] lines) =>
        new() { Scale = Catalogue.Default.Read("mohanam"), Tonic = Tonic.Parse("G3"), Lines = lines.ToValueList() };

    [Property]
    public void A_drills_notes_put_in_by_hand_give_its_section(Sung sung)
    {
        var section = sung.Score.Sections[0];
        var breaths = section.Breaths.ToDictionary(b => b.AfterNote, b => b.Length);
        var lines = section.Lines.Select(line => new TimedLine(
            Enumerable.Range(line.FirstNote, line.NoteCount).Select(n => new TimedNote(section.PitchOf(section.Notes[n]).Tone, section.Notes[n].Onset - line.Onset, section.Notes[n].Length)
            {
                Syllable = section.Notes[n].Syllable,
                Breath = breaths.GetValueOrDefault(n),
                IsHeld = section.Notes[n].IsHeld,
            }).ToValueList(),
            line.Length));
        var score = new Composition
        {
            Scale = section.Scale, Tonic = section.Tonic, Lines = lines.ToValueList(), Tuning = section.Tuning, Meter = section.Meter, Tempo = section.Tempo,
            Delivery = section.Delivery, Speed = section.Speed, Title = section.Title,
        }.ToScore();
        WholeScore.Holds(score);
        var made = score.Sections[0];
        Assert.Equal((section.Title, section.TonicName, section.Pitches, section.Breaths), (made.Title, made.TonicName, made.Pitches, made.Breaths));
        Assert.Equal((section.Measures, section.Length, section.End), (made.Measures, made.Length, made.End));
        Assert.Equal(section.Lines, made.Lines);
        Assert.Equal(section.Notes.Select(Seen), made.Notes.Select(Seen));
        Assert.Equal(sung.Score.Drone, score.Drone);

        // By hand the grid is the coarsest that holds what is there.
        Assert.Equal(0, section.Resolution % made.Resolution);

        static (Rational, Rational, int, int, string, bool) Seen(ScoreNote n) => (n.Onset, n.Length, n.PitchIndex, n.LineIndex, n.Syllable, n.IsHeld);
    }

    [Fact]
    public void Lines_follow_each_other_and_silence_fills_the_last_avartana()
    {
        // S for 3/2, a breath of 1/2, R for 1, then silence to 4; P for 1/3 from 1/3 on.
        var score = Of(
            new TimedLine([new TimedNote(S, 0, new Rational(3, 2)) { Breath = new Rational(1, 2) }, new TimedNote(R, 2, 1) { Syllable = "la", IsHeld = true }], 4),
            new TimedLine([new TimedNote(P, new Rational(1, 3), new Rational(1, 3))])).ToScore();
        WholeScore.Holds(score);
        var section = score.Sections[0];
        Assert.Equal((6, 8, 1), (section.Resolution, section.Length, section.Measures.Count));
        Assert.Equal([(0, 9), (12, 6), (26, 2)], section.Notes.Select(n => (n.OnsetSteps, n.LengthSteps)));
        Assert.Equal(["S", "la", "P"], section.Notes.Select(n => n.Syllable));
        Assert.Equal([false, true, false], section.Notes.Select(n => n.IsHeld));
        Assert.Equal(new Breath(new Rational(3, 2), new Rational(1, 2), 0), Assert.Single(section.Breaths));
        Assert.Equal(new Rational(14, 3), section.End);
        Assert.Equal("Mohanam", section.Title);

        // 14/3 of 8 aksharas: 12 times give 56, seven avartanas.
        Assert.Equal(12, section.RoundsToFirstBeat);
        Assert.NotNull(score.Drone);
        Assert.Null((Of(new TimedLine([new TimedNote(S, 0, 1)])) with { HasDrone = false }).ToScore().Drone);
    }

    [Fact]
    public void What_cannot_be_a_line_is_refused_with_the_note()
    {
        Refused("at least 1 note, not 0", () => new TimedLine([]));
        Refused("note 2 of the line begins at 1/2", () => new TimedLine([new TimedNote(S, 0, 1), new TimedNote(R, new Rational(1, 2), 1)]));
        Refused("ends at 3/2", () => new TimedLine([new TimedNote(S, 0, 1) { Breath = new Rational(1, 2) }, new TimedNote(R, 1, 1)]));
        Refused("note 1 of the line is held", () => new TimedLine([new TimedNote(S, 0, 1) { IsHeld = true }, new TimedNote(R, 1, 1)]));
        Refused("must be between 2 and 4096, not 1", () => new TimedLine([new TimedNote(S, 1, 1)], 1));
        Refused("note 1 of the line is missing", () => new TimedLine([null!]));
    }

    [Fact]
    public void What_cannot_be_a_note_is_refused_with_its_value()
    {
        Refused("not -1", () => new TimedNote(S, -1, 1));
        Refused("above 0 and at most 4096, not 0", () => new TimedNote(S, 0, 0));
        Refused("above 0 and at most 4096, not -3", () => new TimedNote(S, 0, -3));
        Refused("not 4097", () => new TimedNote(S, 0, 4_097));
        Refused("denominator of at most 16383, not 16384", () => new TimedNote(S, 0, new Rational(1, 16_384)));
        Refused("must be between 0 and 4096, not -1", () => new TimedNote(S, 0, 1) { Breath = -1 });
        Refused("1 to 20 characters, not 0", () => new TimedNote(S, 0, 1) { Syllable = string.Empty });
        Refused("at most 20 characters long, not 21", () => new TimedNote(S, 0, 1) { Syllable = new string('a', 21) });
        Refused("U+0007", () => new TimedNote(S, 0, 1) { Syllable = "a\u0007" });
    }

    [Fact]
    public void What_cannot_be_a_composition_is_refused()
    {
        var line = new TimedLine([new TimedNote(S, 0, 1)]);
        Refused("between 1 and 100000 notes, not 0", () => Of());
        Refused("a line of the composition is missing", () => Of(line, null!));
        Refused("Tempo must be between 10 and 400, not 401", () => Of(line) with { Tempo = 401 });
        Refused("Title", () => Of(line) with { Title = "a\n" });
        Refused("Scale", () => Of(line) with { Scale = null! });
        var many = new TimedLine(Enumerable.Range(0, 4_000).Select(n => new TimedNote(S, n, 1)).ToValueList());
        Refused("not 104000", () => Of([.. Enumerable.Repeat(many, 26)]));
    }

    [Fact]
    public void A_grid_too_fine_a_score_too_long_and_a_note_out_of_MIDI_are_refused_with_what_would_help()
    {
        var fine = Of(new TimedLine([new TimedNote(S, 0, new Rational(1, 127)), new TimedNote(S, 1, new Rational(1, 131))]));
        var refused = Assert.Throws<PatternException>(() => fine.ToScore()).Finding;
        Assert.Contains("need 16637 parts of an akshara; the most is 16383", refused.Message, StringComparison.Ordinal);
        Assert.Equal(FindingCode.TimeRefused, refused.Code);

        // 40 lines of 4,096 aksharas in steps of 1/16,381 are more than 2^31 steps.
        var slow = new TimedLine([new TimedNote(S, 0, new Rational(1, 16_381))], 4_096);
        Assert.Contains("too long", Assert.Throws<PatternException>(() => Of([.. Enumerable.Repeat(slow, 40)]).ToScore()).Message, StringComparison.Ordinal);

        var high = Of(new TimedLine([new TimedNote(S, 0, 1)]), new TimedLine([new TimedNote(S.Raised(9), 0, 1)]));
        var outside = Assert.Throws<PatternException>(() => high.ToScore()).Finding;
        Assert.Equal((FindingCode.OutsideMidi, 2), (outside.Code, outside.Place!.Value.Line));
    }

    [Fact]
    public void Free_rhythm_has_a_bar_for_each_line()
    {
        var score = (Of(new TimedLine([new TimedNote(S, 0, new Rational(5, 2))]), new TimedLine([new TimedNote(R, 0, new Rational(4, 3))])) with { Meter = Meter.Free }).ToScore();
        WholeScore.Holds(score);
        Assert.Equal([new Rational(5, 2), new Rational(3, 2)], score.Sections[0].Measures.Select(m => m.Length)); // 5/2 + 4/3 is filled up to 4
        Assert.Null(score.Sections[0].RoundsToFirstBeat);
    }

    private static void Refused(string words, Func<object> make) => Assert.Contains(words, Assert.ThrowsAny<ArgumentException>(make).Message, StringComparison.Ordinal);
}

using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Sources: the rules' section on time (notes an akshara = gati x 2^(kalam - 1) / 4; continuous lines run on) and, for frequencies, the
/// table of svaras (just ratios: two reference libraries agree; equal: 2^(n / 12)).
/// </summary>
public class ScoreTests
{
    private static Drill Ladder(string scale, string tonic = "C4") => new()
    {
        Scale = Catalogue.Default.Read(scale),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse(tonic),
    };

    [Theory]
    [InlineData(1, 4, 1, 1)]
    [InlineData(2, 4, 1, 2)]
    [InlineData(3, 4, 1, 4)]
    [InlineData(4, 4, 1, 8)]
    [InlineData(1, 3, 4, 3)]
    [InlineData(2, 3, 2, 3)]
    [InlineData(3, 3, 1, 3)]
    [InlineData(4, 3, 1, 6)]
    [InlineData(3, 5, 1, 5)]
    [InlineData(3, 7, 1, 7)]
    [InlineData(3, 9, 1, 9)]
    [InlineData(1, 5, 4, 5)]
    [InlineData(2, 9, 2, 9)]
    public void A_unit_is_as_long_as_speed_and_gati_say(int kalam, int gati, int n, int d)
    {
        var speed = new Speed(kalam, gati);
        Assert.Equal(new Rational(n, d), speed.Unit);
        Assert.Equal(new Rational(d, n), speed.NotesPerAkshara);
        Assert.Equal((kalam, gati), (speed.Kalam, speed.Gati));

        var section = (Ladder("15") with { Speeds = [speed] }).ToScore().Sections.Single();
        Assert.Equal(Enumerable.Range(0, 35).Select(i => new Rational(n, d) * i), section.Notes.Select(x => x.Onset));
        Assert.All(section.Notes, x => Assert.Equal(new Rational(n, d), x.Length));
        Assert.Empty(section.Breaths);
    }

    [Theory]
    [InlineData(0, 4)]
    [InlineData(5, 4)]
    [InlineData(1, 6)]
    [InlineData(1, 0)]
    [InlineData(1, 8)]
    public void There_is_no_such_speed(int kalam, int gati) => Assert.Throws<ArgumentOutOfRangeException>(() => new Speed(kalam, gati));

    [Fact]
    public void The_ladder_of_a_parent_in_adi_fills_35_of_40_aksharas()
    {
        var score = Ladder("15").ToScore();
        var section = score.Sections.Single();
        Assert.Equal((35, 7, 5), (score.NoteCount, section.Lines.Count, section.Measures.Count));
        Assert.Equal((new Rational(40), new Rational(40)), (section.Length, score.Seconds)); // 60 aksharas a minute: one a second
        Assert.Equal([0, 2, 5, 9, 14, 20, 27], section.Lines.Select(l => (int)l.Onset.Floor()));
        Assert.Equal([2, 3, 4, 5, 6, 7, 8], section.Lines.Select(l => l.NoteCount));
        // Lines begin on first beats only at the start: 2, 5, 9, 14, 20 and 27 are no multiples of 8.
        Assert.Equal([true, false, false, false, false], section.Measures.Select(m => m.IsLineStart));
        Assert.Equal("S R S R G S R G M", string.Join(' ', section.Sung().Take(9)));
    }

    [Fact]
    public void The_defaults_are_adi_at_60_in_the_first_speed_equal_and_continuous()
    {
        var drill = Ladder("mohanam");
        Assert.Equal(
            (Meter.Adi, new Rational(60), Speed.First, Tuning.Equal, Delivery.Continuous, true),
            (drill.Meter, drill.Tempo.Start, drill.Speeds[0], drill.Tuning, drill.Delivery, drill.HasDrone));
        Assert.Equal(default, drill.Speeds[0]);
        Assert.Equal([4, 2, 2], Meter.Adi.Groups);
        Assert.Equal((8, 0, true), (Meter.Adi.Beats, Meter.Free.Beats, Meter.Free.IsFree));
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void The_seconds_are_the_aksharas_over_the_tempo(Sung sung)
    {
        var score = sung.Score;
        foreach (var section in score.Sections)
        {
            // Each tempo holds from its change to the next; a change falls on the nearest millionth of a second.
            (Rational Onset, Rational Tempo)[] tempi = [(0, section.Tempo), .. section.TempoChanges.Select(c => (c.Onset, c.Tempo))];
            var ends = tempi.Skip(1).Select(t => t.Onset).Append(section.Length);
            var seconds = tempi.Zip(ends, (t, end) => (end - t.Onset).ToDouble() * 60 / t.Tempo.ToDouble()).Sum();
            Assert.Equal(seconds, section.Seconds.ToDouble(), 1e-9 + (section.TempoChanges.Count * 5e-7));
            if (section.TempoChanges.IsEmpty)
            {
                Assert.Equal(section.Length * 60 / section.Tempo, section.Seconds);
                Assert.Equal(new Rational(60) / section.Tempo, section.SecondsAt(1));
            }
        }

        // Exact, or every section on the nearest millionth of a second.
        Assert.Equal(score.Sections.Sum(s => s.Seconds.ToDouble()), score.Seconds.ToDouble(), 1e-9 + (score.Sections.Count * 5e-7));
    }

    [Fact]
    public void A_note_of_a_section_with_more_pitches_has_none_here()
    {
        var shorter = Ladder("mohanam").ToScore().Sections[0];
        var longer = Ladder("mayamalavagowla").ToScore().Sections[0];
        Assert.True(longer.Pitches.Count > shorter.Pitches.Count);
        Assert.Throws<IndexOutOfRangeException>(() => shorter.PitchOf(longer.Notes[^1]));
        Assert.Throws<IndexOutOfRangeException>(() => shorter.SyllableOf(longer.Notes[^1]));
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void The_notes_are_the_lines_in_order_and_do_not_overlap(Drill drill)
    {
        if (!drill.TryToScore(out var score, out _))
        {
            return;
        }

        var lines = drill.Pattern.Expand(drill.Scale).Lines;
        var section = score!.Sections.Single();
        Assert.Equal(lines.Count, section.Lines.Count);
        Assert.Equal(lines.SelectMany(l => l.Notes).Select(n => n.Tone), section.Notes.Select(n => section.PitchOf(n).Tone));
        Assert.Equal(section.Pitches.Count, section.Pitches.Select(p => p.Tone).Distinct().Count());
        var end = Rational.Zero;
        var first = 0;
        for (var i = 0; i < lines.Count; i++)
        {
            var line = section.Lines[i];
            Assert.Equal((first, lines[i].Notes.Count), (line.FirstNote, line.NoteCount));
            Assert.Equal(line.Onset, section.Notes[first].Onset);
            for (var n = first; n < first + line.NoteCount; n++)
            {
                var note = section.Notes[n];
                Assert.True(note.Onset >= end && note.Length > 0);
                Assert.Equal(i, note.LineIndex);
                var isShortened = note.Length < lines[i].Notes[n - first].Length * drill.Speeds[0].Unit;
                Assert.Equal(drill.Delivery.IsLineByLine && n == first + line.NoteCount - 1 && !isShortened, note.IsHeld);
                Assert.NotEmpty(section.SyllableOf(note));
                Assert.Equal(new Rational(note.OnsetSteps, section.Resolution), note.Onset);
                Assert.Equal(new Rational(note.LengthSteps, section.Resolution), note.Length);
                Assert.Equal(note.OnsetSteps + note.LengthSteps, note.EndSteps);
                end = note.Onset + note.Length;
            }

            first += line.NoteCount;
            Assert.True(end <= line.Onset + line.Length);
            end = line.Onset + line.Length;
        }

        Assert.True(end <= section.Length);
        Assert.Equal(section.Notes.Count, first);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Continuous_lines_run_on_without_a_gap(Drill drill)
    {
        if (!(drill with { Delivery = Delivery.Continuous }).TryToScore(out var score, out _))
        {
            return;
        }

        // 4 / (gati x 2^(kalam - 1)), the rules' formula turned round.
        var unit = new Rational(4, drill.Speeds[0].Gati * (1L << (drill.Speeds[0].Kalam - 1)));
        var at = Rational.Zero;
        foreach (var (note, sung) in score!.Sections[0].Notes.Zip(drill.Pattern.Expand(drill.Scale).Lines.SelectMany(l => l.Notes)))
        {
            Assert.Equal((at, sung.Length * unit), (note.Onset, note.Length));
            at += note.Length;
        }
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void The_measures_tile_the_section_and_know_where_lines_begin(Sung sung)
    {
        var score = sung.Score;
        foreach (var section in score.Sections)
        {
            var begins = section.Lines.Select(l => l.Onset).ToHashSet();
            var at = Rational.Zero;
            foreach (var measure in section.Measures)
            {
                Assert.Equal(at, measure.Onset);
                Assert.True(measure.Length > 0);
                Assert.Equal(begins.Contains(measure.Onset), measure.IsLineStart);
                if (!section.Meter.IsFree)
                {
                    Assert.Equal(section.Meter.Beats, measure.Length);
                }

                at += measure.Length;
            }

            Assert.Equal(section.Length, at);
            var end = section.Lines[^1].Onset + section.Lines[^1].Length;
            Assert.True(section.Measures[^1].Onset < end, "an empty measure at the end");
        }
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Every_note_sounds_at_the_tonic_times_the_tables_ratio(Sung sung)
    {
        var score = sung.Score;
        foreach (var section in score.Sections)
        {
            foreach (var note in section.Notes)
            {
                var pitch = section.PitchOf(note);
                var octave = Math.DivRem(pitch.Tone.Semitones + 1200, 12, out var place) - 100;
                var ratio = section.Tuning == Tuning.Just ? Tables.JustRatio(place) * Math.Pow(2, octave) : Math.Pow(2, pitch.Tone.Semitones / 12.0);
                Assert.Equal(section.Tonic.Hz * ratio, pitch.Hz, pitch.Hz * 1e-12);
                Assert.Equal(1200 * Math.Log2(ratio), pitch.Cents, 1e-9);
                // What a bend has to add to the written key of a keyboard at A4 = 440 Hz.
                Assert.Equal(pitch.Hz, 440 * Math.Pow(2, (pitch.Midi - 69 + (pitch.OffsetCents / 100)) / 12), pitch.Hz * 1e-12);
            }
        }
    }

    [Theory]
    [InlineData("A3", 440, 220)]
    [InlineData("A3", 432, 216)]
    [InlineData("A3", 415, 207.5)]
    [InlineData("216Hz", 440, 216)]
    [InlineData("233.5Hz", 442, 233.5)]
    public void The_tonic_and_its_just_fifth_and_octave_sound_right(string tonic, double a4, double hz)
    {
        Assert.True(Tonic.TryParse(tonic, out var read, out _, a4));
        var section = (Ladder("mohanam") with { Tonic = read!, Tuning = Tuning.Just }).ToScore().Sections[0];
        double Sound(string tone) => section.Pitches.Single(p => p.Tone.ToString() == tone).Hz;
        Assert.Equal(hz, Sound("S"), 1e-9);
        Assert.Equal(hz * 9 / 8, Sound("R2"), 1e-9);
        Assert.Equal(hz * 5 / 4, Sound("G3"), 1e-9);
        Assert.Equal(hz * 3 / 2, Sound("P"), 1e-9);
        Assert.Equal(hz * 5 / 3, Sound("D2"), 1e-9);
        Assert.Equal(hz * 2, Sound("S'"), 1e-9);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Equal_drills_give_equal_scores(Drill drill)
    {
        var one = drill.TryToScore(out var a, out var refusalA);
        var other = (drill with { Scale = new Scale(drill.Scale.Name, drill.Scale.Ascent, drill.Scale.Descent), Pattern = Pattern.Parse(drill.Pattern.ToString()) })
            .TryToScore(out var b, out var refusalB);
        Assert.Equal(one, other);
        Assert.Equal(a, b);
        Assert.Equal(a?.GetHashCode(), b?.GetHashCode());
        Assert.Equal(refusalA, refusalB);
        Assert.Equal(one, refusalA is null);
    }

    [Fact]
    public void An_expansion_made_before_gives_the_same_score()
    {
        var drill = Ladder("bilahari");
        Assert.Equal(drill.ToScore(), drill.ToScore(drill.Pattern.Expand(drill.Scale)));
    }

    [Fact]
    public void Work_that_is_to_stop_stops()
    {
        using var stopped = new CancellationTokenSource();
        stopped.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Ladder("15").ToScore(stopped.Token));
        Assert.ThrowsAny<OperationCanceledException>(() => Pattern.Ladder.Repeat(2_000).Expand(Catalogue.Default.Read("15"), stopped.Token));
    }
}

using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>
/// Source: the promise of a remedy: applied, its finding is gone and no new one has come, for any of the singers and by any of the checks. The
/// numbers are counted by hand from the checks' own rules.
/// </summary>
[Properties(Arbitrary = [typeof(Arbitraries)])]
public class AdviseTests
{
    private static Singer Voice(string alias, string low, string high, int sustained, Experience experience) =>
        new(alias, Name(low), Name(high), sustained, experience);

    private static Singer Wide(int sustained, Experience experience) => Voice("Arun", "C1", "C8", sustained, experience);

    private static NoteName Name(string text)
    {
        Assert.True(NoteName.TryParse(text, out var name, out _));
        return name;
    }

    private static Drill Ladder(string scale) => new() { Scale = Catalogue.Default.Read(scale), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4") };

    private static double Height(ScorePitch pitch) => 6900 + (1200 * Math.Log2(pitch.Hz / 440));

    [Property(MaxTest = 60)]
    public void Every_remedy_clears_its_finding_and_brings_no_new_one_of_any_check(Drill drill, Singer one, Singer other, byte which)
    {
        if (!drill.TryToScore(out var score, out _) || score.NoteCount > 300)
        {
            return;
        }

        var checks = which % 3 == 0 ? ScoreChecks.Standard.With(TooLong) : ScoreChecks.Standard;
        ValueList<Singer> singers = which % 2 == 0 ? [one] : [one, new Singer("other", other.Low, other.High, other.SustainedSeconds, other.Experience)];
        var advice = drill.Advise(singers, checks);
        Assert.Equal(singers.SelectMany(s => score.Check(s, checks)), advice.Select(a => a.Finding));
        foreach (var (found, remedy) in advice.SelectMany(a => a.Remedies.Select(r => (a, r))))
        {
            Holds(drill, score, remedy, found, singers, checks);
        }

        foreach (var (found, remedy) in advice.SelectMany(a => a.Alone.Select(r => (a, r))))
        {
            Holds(drill, score, remedy, found, [found.Singer], checks);
        }
    }

    [Property(MaxTest = 100)]
    public void A_tonic_is_offered_where_one_fits_and_it_is_the_nearest(Drill drill, Singer singer)
    {
        if (!drill.TryToScore(out var score, out _) || score.NoteCount > 300)
        {
            return;
        }

        // Where the drill lies above the range only, or below it only, another tonic must bring all of it inside.
        var advice = drill.Advise([singer]).Where(a => a.Finding.Code is VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange).ToList();
        if (advice.Select(a => a.Finding.Code).Distinct().Count() != 1)
        {
            return;
        }

        var (lowest, highest) = (score.Sections[0].Pitches.Min(Height), score.Sections[0].Pitches.Max(Height));
        var (low, high) = (100.0 * singer.Low.Midi, 100.0 * singer.High.Midi);
        var fitting = Enumerable.Range(-24, 49)
            .Where(by => drill.Tonic.Midi + by >= Tonic.LowestMidi && drill.Tonic.Midi + by <= Tonic.HighestMidi)
            .Where(by => lowest + (100 * by) >= low - 50 && highest + (100 * by) <= high + 50)
            .Where(by => (drill with { Tonic = drill.Tonic.Transposed(by) }).TryToScore(out _, out _))
            .ToList();
        if (fitting.Exists(by => Math.Abs(lowest + (100 * by) - low + 50) < 0.1 || Math.Abs(highest + (100 * by) - high - 50) < 0.1))
        {
            return; // a frequency rounded to a thousandth of a hertz may fall on either side
        }

        var offered = advice.SelectMany(a => a.Remedies).OfType<OtherTonic>().Distinct().ToList();
        var isOfferedForAll = offered.Count == 1 && advice.TrueForAll(a => a.Remedies.Contains(offered[0]));
        Assert.Equal(fitting.Count > 0, isOfferedForAll);
        if (fitting.Count > 0)
        {
            // An octave counts half.
            var nearest = fitting.Min(by => by % 12 == 0 ? Math.Abs(by) / 2 : Math.Abs(by));
            Assert.Contains(offered[0].Tonic.Midi - drill.Tonic.Midi, fitting.Where(by => (by % 12 == 0 ? Math.Abs(by) / 2 : Math.Abs(by)) == nearest));
            Assert.Equal(offered[0].Tonic, Tonic.Parse(offered[0].Text));
        }
    }

    [Property(MaxTest = 30)]
    public void Where_there_is_room_for_a_tempo_and_none_is_offered_none_helps(Drill drill, Singer one, Singer other, byte first)
    {
        if (!drill.TryToScore(out var score, out _) || score.NoteCount > 200)
        {
            return;
        }

        // The tempi are tried on scores that are made for each of them.
        ValueList<Singer> singers = [one, new Singer("other", other.Low, other.High, other.SustainedSeconds, other.Experience)];
        var kinds = drill.Advise(singers).Where(a => a.Finding.Code is VoiceFindingCode.BreathTooLong or VoiceFindingCode.TooFast).GroupBy(a => (a.Singer, a.Finding.Code)).ToList();
        var was = Faults(score, singers, ScoreChecks.Standard);
        var lines = drill.Expand().Lines.Count;
        var worst = was.GroupBy(f => (f.Singer, f.Code, f.Line % lines)).ToDictionary(g => g.Key, g => g.Max(f => f.Amount));
        for (var tempo = Tempo.Slowest + (first % 7); tempo <= Tempo.Fastest; tempo += 7)
        {
            var after = Faults(new OtherTempo(tempo).ToScore(drill), singers, ScoreChecks.Standard);
            if (tempo == drill.Tempo.Start || after.Exists(f => !worst.TryGetValue((f.Singer, f.Code, f.Line % lines), out var most) || f.Amount > most + 1e-6))
            {
                continue;
            }

            foreach (var kind in kinds.Where(k => !after.Exists(f => (f.Singer, f.Code) == (k.Key.Singer.Alias, k.Key.Code))))
            {
                Assert.All(kind, a => Assert.True(a.Remedies.Count == 3 || a.Remedies.Any(r => r is OtherTempo), $"{drill}, {string.Join("; ", singers)}: {tempo} would clear {a}"));
            }
        }
    }

    [Fact]
    public void A_frequency_keeps_enough_digits_to_be_typed()
    {
        // The just third of a tonic 45 cents below C4 sounds at 6341.3; the voice ends at D4 (6200). One semitone down it is inside at
        // 6241.3, but the third of the key B3 itself is not: 6286.3.
        var drill = Ladder("major") with { Pattern = Pattern.Ladder.Take(2), Tonic = Tonic.FromHz(440 * Math.Pow(2, -9.45 / 12)), Tuning = Tuning.Just, Tempo = 200 };
        var singer = Voice("Mira", "A3", "D4", 30, Experience.Advanced);
        var remedy = drill.Advise([singer])[0].Remedies.OfType<OtherTonic>().Single();
        Assert.EndsWith("Hz", remedy.Text, StringComparison.Ordinal);
        Assert.True((drill with { Tonic = Tonic.Parse(remedy.Text) }).ToScore().Fits(singer));
        Assert.False((drill with { Tonic = Tonic.Parse("B3") }).ToScore().Fits(singer));
        Assert.StartsWith("a tonic 1 semitone lower: ", remedy.Describe(drill), StringComparison.Ordinal);
    }

    [Fact]
    public void The_tempo_offered_is_the_first_that_fits()
    {
        // 35 notes on 18 s: 35 x 60 / 18 = 116.7.
        var remedies = Ladder("15").Advise([Wide(30, Experience.Advanced)]).Single().Remedies;
        Assert.DoesNotContain(remedies, r => r is OtherTonic or TwoRemedies);
        var singer = Wide(30, Experience.Advanced);
        foreach (var (tempo, fits) in (ValueList<(int, bool)>)[(116, false), (117, true)])
        {
            Assert.Equal(fits, new OtherTempo(tempo).ToScore(Ladder("15")).Fits(singer));
        }

        // Free rhythm has no fill and no breath costs less than one third of the time here, so that the tempo is among the three.
        var one = Ladder("15") with { Pattern = Pattern.Parse("[S S S S S S S S S S]"), Meter = Meter.Free };
        Assert.Contains(new OtherTempo(100), one.Advise([Wide(10, Experience.Advanced)]).Single().Remedies); // 10 x 60 / 6 = 100: exactly 6 s
    }

    [Fact]
    public void A_tempo_that_the_throat_forbids_is_not_offered()
    {
        // 35 notes on 0.4 x 21 = 8.4 s need 250 a minute; a beginner's 3 notes a second end at 180.
        var drill = Ladder("15");
        var singer = Wide(21, Experience.Beginner);
        Assert.Contains(new OtherTempo(250).ToScore(drill).Check(singer), f => f.Code == VoiceFindingCode.TooFast);
        var advice = Assert.Single(drill.Advise([singer]));
        Assert.NotEmpty(advice.Remedies);
        Assert.DoesNotContain(advice.Remedies, r => r is OtherTempo);
    }

    [Fact]
    public void A_held_note_is_let_go_earlier()
    {
        // One line in Adi at 60: held to 7 s of 8, and 6 s are the most: a breath of 2 s instead of 1.
        var drill = Ladder("15") with { Delivery = Delivery.LineByLine, Pattern = Pattern.Ladder.Take(1) };
        var advice = Assert.Single(drill.Advise([Wide(15, Experience.Beginner)]));
        Assert.Equal(new LongerBreath(2), advice.Remedies[0]);
        Assert.Equal("the held last note let go earlier, for a breath of 2 s after each line", advice.Remedies[0].ToString());
    }

    [Fact]
    public void A_remedy_for_one_singer_harms_no_other()
    {
        // C4 to C5: Wren ends a tone too low, and Badger, who begins on C4, cannot go down with her.
        var drill = Ladder("major") with { Tempo = 200 };
        var (wren, badger) = (Voice("Wren", "G3", "Bb4", 40, Experience.Advanced), Voice("Badger", "C4", "E5", 40, Experience.Advanced));
        var alone = drill.Advise([wren]);
        Assert.All(alone, a => Assert.Contains(new OtherTonic(Tonic.Parse("Bb3")), a.Remedies));
        var together = drill.Advise([wren, badger]);
        Assert.Equal(alone.Select(a => a.Finding), together.Select(a => a.Finding));
        Assert.All(together, a => Assert.DoesNotContain(a.Remedies, r => r is OtherTonic));

        // The sixth and the seventh line are the only ones above Bb4.
        Assert.All(together, a => Assert.Contains(new FewerLines([1, 2, 3, 4, 5]), a.Remedies));
        var line = drill with { Pattern = Pattern.Parse("[S R G M P D N S']") };
        var one = line.Advise([wren, badger]).Single(a => a.Finding.Singer == "Wren");
        Assert.Empty(one.Remedies);
        Assert.Contains(new OtherTonic(Tonic.Parse("Bb3")), one.Alone);
        Assert.EndsWith("for Wren alone", one.Otherwise, StringComparison.Ordinal);
        Assert.Contains("for Wren alone: a tonic 2 semitones lower: Bb3", one.Describe(line), StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_of_your_own_is_honoured()
    {
        // Without it the tempo of 100 helps (see above); a teacher who forbids more than 90 is not told it.
        var drill = Ladder("15") with { Pattern = Pattern.Parse("[S S S S S S S S S S]"), Meter = Meter.Free };
        var singer = Wide(10, Experience.Advanced);
        var advice = drill.Advise([singer], ScoreChecks.Standard.With(Hasty)).Single();
        Assert.DoesNotContain(advice.Remedies, r => r is OtherTempo);
        foreach (var remedy in advice.Remedies)
        {
            Assert.True(remedy.ToScore(drill).Fits(singer, ScoreChecks.Standard.With(Hasty)));
        }

        // Its own findings are advised on as well, by any change.
        var slow = Assert.Single((drill with { Tempo = 120 }).Advise([singer], ScoreChecks.Standard.Without(ScoreChecks.Breath).With(Hasty)));
        Assert.Contains(new OtherTempo(90), slow.Remedies);

        static IEnumerable<Finding> Hasty(Score score, Singer singer)
        {
            if (score.Sections[0].Tempo > 90)
            {
                yield return new Finding("studio.hasty", Severity.Error, "faster than 90") { Singer = singer.Alias };
            }
        }
    }

    [Fact]
    public void Where_nothing_helps_it_is_said_what_would_have_to_give()
    {
        // An octave for a voice of a fifth: no tonic, and the one line there is cannot be left out.
        var drill = Ladder("major") with { Pattern = Pattern.Parse("[S S']"), Meter = Meter.Free };
        var advice = drill.Advise([Voice("Robin", "C4", "G4", 30, Experience.Advanced)]).Single();
        Assert.Empty(advice.Remedies);
        Assert.Equal("no tonic fits, since the drill spans 12 semitones and the range 7: a narrower pattern would be needed", advice.Otherwise);
    }

    private static Drill LongLadder => Ladder("15") with { Pattern = Pattern.Ladder.Repeat(100), Tempo = 60 };

    private static ValueList<Singer> Larks => Enumerable.Range(1, 20).Select(i => Voice($"Lark {i}", "C4", "G4", 12, Experience.Beginner)).ToValueList();

    [Fact]
    [Trait("Run", "whole")]
    public void Long_work_is_bounded() =>
        Assert.All(LongLadder.Advise(Larks).Where(a => a.Remedies.IsEmpty), a => Assert.NotEmpty(a.Otherwise));

    [Fact]
    public void Long_work_can_be_stopped_and_where_nothing_is_wrong_there_is_no_work()
    {
        var (drill, singers) = (LongLadder, Larks);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => drill.Advise(singers, cancellationToken: stop.Token));
        Assert.Empty((Ladder("mohanam") with { Tempo = 120 }).Advise([Wide(60, Experience.Advanced)]));
        Assert.Empty(drill.Advise([]));
    }

    [Fact]
    public void Planned_breaths_are_no_remedy_where_they_are_planned_already()
    {
        var drill = Ladder("15") with { Tempo = 60 };
        var singer = Wide(20, Experience.Beginner);
        Assert.Contains(drill.Advise([singer]).Single().Remedies, r => r is PlannedBreaths);
        Assert.Empty(drill.Advise([singer], planned: BreathNeed.Of(singer)));
    }

    private static IEnumerable<Finding> TooLong(Score score, Singer singer)
    {
        if (score.Seconds > 30)
        {
            yield return new Finding("studio.long", Severity.Warning, "longer than half a minute") { Singer = singer.Alias, Measured = score.Seconds.ToDouble(), Limit = 30, Unit = "s" };
        }
    }

    private static void Holds(Drill drill, Score before, Remedy remedy, Advice found, ValueList<Singer> singers, ScoreChecks checks)
    {
        var what = $"{drill}, {string.Join("; ", singers)}: {found}; {remedy}";
        var (was, lines) = (Faults(before, singers, checks), drill.Expand().Lines.Count);
        var after = Faults(remedy.ToScore(drill), singers, checks);
        var kept = remedy switch { FewerLines f => f.Lines, TwoRemedies { First: FewerLines f } => f.Lines, TwoRemedies { Second: FewerLines f } => f.Lines, _ => default };
        var count = kept.IsEmpty ? remedy.Apply(drill).Expand().Lines.Count : kept.Count;
        var faulty = was.ToLookup(f => (f.Singer, f.Code, f.Line < 0 ? -1 : f.Line % lines), f => f.Amount);
        foreach (var (singer, code, line, amount) in after)
        {
            var place = (singer, code, line < 0 ? -1 : kept.IsEmpty ? line % count : kept[line % count] - 1);
            Assert.True(faulty.Contains(place) && amount <= faulty[place].Max() + 1e-6, $"{what}: {place} is new or worse");
            Assert.False(place == (found.Finding.Singer, found.Finding.Code, found.Finding.Place is { } at ? (at.Line - 1) % lines : -1), $"{what}: it is still there");
        }
    }

    private static List<(string? Singer, string Code, int Line, double Amount)> Faults(Score score, ValueList<Singer> singers, ScoreChecks checks) =>
        [.. singers.SelectMany(s => score.Check(s, checks)).Select(f => (f.Singer, f.Code, (f.Place?.Line ?? 0) - 1, Math.Abs((f.Measured ?? 0) - (f.Limit ?? 0))))];
}

using System.Text.Json;

namespace Warmup.Takes.Tests;

/// <summary>Whole takes made by rule, of which everything is known: the quick part of the corpus.</summary>
public class ListenerTests
{
    [Theory]
    [InlineData("clean")]
    [InlineData("singer's errors")]
    [InlineData("drone -20 dB")]
    public void Notes_of_made_takes_are_found_with_their_pitch_and_time(string condition)
    {
        var score = new TakeScore();
        foreach (var plan in Corpus.Plans(condition, 3, 3).Where(p => p.Voice < 3))
        {
            var take = TakeMaker.Make(plan);
            score.Add(take, Hear(take));
        }

        Assert.True(score.Right >= 0.97 * score.Notes, score.Row(condition) + string.Join('\n', score.Said));
        score.Cents.Sort();
        Assert.InRange(score.Cents[score.Cents.Count / 2], 0, 2.5);
        Assert.Equal((0, 0), (score.FalseOther, score.OctavesWrong));
    }

    [Fact]
    public void The_same_take_gives_the_same_bytes()
    {
        var take = TakeMaker.Make(Corpus.Plans("clean", 3, 1).First());
        Assert.Equal(TakeJson.Write(Hear(take)), TakeJson.Write(Hear(take)));
    }

    [Fact]
    public void The_JSON_has_the_fields_that_are_fixed()
    {
        var take = TakeMaker.Make(Corpus.Plans("singer's errors", 3, 1).First());
        using var json = JsonDocument.Parse(TakeJson.Write(Hear(take)));
        var root = json.RootElement;
        Assert.Equal("urn:warmup:take:1", root.GetProperty("schema").GetString());
        Assert.True(root.GetProperty("isDrill").GetBoolean());
        Assert.All((string[])["offsetCents", "octave", "driftCents", "seconds"], m => Assert.Equal(JsonValueKind.Number, root.GetProperty(m).ValueKind));
        Assert.All((string[])["notes", "lines", "breaths"], m => Assert.Equal(JsonValueKind.Array, root.GetProperty(m).ValueKind));
        var sung = root.GetProperty("notes").EnumerateArray().First(n => n.GetProperty("status").GetString() == "sung");
        Assert.All((string[])["index", "line", "round", "onset", "end", "cents", "spread", "late"], m => Assert.Equal(JsonValueKind.Number, sung.GetProperty(m).ValueKind));
        var other = root.GetProperty("notes").EnumerateArray().First(n => n.GetProperty("status").GetString() == "other-note");
        Assert.Equal(JsonValueKind.String, other.GetProperty("sung").ValueKind);
    }

    /// <summary>Long notes 40 cents off and faults in every line: what a note is off counts once, not as often as it has frames.</summary>
    [Fact]
    public void A_few_notes_with_faults_and_long_notes_that_are_off_are_heard_in_their_lines()
    {
        var plan = Corpus.Plans("clean", 3, 1).First() with
        {
            Voice = 0,
            VibratoCents = 0,
            Score = new Drill
            {
                Scale = Catalogue.Default.Find("mayamalavagowla")!.Scale,
                Pattern = Pattern.Parse("S R G / R G M / G M P / M P D / P D N / D N S'"),
                Tonic = Tonic.Parse("C3"),
                Tempo = 100,
                Delivery = Delivery.LineByLine,
            }.ToScore(),
        };
        var drill = new DrillNotes(plan.Score);
        var tones = new List<SungTone>();
        var time = 0.8;

        // R is left out in the first line, the second notes of the next two lines are others, and the last notes are long.
        foreach (var (index, off) in ((int Index, double Off)[])[(0, 0), (2, -20), (3, -6), (4, 217), (5, -13), (6, 20), (7, -143), (8, 41)])
        {
            var end = time + drill.Notes[index].Seconds;
            tones.Add(new SungTone { Index = index, Cents = drill.Notes[index].Cents + off, IsOther = Math.Abs(off) > 100, Onset = time, End = end, Touches = !drill.Notes[index].IsLast });
            time = end + (drill.Notes[index].IsLast ? 0.6 : 0);
        }

        var take = new MadeTake(plan, VoiceMaker.Sing(plan, tones, new Random(4)), VoiceMaker.Rate, tones, [1], [new MadeEvent(TakeEventKind.EarlyStop, 2)], 0);
        var score = new TakeScore();
        score.Add(take, Hear(take));
        Assert.Equal((8, 0, 1), (score.Right, score.NotTheDrill, score.EventsFound));
    }

    [Theory]
    [InlineData("silence")]
    [InlineData("noise")]
    [InlineData("drone")]
    [InlineData("another drill")]
    public void What_is_not_the_drill_is_not_judged(string what)
    {
        var plan = Corpus.Plans("clean", 3, 1).First();
        var random = new Random(5);
        float[] sound = what switch
        {
            "silence" => new float[240_000],
            "noise" => [.. Enumerable.Range(0, 240_000).Select(_ => (float)(0.05 * TakeMaker.Gauss(random)))],
            "drone" => VoiceMaker.DroneAlone(plan, 12, random),
            _ => TakeMaker.Make(Corpus.Plans("clean", 4, 4).First(p => p.Score.Title != plan.Score.Title)).Samples,
        };
        var report = Listener.Hear(plan.Score, SoundSource.FromSamples(sound, VoiceMaker.Rate), TestContext.Current.CancellationToken);
        Assert.False(report.IsDrill);
        Assert.NotEmpty(report.Reason!);
        Assert.Empty(report.Notes);
    }

    /// <summary>A room that rings for 1.2 s fills the pauses: breaths of a quarter of a second and more are told by how the level falls.</summary>
    [Fact]
    public void Breaths_are_found_where_the_room_rings_on()
    {
        var score = new TakeScore();
        foreach (var plan in Corpus.Plans("room 1.2 s", 1, 3).Where(p => p.Voice < 3))
        {
            var take = TakeMaker.Make(plan);
            score.Add(take, Hear(take));
        }

        Assert.True(score.Breaths > 4);
        Assert.True(score.BreathsFound >= 0.75 * score.Breaths, score.Row("room 1.2 s"));
        Assert.Equal(0, score.BreathsInside);
    }

    /// <summary>Sentences that a program speaks, low and high; they glide, hold no pitch, and have their own pauses.</summary>
    [Theory]
    [InlineData("en", "Good evening everybody. Please stand up straight, let your shoulders fall, and breathe out before you breathe in. We shall begin with the low notes.")]
    [InlineData("en+f3", "The rehearsal begins at seven o'clock on Thursday, and there will be tea in the break. Who can bring some cups? I think that we need about twenty of them.")]
    public void Speech_is_not_the_drill(string voice, string text)
    {
        Assert.SkipUnless(SpeechVoice.IsThere, "espeak-ng is not installed");
        var folder = Directory.CreateTempSubdirectory("warmup-speech-");
        try
        {
            var path = Path.Combine(folder.FullName, "speech.wav");
            using (var process = System.Diagnostics.Process.Start("espeak-ng", ["-v", voice, "-w", path, text]))
            {
                process.WaitForExit();
                Assert.Equal(0, process.ExitCode);
            }

            foreach (var plan in Corpus.Plans("clean", 4, 4))
            {
                using var sound = SoundFile.Open(path);
                var report = Listener.Hear(plan.Score, sound, TestContext.Current.CancellationToken);
                Assert.True(report.Seconds > 5);
                Assert.False(report.IsDrill, plan.Score.Title);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>
    /// Of drills of which one begins with the other, both are recognised, and the report says what differs: where the take stops, or what was sung
    /// besides. Much more than the drill is not the drill.
    /// </summary>
    [Theory]
    [InlineData(3, 6, true, "early-stop", "Only 3 of the 6 lines were heard")]
    [InlineData(6, 5, true, "", "something was sung that is not in the drill")]
    [InlineData(6, 2, false, "", "")]
    public void A_drill_that_begins_with_another_one(int sungLines, int drillLines, bool isDrill, string lastEvent, string doubt)
    {
        string[] lines = ["S R", "S R G", "S R G P", "S R G P D", "S R G P D S'", "S' D P G R S"];
        Score ScoreOf(int count) => new Drill
        {
            Scale = Catalogue.Default.Find("mohanam")!.Scale,
            Pattern = Pattern.Parse(string.Join(" / ", lines[..count])),
            Tonic = Tonic.Parse("C3"),
            Tempo = 80,
            Delivery = Delivery.LineByLine,
        }.ToScore();

        var plan = Corpus.Plans("clean", 3, 1).First() with { Voice = 0, OffsetCents = 12, Score = ScoreOf(sungLines) };
        var take = TakeMaker.Make(plan);
        var report = Listener.Hear(ScoreOf(drillLines), SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken);
        Assert.Equal(isDrill, report.IsDrill);
        Assert.Equal(lastEvent, report.Events.Select(e => TakeJson.Word(e.Kind)).LastOrDefault() ?? string.Empty);
        Assert.Contains(doubt, string.Join(' ', report.Doubts), StringComparison.Ordinal);
        Assert.DoesNotContain(report.Notes, n => sungLines > drillLines && n.Status != NoteStatus.Sung);
    }

    /// <summary>Six notes, two of them wrong, and no more: the four that are right show the drill, and do not show another.</summary>
    [Theory]
    [InlineData("S R / S G / S P / S D / S S'", true)]
    [InlineData("S' P / D R' / G D / R S' / P G'", false)]
    public void A_few_notes_with_faults_are_told_from_another_drill(string held, bool isDrill)
    {
        Score ScoreOf(string lines) => new Drill
        {
            Scale = Catalogue.Default.Find("mohanam")!.Scale, Pattern = Pattern.Parse(lines), Tonic = Tonic.Parse("C3"), Tempo = 90, Delivery = Delivery.LineByLine,
        }.ToScore();

        var plan = Corpus.Plans("clean", 3, 1).First() with { Voice = 0, VibratoCents = 0, OffsetCents = 0, Score = ScoreOf("S R / S G / S P / S D / S S'") };
        var drill = new DrillNotes(plan.Score);
        var (tones, time) = (new List<SungTone>(), 0.8);
        foreach (var (index, off) in ((int Index, double Off)[])[(0, 0), (1, 204), (2, 10), (3, 15), (4, -150), (5, -8)])
        {
            var note = drill.Notes[index];
            tones.Add(new SungTone { Index = index, Cents = note.Cents + off, IsOther = Math.Abs(off) > 100, Onset = time, End = time + note.Seconds, Touches = !note.IsLast });
            time += note.Seconds + (note.IsLast ? 0.5 : 0);
        }

        var sound = SoundSource.FromSamples(VoiceMaker.Sing(plan, tones, new Random(4)), VoiceMaker.Rate);
        Assert.Equal(isDrill, Listener.Hear(ScoreOf(held), sound, TestContext.Current.CancellationToken).IsDrill);
    }

    /// <summary>The drill's last line sung once more: a repeat of it, and nothing is left out or ends early.</summary>
    [Theory]
    [InlineData("S R / S G / S P / S D / S S'", 5)]
    [InlineData("S R G P / R G P D / G P D S'", 3)]
    public void The_last_line_sung_again_is_told_as_its_repeat(string lines, int last)
    {
        var plan = Plan("mohanam", lines);
        var drill = new DrillNotes(plan.Score);
        var line = drill.Lines[^1];
        var sung = drill.Notes.Select(n => n.Index).Concat(Enumerable.Range(line.First, line.Count)).Select(i => (i, Off: (i * 7 % 5) - 2.0, 1.0));
        var take = Sung(plan, [.. sung], [new MadeEvent(TakeEventKind.Repeat, last - 1)]);
        var report = Hear(take);
        Assert.Equal([(TakeEventKind.Repeat, last)], report.Events.Select(e => (e.Kind, e.Line)));
        Assert.Equal(take.Tones.Select(t => (t.Index, NoteStatus.Sung)), report.Notes.Select(n => (n.Index, n.Status)));
        Assert.Equal(2, report.Lines[^1].Times);
    }

    /// <summary>A long note that is another one, and lies a quarter of a semitone beside the pitches that are tried, stays in its line.</summary>
    [Theory]
    [InlineData(-225)]
    [InlineData(-275)]
    public void A_long_note_that_is_another_one_is_heard_in_its_place(double off)
    {
        var plan = Plan("mohanam", "ladder.ends");
        Assert.True(new DrillNotes(plan.Score).Notes[7].Seconds > 2);
        var take = Sung(plan, [(0, 3, 1), (1, -9, 1), (2, 8, 1), (3, 12, 1), (4, -2, 1), (5, 6, 1), (6, 0, 1), (7, off, 1), (8, 11, 1), (9, -7, 1)], []);
        Assert.Equal(take.Tones.Select(t => (t.Index, t.IsOther ? NoteStatus.OtherNote : NoteStatus.Sung)), Hear(take).Notes.Select(n => (n.Index, n.Status)));
    }

    /// <summary>A tone that is held too long is not divided so that its second half stands for the note that was left out after it.</summary>
    [Fact]
    public void A_tone_is_not_divided_for_a_note_that_was_left_out()
    {
        var plan = Plan("mayamalavagowla", "S R G / R G M / G M P / M P D");
        var take = Sung(plan, [(0, 22, 1.5), (2, 3, 1), (3, -6, 1), (4, 5, 1), (5, 9, 1), (6, -4, 1), (7, 0, 1), (8, -11, 1), (9, 2, 1), (10, 8, 1), (11, 3, 1)], []);
        Assert.Equal([1], Hear(take).Notes.Where(n => n.Status != NoteStatus.Sung).Select(n => n.Status == NoteStatus.LeftOut ? n.Index : -1));
    }

    /// <summary>
    /// R is left out and G is sung about half a semitone beside R: another note from a singer who is never far off, and R from one who often is that far off.
    /// </summary>
    [Theory]
    [InlineData(0.2, 1)]
    [InlineData(1, 2)]
    public void What_lies_between_two_notes_is_told_by_how_steadily_the_others_are_sung(double far, int leftOut)
    {
        double[] offs = [28, -34, 0, 25, 5, 35, -28, 38, -30, -26, 32, -36, 27, -6, 30, -33, 36, -29];
        var notes = Enumerable.Range(0, offs.Length).Where(i => i != 1).Select(i => (i, i == 2 ? -145 : far * offs[i], 1.0));
        var take = Sung(Plan("mohanam", "S R G P / S R G P D / S R G P / S R G P D"), [.. notes], []);
        var report = Hear(take);
        Assert.Equal([leftOut], report.Notes.Where(n => n.Status == NoteStatus.LeftOut).Select(n => n.Index));
    }

    /// <summary>A line that begins with its second note lacks its first; nothing of the next tone, and no silence, stands for it.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(8)]
    public void A_line_s_first_note_can_be_left_out(int first)
    {
        var notes = Enumerable.Range(0, 12).Where(i => i != first).Select(i => (i, (i * 7 % 5) - 2.0, 1.0));
        var report = Hear(Sung(Plan("mohanam", "S R G P / R G P D / S R G P"), [.. notes], []));
        Assert.Equal([first], report.Notes.Where(n => n.Status != NoteStatus.Sung).Select(n => n.Index));
        Assert.Equal(NoteStatus.LeftOut, report.Notes.Single(n => n.Index == first).Status);
    }

    /// <summary>A singer slips in a line's second note, stops, breathes and begins the line anew: what was sung before the breath is no silence.</summary>
    [Fact]
    public void A_line_begun_with_a_slip_is_a_false_start()
    {
        (int, double, double)[] notes = [(0, 3, 1), (1, -2, 1), (2, 1, 1), (3, 0, 0.5), (4, -200, 0.5), (3, 2, 1), (4, -3, 1), (5, 1, 1), (6, 0, 1), (7, 2, 1), (8, -1, 1)];
        var report = Hear(Sung(Plan("kalyani", "S R G / R G M / G M P"), notes, [], pauseBefore: 5));
        Assert.Equal([(TakeEventKind.FalseStart, 2)], report.Events.Select(e => (e.Kind, e.Line)));
    }

    /// <summary>A line is sung without its last note and the next one follows: nothing was begun again.</summary>
    [Fact]
    public void A_line_without_its_last_note_is_no_false_start()
    {
        var notes = Enumerable.Range(0, 9).Where(i => i != 2).Select(i => (i, (i * 7 % 5) - 2.0, 1.0));
        var report = Hear(Sung(Plan("mohanam", "S R G / R G P / G P D"), [.. notes], [], pauseBefore: 2));
        Assert.Empty(report.Events);
        Assert.Equal([2], report.Notes.Where(n => n.Status == NoteStatus.LeftOut).Select(n => n.Index));
    }

    /// <summary>A note is sung for its own time and that of the next, and nothing parts the two: the next one was left out, and no other sung for it.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(10)]
    public void A_note_held_over_the_place_of_the_next_leaves_that_out(int leftOut)
    {
        var notes = Enumerable.Range(0, 12).Where(i => i != leftOut).Select(i => (i, (i * 7 % 5) - 2.0, i + 1 == leftOut ? 2.0 : 1.0));
        var report = Hear(Sung(Plan("mohanam", "S R G P / R G P D / S R G P"), [.. notes], []));
        Assert.Equal([(leftOut, NoteStatus.LeftOut)], report.Notes.Where(n => n.Status != NoteStatus.Sung).Select(n => (n.Index, n.Status)));
    }

    /// <summary>A wide vibrato moves the pitch as far as a semitone does: the step is where the middle of it changes.</summary>
    [Theory]
    [InlineData(70)]
    [InlineData(100)]
    public void Semitones_with_a_wide_vibrato_begin_where_they_are_sung(double vibrato)
    {
        var plan = Plan("mayamalavagowla", "S R S R S R / G M G M G M") with { VibratoCents = vibrato };
        var take = Sung(plan, [.. Enumerable.Range(0, 12).Select(i => (i, 0.0, 1.0))], []);
        NearOnsets(take, Hear(take));
    }

    /// <summary>Lips that trill stop the voice twenty times in a second; where a slurred note begins, its pitch tells.</summary>
    [Fact]
    public void Slurred_notes_of_a_lip_trill_begin_where_their_pitch_does()
    {
        var take = Sung(Plan("mohanam", "S R G P / R G P D / G P D S'"), [.. Enumerable.Range(0, 12).Select(i => (i, 0.0, 1.0))], []);
        for (var i = 0; i < take.Samples.Length; i++)
        {
            take.Samples[i] *= (float)Math.Pow(0.5 + (0.5 * Math.Cos(2 * Math.PI * 22 * i / take.Rate)), 2);
        }

        NearOnsets(take, Hear(take));
    }

    /// <summary>A voice that sings on for seconds and breathes once, silently or so that it is heard, is alone: its soft notes are no drone.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.01)]
    public void A_voice_that_hardly_breathes_has_nothing_beside_it(double noise)
    {
        var take = Sung(Plan("mohanam", "S R G P D S' D P G R S R / S R G P D S' D P G R S R"), [.. Enumerable.Range(0, 24).Select(i => (i, 0.0, 1.0))], []);
        var (random, breath) = (new Random(4), (From: take.Tones[11].End, To: take.Tones[12].Onset));
        for (var i = (int)(breath.From * take.Rate); i < (int)(breath.To * take.Rate); i++)
        {
            take.Samples[i] += (float)(noise * TakeMaker.Gauss(random));
        }

        Assert.False(Voicing.Of(PitchTracker.Track(SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken)).HasGround);
    }

    /// <summary>The drift is that of the line through all notes, from a singer too whose notes lie far from it.</summary>
    [Fact]
    public void The_drift_of_an_uneven_singer_is_that_of_all_notes()
    {
        double[] offs = [-58, 52, -20, 10, 54, -54, 30, -30, 0, 45, -50, 58];
        var take = Sung(Plan("mohanam", "S R G P / R G P D / G P D S'"), [.. offs.Select((o, i) => (i, o + i, 1.0))], []);
        var (_, slope) = MathNet.Numerics.Fit.Line([.. take.Tones.Select(t => t.Onset)], [.. offs.Select((o, i) => o + i)]);
        Assert.Equal(slope * (take.Tones[^1].Onset - take.Tones[0].Onset), Hear(take).DriftCents, 5.0);
    }

    /// <summary>A line of doubled notes that is begun, broken off and begun anew, without a dip between them: the lengths tell that two notes were sung each time.</summary>
    [Fact]
    public void A_false_start_in_doubled_notes_is_told_by_their_lengths()
    {
        var take = Sung(Plan("mayamalavagowla", "S S R R / R R G G / G G M M / M M P P"),
            [.. new[] { 0, 1, 2, 3, 4, 5, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15 }.Select((n, i) => (n, (i * 7 % 5) - 2.0, 1.0))], [], pauseBefore: 6);
        Assert.Equal([(TakeEventKind.FalseStart, 2)], Hear(take).Events.Select(e => (e.Kind, e.Line)));
    }

    private static TakePlan Plan(string scale, string lines) => Corpus.Plans("clean", 3, 1).First() with
    {
        Voice = 0,
        VibratoCents = 0,
        OffsetCents = 0,
        Score = new Drill { Scale = Catalogue.Default.Find(scale)!.Scale, Pattern = Pattern.Parse(lines), Tonic = Tonic.Parse("C3"), Tempo = 90, Delivery = Delivery.LineByLine }.ToScore(),
    };

    /// <summary>Notes sung one after the other, each so many cents off and so many times as long as in the drill, with a pause after each line and before one of them, where a line is broken off.</summary>
    private static MadeTake Sung(TakePlan plan, (int Index, double Off, double Long)[] notes, List<MadeEvent> events, int pauseBefore = -1)
    {
        var drill = new DrillNotes(plan.Score);
        var (tones, time) = (new List<SungTone>(), 0.8);
        for (var n = 0; n < notes.Length; n++)
        {
            var (index, off, times) = notes[n];
            var note = drill.Notes[index];
            var end = time + (times * note.Seconds);
            var isEnd = note.IsLast || n + 1 == pauseBefore;
            tones.Add(new SungTone { Index = index, Cents = note.Cents + off, IsOther = Math.Abs(off) > 100, Onset = time, End = end, Touches = !isEnd });
            time = end + (isEnd ? 0.5 : 0);
        }

        return new MadeTake(plan, VoiceMaker.Sing(plan, tones, new Random(4)), VoiceMaker.Rate, tones, [], events, 0);
    }

    /// <summary>Whether all notes were heard, each within 50 ms of where it was sung.</summary>
    private static void NearOnsets(MadeTake take, TakeReport report)
    {
        Assert.Equal(take.Tones.Select(t => t.Index), report.Notes.Where(n => n.Status == NoteStatus.Sung).Select(n => n.Index));
        Assert.All(take.Tones.Zip(report.Notes), x => Assert.Equal(x.First.Onset, x.Second.Onset!.Value, 0.05));
    }

    private static TakeReport Hear(MadeTake take) => Listener.Hear(take.Plan.Score, SoundSource.FromSamples(take.Samples, take.Rate), TestContext.Current.CancellationToken);
}

using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.MusicXml.Tests;

/// <summary>
/// The parts beside the voice. Sources: the W3C's list of sounds of MusicXML 4.0 for the identifiers, General MIDI 1 for the programs, the
/// drone of the score for its pitches.
/// </summary>
public class PartTests
{
    private static readonly Score Plain = (Drills.Of(tonic: "G3") with { Delivery = Delivery.LineByLine }).ToScore();
    private static readonly MusicXmlOptions Class = new() { SecondVoiceSemitones = -12, HasDrone = true, Beat = MusicXmlBeat.Strokes };

    [Fact]
    public void A_class_has_high_and_low_voices_a_drone_and_a_beat_in_this_order()
    {
        var read = ReadScore.Of(Plain, Class);
        Assert.Equal(["High voices", "Low voices", "Drone", "Beat"], read.All("part-name").Select(n => n.Value));
        Assert.All(read.All("part-name"), n => Assert.Null(n.Attribute("print-object")));
        Assert.Equal(["High", "Low", "Dr.", "Beat"], read.All("part-abbreviation").Select(n => n.Value));
        Assert.Equal(["voice.vocals", "voice.vocals", "pluck.tambura", "wood.wood-block"], read.All("instrument-sound").Select(s => s.Value));
        Assert.Equal(["1", "2", "3", "10"], read.All("midi-channel").Select(c => c.Value));
        Assert.Equal(["53", "53", "21"], read.All("midi-program").Select(p => p.Value)); // choir aahs; reed organ for what is held
        Assert.Equal(["P1", "P2", "P3", "P4"], read.All("part").Select(p => (string?)p.Attribute("id")));
    }

    [Fact]
    public void A_lone_voice_is_not_named_on_the_page() =>
        Assert.Equal("no", (string?)Assert.Single(ReadScore.Of(Plain).All("part-name")).Attribute("print-object"));

    [Theory]
    [InlineData(-12, 2, "C3", "-1")]
    [InlineData(12, 1, "C5", null)]
    [InlineData(-24, 2, "C2", "bass")]
    public void A_second_voice_an_octave_away_keeps_letters_and_syllables_and_has_its_own_clef(int semitones, int part, string first, string? clef)
    {
        var score = Drills.Of(Drills.Kanakangi, tonic: "C4").ToScore();
        var bytes = ReadScore.Bytes(score, new() { SecondVoiceSemitones = semitones });
        var other = ReadScore.Of(bytes, part);
        var octaves = semitones / 12;
        Assert.Equal(
            ReadScore.Of(bytes, 3 - part).Sung().Select(n => n with { Pitch = (n.Pitch.Step, n.Pitch.Alter, n.Pitch.Octave + octaves) }),
            other.Sung());
        Assert.Equal(first, $"{other.Sung()[0].Pitch.Step}{other.Sung()[0].Pitch.Octave}");
        var shown = other.Measures[0].Element.Descendants("clef").Single();
        Assert.Equal(clef, shown.Element("sign")!.Value == "F" ? "bass" : shown.Element("clef-octave-change")?.Value);
    }

    [Fact]
    public void A_second_voice_on_another_tonic_has_its_own_key_and_spelling()
    {
        // A fourth below C major lies G major: one sharp.
        var score = Drills.Of(tonic: "C4").ToScore();
        var low = ReadScore.Of(score, new() { SecondVoiceSemitones = -5 }, part: 2);
        Assert.Equal(1, (int)low.Measures[0].Element.Descendants("fifths").Single());
        Assert.Equal("G A B C D E F# G", string.Join(' ', low.Sung().TakeLast(8).Select(n => n.Pitch.Step + (n.Pitch.Alter == 1 ? "#" : string.Empty))));
        Assert.Empty(low.Measures.SelectMany(m => m.Element.Descendants("accidental")));
        Assert.Equal(0, (int)ReadScore.Of(score, new() { SecondVoiceSemitones = -5 }).Measures[0].Element.Descendants("fifths").Single());
    }

    [Theory]
    [InlineData("C1", -12, "0 to 127")]
    [InlineData("C7", 7, "C1 (24) to C7 (96)")]
    [InlineData("C1", -24, "0 to 127")]
    public void A_second_voice_outside_the_range_is_refused_before_the_first_byte(string tonic, int semitones, string range)
    {
        // Four steps below the low tonic leave MIDI's notes an octave lower.
        var score = Drills.Of(pattern: "figure(1 -10).take(1)", tonic: tonic).ToScore();
        using var stream = new MemoryStream();
        var refused = Assert.Throws<ExportException>(() => new MusicXmlFormat(new() { SecondVoiceSemitones = semitones }).Write(score, stream));
        Assert.Contains(range, refused.Message, StringComparison.Ordinal);
        Assert.Equal(0, stream.Length);
    }

    [Theory]
    [InlineData("C2", -12, "")] // C1, the lowest tonic
    [InlineData("C2", -13, "the second voice's tonic would be MIDI note 23; it must lie from C1 (24) to C7 (96)")]
    [InlineData("B6", 1, "")]
    [InlineData("B6", 2, "the second voice's tonic would be MIDI note 97; it must lie from C1 (24) to C7 (96)")]
    public void A_second_voices_tonic_lies_from_C1_to_C7(string tonic, int semitones, string refusal)
    {
        var score = Drills.Of(pattern: "[S]", tonic: tonic).ToScore();
        var options = new MusicXmlOptions { SecondVoiceSemitones = semitones };
        Assert.Equal(refusal, refusal.Length == 0 ? (ReadScore.Bytes(score, options).Length > 0 ? string.Empty : "nothing") : Assert.Throws<ExportException>(() => ReadScore.Bytes(score, options)).Message);
    }

    [Theory]
    [InlineData("G3", "F", null)] // G2 D3 G3, their mean MIDI note is 49.3
    [InlineData("C4", "G", "-1")] // C3 G3 C4: 54.3
    [InlineData("A4", "G", null)] // A3 E4 A4: 63.3
    [InlineData("Ab3", "G", "-1")] // Ab2 Eb3 Ab3: 50.3
    [InlineData("F4", "G", "-1")] // F3 C4 F4: 59.3
    [InlineData("F#4", "G", null)] // 60.3
    public void The_drones_clef_follows_the_mean_of_its_notes(string tonic, string sign, string? change)
    {
        var clef = ReadScore.Of(Drills.Of(tonic: tonic).ToScore(), new() { HasDrone = true }, part: 2).Measures[0].Element.Descendants("clef").Single();
        Assert.Equal((sign, change), (clef.Element("sign")!.Value, clef.Element("clef-octave-change")?.Value));
    }

    [Theory]
    [InlineData("7/8", "begin continue continue continue continue continue end")]
    [InlineData("2+2+3/8", "begin end begin end begin continue end")]
    [InlineData("3+2/16", "begin+begin continue+continue end+end begin+begin end+end")]
    [InlineData("1/8", ".")]
    [InlineData("4/4", ". . . .")]
    [InlineData("6/8", ". .")] // dotted quarters have no flags
    [InlineData("adi", ". . . . . . . .")]
    public void Strokes_with_flags_are_beamed_within_their_group(string meter, string beams)
    {
        var score = (Drills.Of(pattern: "run") with { Meter = Meter.Parse(meter) }).ToScore();
        var read = ReadScore.Of(score, new() { Beat = MusicXmlBeat.Strokes }, part: 2);
        Assert.All(read.Measures, m => Assert.Equal(beams, string.Join(' ', m.Notes.Select(n => n.Beams.Length == 0 ? "." : string.Join('+', n.Beams)))));
        Checks.BeamsAreWhole(ReadScore.Of(score));
    }

    [Fact]
    public void The_beat_has_one_line_a_percussion_clef_and_its_meter_anew_where_it_changes()
    {
        var score = Drills.Join([Drills.Of(), Drills.Of(), Drills.Of() with { Meter = Meter.Parse("7/8") }, Drills.Of() with { Meter = Meter.Free, Delivery = Delivery.LineByLine }]);
        var part = ReadScore.Of(score, new() { Beat = MusicXmlBeat.Strokes }).All("part").Last();
        var sections = score.Sections.ConvertAll(s => s.Measures.Count);
        int[] begins = [0, sections[0], sections[0] + sections[1], sections[0] + sections[1] + sections[2]];
        var times = part.Elements("measure").Index().Where(m => m.Item.Descendants("time").Any()).Select(m => (m.Index, m.Item.Descendants("beats").Single().Value)).ToList();

        // Adi goes on in the second section; each line of the free one, two to eight notes, its last held, with a breath, is longer than the one before.
        Assert.Equal([(0, "8"), (begins[2], "7"), .. Enumerable.Range(0, 7).Select(i => (begins[3] + i, $"{i + 3}"))], times);
        Assert.Equal("percussion", Assert.Single(part.Descendants("clef")).Element("sign")!.Value);
        Assert.Equal("1", Assert.Single(part.Descendants("staff-lines")).Value);
        Assert.Single(part.Descendants("divisions"));
        Assert.Single(part.Descendants("key"));

        // The double line before the second section stands in its first measure too, which has dashed lines inside.
        var left = part.Elements("measure").ElementAt(begins[1]).Elements("barline").First(b => (string?)b.Attribute("location") == "left");
        Assert.Equal("light-light", left.Element("bar-style")!.Value);
        Assert.Equal(["77", "10"], ReadScore.Of(score, new() { Beat = MusicXmlBeat.Strokes }).All("midi-instrument").Last().Elements().Select(e => e.Value).Order().Reverse());
    }

    [Fact]
    public void A_second_voice_farther_than_two_octaves_is_refused() =>
        Assert.Contains("between -24 and 24, not 25", Assert.Throws<ArgumentOutOfRangeException>(() => new MusicXmlOptions { SecondVoiceSemitones = 25 }).Message, StringComparison.Ordinal);

    [Fact]
    public void The_drone_is_the_strings_pitches_held_from_the_beginning_of_a_section_to_its_end()
    {
        // A tanpura on G3: low P = D3, S = G3, low S = G2 (the drone of the score), lowest first.
        var drone = ReadScore.Of(Plain, Class, part: 3);
        Checks.MeasuresAreFull(drone);
        Checks.ValuesAgree(drone);
        var chords = drone.Notes.GroupBy(n => n.Onset).ToList();
        Assert.All(chords, c => Assert.Equal(["G2", "D3", "G3"], c.Select(n => $"{n.Pitch!.Value.Step}{n.Pitch.Value.Octave}")));
        Assert.All(chords, c => Assert.Equal([false, true, true], c.Select(n => n.IsInChord)));
        Assert.All(chords.SkipLast(1), c => Assert.All(c, n => Assert.True(n.TieStart)));
        Assert.All(chords.Skip(1), c => Assert.All(c, n => Assert.True(n.TieStop)));
        Assert.All(chords[^1], n => Assert.False(n.TieStart));
        Assert.All(chords[0], n => Assert.False(n.TieStop));
        Assert.Equal("F", drone.Measures[0].Element.Descendants("sign").Single().Value);
        Assert.DoesNotContain(drone.Notes, n => n.Lyric is not null);
    }

    [Fact]
    public void The_drone_is_struck_again_where_a_section_begins()
    {
        var score = Samples.All["three sections"] with { Drone = Plain.Drone };
        var drone = ReadScore.Of(score, new() { HasDrone = true }, part: 2);
        var first = score.Sections.ConvertAll(s => s.Measures.Count);
        var begins = new[] { 0, first[0], first[0] + first[1] };
        Assert.Equal(begins, drone.Measures.Index().Where(m => !m.Item.Notes[0].TieStop).Select(m => m.Index));
    }

    [Fact]
    public void A_score_without_a_drone_has_no_part_for_it() =>
        Assert.Single(ReadScore.Of((Drills.Of() with { HasDrone = false }).ToScore(), new() { HasDrone = true }).All("part"));

    [Fact]
    public void Tempo_line_numbers_and_systems_stand_in_the_first_part_alone()
    {
        var parts = ReadScore.Of(Plain, Class with { Dynamics = MusicXmlDynamics.Piano }).All("part").ToList();
        Assert.Equal([1, 0, 0, 0], parts.Select(p => p.Descendants("metronome").Count()));
        Assert.Equal([6, 0, 0, 0], parts.Select(p => p.Descendants().Count(ReadScore.IsLineNumber)));
        Assert.Equal([6, 0, 0, 0], parts.Select(p => p.Descendants("print").Count()));
        Assert.Equal([1, 1, 0, 0], parts.Select(p => p.Descendants("dynamics").Count()));
    }

    /// <summary>In every part every measure is full, all parts have as many, and the voices sing the same some semitones apart.</summary>
    [Property(MaxTest = 40)]
    public Property Parts_are_full_and_the_second_voice_sings_the_first_transposed() => Prop.ForAll(
        Drills.Scores.ToArbitrary(),
        Gen.Choose(-6, 12).Where(n => n != 0).ToArbitrary(), // the generated tonics begin at MIDI note 30, and C1 is 24
        (score, semitones) =>
        {
            var bytes = ReadScore.Bytes(score with { Drone = Plain.Drone }, new() { SecondVoiceSemitones = semitones, HasDrone = true });
            var parts = Enumerable.Range(1, 3).Select(p => ReadScore.Of(bytes, p)).ToList();
            foreach (var part in parts)
            {
                Assert.Equal(parts[0].Measures.Count, part.Measures.Count);
                Checks.MeasuresAreFull(part);
                Checks.ValuesAgree(part);
            }

            Checks.ReadsBack(score, parts[semitones > 0 ? 1 : 0]);
            foreach (var voice in parts.Take(2))
            {
                Checks.AccidentalsSayThePitch(voice);
                Checks.BeamsAreWhole(voice);
            }

            var (high, low) = (parts[0].Sung(), parts[1].Sung());
            Assert.Equal(high.Select(n => Midi(n) - Math.Abs(semitones)), low.Select(Midi));
            Assert.Equal(high.Select(n => (n.Onset, n.Length, n.Lyric, n.BreathAfter)), low.Select(n => (n.Onset, n.Length, n.Lyric, n.BreathAfter)));
        });

    private static int Midi(SungNote note) =>
        (12 * (note.Pitch.Octave + 1)) + "C D EF G A B".IndexOf(note.Pitch.Step, StringComparison.Ordinal) + (int)note.Pitch.Alter;
}

namespace Warmup.MusicXml.Tests;

/// <summary>
/// Keys, accidentals and microtones. Sources: the order of sharps and flats and the rule that an accidental holds for its letter and octave
/// to the bar line (common practice); the W3C's MusicXML 4.0 documentation for the elements.
/// </summary>
public class PitchTests
{
    [Theory]
    [InlineData(Drills.Major, "C4", 0, "major")]
    [InlineData(Drills.Major, "Eb4", -3, "major")]
    [InlineData(Drills.Major, "F#4", 6, "major")]
    [InlineData("S R2 G2 M1 P D2 N2 S'", "D4", 0, "dorian")]
    [InlineData("S R2 G2 M1 P D1 N2 S'", "F4", -4, "minor")]
    [InlineData("S R2 G3 M2 P D2 N3 S'", "F4", 0, "lydian")]
    [InlineData("1 b2 b3 4 b5 b6 b7 1'", "B3", 0, "locrian")]
    [InlineData("S R2 G3 M1 P D2 N2 S'", "G4", 0, "mixolydian")]
    [InlineData("S R1 G2 M1 P D1 N2 S'", "E4", 0, "phrygian")]
    [InlineData("S R1 G2 M1 P D1 N2 S'", "F4", -5, "phrygian")]
    [InlineData(Drills.Major, "Cb4", -7, "major")]
    [InlineData(Drills.Major, "C#4", 7, "major")]
    public void A_church_mode_has_its_traditional_signature(string scale, string tonic, int fifths, string mode)
    {
        var key = Assert.Single(ReadScore.Of(Drills.Of(scale, tonic: tonic).ToScore()).All("key"));
        Assert.Equal((fifths, mode), ((int)key.Element("fifths")!, key.Element("mode")?.Value));
    }

    [Theory]
    [InlineData(Drills.Kanakangi, "F#3")]
    [InlineData("S R2 G3 P D2 S'", "D4")]
    public void Another_scale_has_no_signature_and_accidentals_at_the_notes(string scale, string tonic)
    {
        var read = ReadScore.Of(Drills.Of(scale, tonic: tonic).ToScore());
        var key = Assert.Single(read.All("key"));
        Assert.Equal(0, (int)key.Element("fifths")!);
        Assert.Null(key.Element("mode"));
        Assert.NotEmpty(read.All("accidental"));
        Checks.AccidentalsSayThePitch(read);
    }

    [Fact]
    public void On_request_a_traditional_scale_has_accidentals_instead()
    {
        var read = ReadScore.Of(Drills.Of(tonic: "D4").ToScore(), new() { Key = MusicXmlKey.Accidentals });
        Assert.Equal(0, (int)Assert.Single(read.All("fifths")));
        Checks.AccidentalsSayThePitch(read);
    }

    [Fact]
    public void A_non_traditional_signature_is_written_on_request_only_and_then_names_each_altered_letter()
    {
        // S R1 G3 M1 P D1 N3 on C: C Db E F G Ab B.
        var score = Drills.Of("S R1 G3 M1 P D1 N3 S'").ToScore();
        Assert.Empty(ReadScore.Of(score).All("key-step"));
        var read = ReadScore.Of(score, new() { Key = MusicXmlKey.NonTraditional });
        Assert.Equal(["D", "A"], read.All("key-step").Select(e => e.Value));
        Assert.Equal(["-1", "-1"], read.All("key-alter").Select(e => e.Value));
        Assert.Empty(read.All("accidental"));
    }

    [Fact]
    public void A_non_traditional_signature_without_altered_letters_is_the_empty_traditional_one()
    {
        var key = Assert.Single(ReadScore.Of(Drills.Of("S R2 G3 P D2 S'").ToScore(), new() { Key = MusicXmlKey.NonTraditional }).All("key"));
        Assert.Equal(0, (int)key.Element("fifths")!);
    }

    [Fact]
    public void Each_degree_keeps_its_letter()
    {
        // R1 G1 and D1 N1 lie a semitone apart and still take neighbouring letters: on F sharp, G and A double flat or their like.
        var letters = ReadScore.Of(Drills.Of(Drills.Kanakangi, tonic: "F#3").ToScore()).Sung().TakeLast(8).Select(n => n.Pitch.Step);
        Assert.Equal(["F", "G", "A", "B", "C", "D", "E", "F"], letters);
    }

    [Theory]
    [InlineData("S N2_ S N2_", "- flat - -")]
    [InlineData("S N2_ N3_ N2_", "- flat natural flat")]
    [InlineData("S S S S S S S N2_ N2_", "- - - - - - - flat flat")] // the ninth note stands behind the bar line
    [InlineData("N2_ N3", "flat (natural)")]
    [InlineData("N2_ N2", "flat flat")]
    [InlineData("N2_ N3 N3", "flat (natural) -")]
    [InlineData("N3_ N3", "- -")]
    [InlineData("N2_ S S S S S S S N3", "flat - - - - - - - -")]
    [InlineData("R1 R3 R2", "flat sharp natural")]
    [InlineData("G1 G2", "flat-flat flat")]
    public void Accidentals_and_courtesy_accidentals_in_C(string tones, string expected)
    {
        var notes = tones.Split(' ').Select(t => ScaleTone.TryParse(t, out var tone, out _) ? new LineNote(tone, ScaleDirection.Ascent, Approach.Leap, 1) : throw new InvalidDataException(t));
        var score = Drills.Of(tonic: "C4").ToScore(new Expansion([new Line(notes.ToValueList())], []));
        var read = ReadScore.Of(score, new() { Key = MusicXmlKey.Accidentals });
        var shown = read.Notes.Where(n => !n.IsRest).Select(n => n.Element.Element("accidental") is not { } a ? "-"
            : (string?)a.Attribute("cautionary") == "yes" ? $"({a.Value})" : a.Value);
        Assert.Equal(expected, string.Join(' ', shown));
    }

    [Fact]
    public void A_tie_over_the_bar_line_needs_no_accidental_but_the_next_note_does()
    {
        // Seven notes, then an F sharp of two aksharas over the bar line, then an F sharp.
        LineNote Note(string text, int length) => new(ScaleTone.TryParse(text, out var tone, out _) ? tone : default, ScaleDirection.Ascent, Approach.Leap, length);
        var line = new Line([.. Enumerable.Repeat(Note("S", 1), 7), Note("M2", 2), Note("M2", 1)]);
        var read = ReadScore.Of(Drills.Of().ToScore(new Expansion([line], [])));
        Assert.Equal(["sharp"], read.Measures[0].Notes.Select(n => n.Accidental).OfType<string>());
        Assert.Equal([null, "sharp"], read.Measures[1].Notes.Take(2).Select(n => n.Accidental));
    }

    [Fact]
    public void A_microtone_on_request_is_a_decimal_alteration_with_the_nearest_named_accidental()
    {
        // Just N3 is 15/8 = 1088.269 cents, 11.731 below the equal B (computed); just G3 is 5/4 = 386.314 cents, 13.686 below E.
        var score = (Drills.Of() with { Tuning = Tuning.Just }).ToScore();
        Assert.All(ReadScore.Of(score).Sung(), n => Assert.Equal(0, n.Pitch.Alter));
        var notes = ReadScore.Of(score, new() { HasMicrotones = true }).Sung().TakeLast(8).ToArray();
        Assert.Equal(-0.1173m, notes[6].Pitch.Alter);
        Assert.Equal(-0.1369m, notes[2].Pitch.Alter);
        Assert.Equal(0m, notes[0].Pitch.Alter);
        var flat = ReadScore.Of((Drills.Of("S R1 G3 M1 P D1 N3 S'") with { Tuning = Tuning.Just }).ToScore(), new() { HasMicrotones = true });
        // Just R1 is 16/15 = 111.731 cents.
        Assert.Contains(flat.Notes, n => n.Pitch == ("D", -0.8827m, 4) && n.Accidental == "flat");
    }
}

using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Sources: general music theory (key signatures of the major scales), the spelling rule of the trade that each degree keeps its letter,
/// and the rules' order of choice (least sum of alterations, then fewest doubles, then flats), written here a second time.
/// </summary>
public class SpellingTests
{
    private const string Letters = "CDEFGAB";
    private const string White = "C.D.EF.G.A.B";

    public static TheoryData<int> Numbers => [.. Enumerable.Range(1, 72)];

    private static string Names(string scale, string tonic)
    {
        var read = Catalogue.Default.Read(scale);
        var name = Spelling.ChooseTonic(Tonic.Parse(tonic), read, out _);
        return string.Join(' ', read.Ascent.SkipLast(1).Select(t => Spelling.Name(t, name).PitchClass()));
    }

    /// <summary>The accidental a pitch needs on a letter, -6 to 5 semitones.</summary>
    private static int Accidental(int letter, int pitch)
    {
        var natural = White.IndexOf(Letters[letter % 7], StringComparison.Ordinal);
        return ((((pitch - natural) % 12) + 18) % 12) - 6;
    }

    /// <summary>The pitch class names allowed for a tonic, best first by the rules' order.</summary>
    private static List<(int Letter, int Alteration, int Sum, int Doubles)> Ranked(int midi, Scale scale) =>
    [
        .. from letter in Enumerable.Range(0, 7)
           let alteration = Accidental(letter, midi)
           let needed = scale.Degrees.Select(d => Math.Abs(Accidental(letter + d.Letter - 1, midi + d.Semitones))).ToList()
           where Math.Abs(alteration) <= 2 && needed.Max() <= 2
           let sum = needed.Sum()
           let doubles = needed.Count(a => a == 2)
           orderby sum, doubles, Math.Max(0, alteration)
           select (letter, alteration, sum, doubles),
    ];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Every_parent_on_every_tonic_has_one_letter_a_degree_and_no_triples(int number)
    {
        var scale = Catalogue.Default.Parent(number).Scale;
        for (var midi = 48; midi < 60; midi++)
        {
            var tonic = Spelling.ChooseTonic(Tonic.FromMidi(midi), scale, out var respelled);
            Assert.False(respelled);
            Assert.Equal(midi, tonic.Midi);
            var names = scale.Ascent.Select(t => Spelling.Name(t, tonic)).ToList();
            Assert.All(names, n => Assert.InRange(n.Alteration, -2, 2));
            Assert.Equal(Enumerable.Range(0, 8).Select(i => (tonic.LetterIndex + i) % 7), names.Select(n => n.LetterIndex));
            Assert.Equal(scale.Ascent.Select(t => midi + t.Semitones), names.Select(n => n.Midi));

            var best = Ranked(midi, scale)[0];
            var chosen = Ranked(midi, scale).Single(r => r.Letter == tonic.LetterIndex);
            Assert.Equal((best.Sum, best.Doubles, Math.Max(0, best.Alteration)), (chosen.Sum, chosen.Doubles, Math.Max(0, chosen.Alteration)));
        }
    }

    [Theory] // the circle of fifths, general music theory
    [InlineData("major", "A3", "A B C# D E F# G#")]
    [InlineData("major", "F3", "F G A Bb C D E")]
    [InlineData("major", "C4", "C D E F G A B")]
    [InlineData("major", "D4", "D E F# G A B C#")]
    [InlineData("major", "Eb4", "Eb F G Ab Bb C D")]
    [InlineData("major", "F#3", "F# G# A# B C# D# E#")]
    [InlineData("major", "Gb3", "Gb Ab Bb Cb Db Eb F")]
    [InlineData("natural minor", "A3", "A B C D E F G")]
    [InlineData("natural minor", "C4", "C D Eb F G Ab Bb")]
    [InlineData("harmonic minor", "G#3", "G# A# B C# D# E F##")]
    [InlineData("lydian", "F3", "F G A B C D E")]
    [InlineData("1", "C4", "C Db Ebb F G Ab Bbb")] // Kanakangi: R1 G1 and D1 N1 on one letter each
    [InlineData("15", "C4", "C Db E F G Ab B")]
    [InlineData("36", "C4", "C D# E F G A# B")]
    [InlineData("mohanam", "D4", "D E F# A B")]
    [InlineData("hindolam", "C4", "C Eb F Ab Bb")]
    public void Known_scales_are_written_as_musicians_write_them(string scale, string tonic, string names) => Assert.Equal(names, Names(scale, tonic));

    [Theory] // the fewer accidentals; F sharp and G flat have six each, then flats
    [InlineData(49, "Db")]
    [InlineData(51, "Eb")]
    [InlineData(54, "Gb")]
    [InlineData(56, "Ab")]
    [InlineData(58, "Bb")]
    [InlineData(59, "B")]
    public void A_black_key_is_named_as_its_major_scale_needs(int midi, string name) =>
        Assert.Equal(name, Spelling.ChooseTonic(Tonic.FromMidi(midi), Catalogue.Default.Read("major"), out _).PitchClass());

    [Fact]
    public void Every_typed_name_is_kept_unless_it_needs_a_triple()
    {
        var replaced = 0;
        for (var number = 1; number <= 72; number++)
        {
            var scale = Catalogue.Default.Parent(number).Scale;
            foreach (var letter in Letters)
            {
                for (var alteration = -2; alteration <= 2; alteration++)
                {
                    var typed = new NoteName(letter, alteration, 3);
                    var chosen = Spelling.ChooseTonic(Tonic.FromNote(typed), scale, out var respelled);
                    var needed = scale.Degrees.Max(d => Math.Abs(Accidental(typed.LetterIndex + d.Letter - 1, typed.Midi + d.Semitones)));
                    Assert.Equal(needed > 2, respelled);
                    Assert.Equal(typed.Midi, chosen.Midi);
                    replaced += respelled ? 1 : 0;
                    if (!respelled)
                    {
                        Assert.Equal(typed, chosen);
                    }
                    else
                    {
                        Assert.All(scale.Degrees, d => Assert.InRange(Spelling.Name(new ScaleTone(d), chosen).Alteration, -2, 2));
                    }
                }
            }
        }

        Assert.True(replaced > 100, "too few triples met");
    }

    [Theory]
    [InlineData("1", "Fb4", true)] // F flat + G1 would be A with three flats
    [InlineData("36", "B#3", true)] // B sharp + R3 would be C with four sharps
    [InlineData("1", "C#4", false)]
    [InlineData("major", "Fb4", false)] // B double flat, but no triple
    public void A_respelled_tonic_is_said_in_a_finding(string scale, string tonic, bool expected)
    {
        var score = new Drill { Scale = Catalogue.Default.Read(scale), Pattern = Pattern.Ladder, Tonic = Tonic.Parse(tonic) }.ToScore();
        var finding = score.Findings.SingleOrDefault(f => f.Code == FindingCode.TonicRespelled);
        Assert.Equal(expected, finding is not null);
        if (expected)
        {
            Assert.Contains(tonic[..^1], finding!.ToString(), StringComparison.Ordinal);
            Assert.NotEqual(Severity.Error, finding!.Severity);
            Assert.Contains(score.Sections[0].TonicName.PitchClass(), finding.ToString(), StringComparison.Ordinal);
        }
        else
        {
            Assert.Equal(tonic, score.Sections[0].TonicName.ToString());
        }
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void The_written_name_sounds_as_the_tone_in_every_score(Sung sung)
    {
        var score = sung.Score;
        foreach (var section in score.Sections)
        {
            Assert.Equal(section.Tonic.Midi, section.TonicName.Midi);
            foreach (var pitch in section.Pitches)
            {
                Assert.Equal(section.Tonic.Midi + pitch.Tone.Semitones, pitch.Name.Midi);
                Assert.Equal((section.TonicName.LetterIndex + pitch.Tone.Degree.Letter - 1) % 7, pitch.Name.LetterIndex);
                Assert.InRange(pitch.Name.Alteration, -2, 2);
                Assert.Equal(pitch.Name.Midi, pitch.Midi);
            }
        }
    }
}

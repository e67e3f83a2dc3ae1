using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>What notes are sung on: held against the syllables of their tones and the texts of their lines.</summary>
public class SungTextsTests
{
    private static Drill Drill => new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder.Take(2), Tonic = Tonic.Parse("G3") };

    private static Section Of(string pattern, Syllables? syllables = null) =>
        (Drill with { Pattern = Pattern.Parse(pattern), Syllables = syllables ?? Syllables.SvaraLetters }).ToScore().Sections[0];

    [Fact]
    public void Plain_notes_take_the_syllable_at_the_index_of_their_pitch()
    {
        var section = Of("ladder.take(2)");
        Assert.Equal(["S", "R", "G"], section.SungSyllables);
        Assert.All(section.Notes, n => Assert.Equal(n.PitchIndex, n.SyllableIndex));
    }

    [Fact]
    public void Texts_of_the_pattern_come_after_the_pitches_and_what_no_note_takes_is_empty()
    {
        var section = Of("ladder.take(2).sung(a e)");
        Assert.Equal(["", "", "", "a", "e"], section.SungSyllables);
        Assert.Equal("a e a e a", string.Join(' ', section.Notes.Select(section.SyllableOf)));

        var both = Of("ladder.take(1) + ladder.take(1).sung(ma)");
        Assert.Equal(["S", "R", "ma"], both.SungSyllables);
        Assert.Equal("S R ma ma", string.Join(' ', both.Notes.Select(both.SyllableOf)));
    }

    [Fact]
    public void Scores_that_are_sung_alike_are_equal_whatever_syllables_no_note_takes()
    {
        var (letters, solfa) = (Of("ladder.sung(a)"), Of("ladder.sung(a)", Syllables.Solfa));
        Assert.Equal(letters.SungSyllables, solfa.SungSyllables);
        Assert.Equal(letters.Notes, solfa.Notes);
        Assert.NotEqual(Of("ladder").SungSyllables, Of("ladder", Syllables.Solfa).SungSyllables);
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 200)]
    public void Each_note_is_sung_on_its_own_text_or_on_the_syllable_of_its_tone(Drill drill)
    {
        if (!drill.TryToScore(out var score, out _))
        {
            return;
        }

        var section = score.Sections[0];
        var lines = drill.Expand().Lines;
        for (var l = 0; l < section.Lines.Count; l++)
        {
            var line = lines[l % lines.Count];
            for (var n = 0; n < line.Notes.Count; n++)
            {
                var tone = line.Notes[n].Tone;
                var syllable = section.HasSeveralOf(tone.Degree) ? drill.Syllables.SyllableWithVariant(tone) : drill.Syllables.SyllableOf(tone);
                Assert.Equal(line.Notes[n].Sung ?? syllable, section.SyllableOf(section.Notes[section.Lines[l].FirstNote + n]));
            }
        }
    }
}

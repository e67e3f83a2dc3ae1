namespace Warmup.Tests;

/// <summary>What holds for every score, however it was made: the documented words of Score, Section and their parts.</summary>
internal static class WholeScore
{
    public static void Holds(Score score)
    {
        Assert.NotEmpty(score.Sections);
        foreach (var section in score.Sections)
        {
            Assert.True(section.Resolution >= 1 && section.Lines.Count >= 1 && section.Notes.Count >= 1 && section.Pitches.Count >= 1);
            Assert.True(section.Tempo >= Tempo.Slowest && section.Tempo <= Tempo.Fastest);
            Lines(section);
            Notes(section);
            Breaths(section);
            Measures(section);
            Assert.True(section.Seconds > 0);
            Assert.InRange(section.ToString().Length, 1, 200);
        }

        Assert.InRange(score.ToString().Length, 1, 200);
        Assert.DoesNotContain(score.ToString(), char.IsControl);
    }

    private static void Lines(Section section)
    {
        var (at, note) = (section.Lines[0].Onset, 0);
        foreach (var line in section.Lines)
        {
            Assert.Equal((at, note), (line.Onset, line.FirstNote));
            Assert.True(line.NoteCount >= 1 && line.Length > 0);
            at += line.Length;
            note += line.NoteCount;
        }

        Assert.Equal((section.End, section.Notes.Count), (at, note));
    }

    private static void Notes(Section section)
    {
        var end = 0;
        for (var n = 0; n < section.Notes.Count; n++)
        {
            var note = section.Notes[n];
            var line = section.Lines[note.LineIndex];
            Assert.InRange(n, line.FirstNote, line.FirstNote + line.NoteCount - 1);
            Assert.True(note.OnsetSteps >= end && note.LengthSteps > 0, $"note {n} of {section}");
            Assert.True(note.Onset >= line.Onset && note.End <= line.Onset + line.Length);
            Assert.InRange(note.PitchIndex, 0, section.Pitches.Count - 1);
            end = note.EndSteps;
        }

        Assert.True(end <= section.LengthSteps);
    }

    private static void Breaths(Section section)
    {
        var before = -1;
        foreach (var breath in section.Breaths)
        {
            Assert.InRange(breath.AfterNote, before + 1, section.Notes.Count - 1);
            Assert.Equal(section.Notes[breath.AfterNote].End, breath.Onset);
            var until = breath.AfterNote + 1 < section.Notes.Count ? section.Notes[breath.AfterNote + 1].Onset : section.Length;
            Assert.True(breath.Length > 0 && breath.Onset + breath.Length <= until);
            before = breath.AfterNote;
        }
    }

    private static void Measures(Section section)
    {
        var at = Rational.Zero;
        foreach (var measure in section.Measures)
        {
            Assert.Equal(at, measure.Onset);
            Assert.True(measure.Length > 0);
            at += measure.Length;
        }

        Assert.Equal(section.Length, at);
        Assert.True(section.End <= section.Length && section.LastFilled > 0);
    }
}

namespace Warmup.Reading.Tests;

/// <summary>Holds what was read against the score that was written.</summary>
internal static class SameMusic
{
    /// <summary>Asserts that lines, onsets, lengths, tones, syllables, breaths, tempo and meter are those of the score.</summary>
    public static void Holds(Score written, ReadMusic read)
    {
        Assert.Equal(written.Sections.Count, read.Sections.Count);
        var again = read.ToScore();
        for (var s = 0; s < written.Sections.Count; s++)
        {
            var (a, b) = (written.Sections[s], again.Sections[s]);
            Assert.Equal(a.Lines.ConvertAll(l => (l.FirstNote, l.NoteCount)), b.Lines.ConvertAll(l => (l.FirstNote, l.NoteCount)));
            Assert.Equal(Notes(a), Notes(b));
            Assert.Equal(a.Sung(), b.Sung());
            Assert.Equal(a.Notes.ConvertAll(n => (n.Joining, n.Loudness)), b.Notes.ConvertAll(n => (n.Joining, n.Loudness)));
            Assert.Equal(a.Breaths.ConvertAll(x => (x.Onset, x.AfterNote)), b.Breaths.ConvertAll(x => (x.Onset, x.AfterNote)));
            Assert.Equal(a.Tempo, b.Tempo);
            Assert.Equal(a.Meter, b.Meter);
            Assert.Equal(a.Scale, b.Scale);
            Assert.Equal(a.Tonic.Midi, b.Tonic.Midi);
            Assert.Equal(a.CountIn, b.CountIn);
            Assert.Equal(
                a.TempoChanges.ConvertAll(c => (c.Onset, c.Tempo)).Where((c, i) => c.Tempo != (i == 0 ? a.Tempo : a.TempoChanges[i - 1].Tempo)),
                read.Sections[s].TempoChanges.ConvertAll(c => (c.Onset, c.Tempo)));
        }
    }

    private static ValueList<(ScaleTone Tone, Rational Onset, Rational Length)> Notes(Section section) =>
        section.Notes.ConvertAll(n => (section.PitchOf(n).Tone, n.Onset, n.Length));
}

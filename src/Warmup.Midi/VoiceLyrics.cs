namespace Warmup.Midi;

/// <summary>The syllables of the sung notes: each is checked once, and written as an event of its own for every note.</summary>
internal sealed partial class VoiceEvents
{
    /// <summary>
    /// Writes an event for the note's syllable. Every syllable is a word of its own and ends with a space; the last of a line also ends the line. A
    /// note without a syllable continues the one before it, and an event without text says so.
    /// </summary>
    private void WriteLyric(ref TrackWriter writer, long tick, int index)
    {
        var notes = _notes.AsSpan();
        var syllable = _syllables[notes[index].SyllableIndex].Text;
        writer.Text(tick, TrackWriter.Lyric, syllable, (syllable.Length > 0, EndsLine(notes, index)) switch
        {
            (true, true) => " \r"u8,
            (true, false) => " "u8,
            (false, true) => "\r"u8,
            _ => default,
        });
    }

    private static bool EndsLine(ReadOnlySpan<ScoreNote> notes, int index) =>
        unchecked(index + 1) >= notes.Length || notes[unchecked(index + 1)].LineIndex != notes[index].LineIndex;

    /// <summary>The syllables of the present section, once they are checked.</summary>
    private SungSyllable[] Syllables()
    {
        var texts = Section.SungSyllables.AsSpan();
        var syllables = new SungSyllable[texts.Length];
        for (var s = 0; s < syllables.Length; s++)
        {
            syllables[s] = new SungSyllable(texts[s]);
            if (syllables[s].Bytes == 0)
            {
                // A short text of letters and digits needs no check.
                Check(texts[s], s);
            }
        }

        return syllables;
    }

    private void Check(string syllable, int index)
    {
        if (Plan.Options.Text == MidiTextEncoding.Ascii && !MidiText.IsAsciiAble(syllable))
        {
            throw new ExportException($"{PlaceOf(index)}the syllable '{syllable}' has no ASCII form; choose UTF-8, other syllables or no lyrics");
        }

        if (syllable.AsSpan().IndexOfAny(MidiText.Reserved) is >= 0 and var at)
        {
            throw new ExportException(
                $"{PlaceOf(index)}the syllable '{syllable}' holds '{syllable[at]}'; programs take {MidiText.Reserved} in a lyric for commands, so choose other syllables or no lyrics");
        }
    }

    /// <summary>Where a syllable is first sung.</summary>
    private string PlaceOf(int syllable) => Plan.PlaceOf(_section, Section.Notes.TakeWhile(n => n.SyllableIndex != syllable).Count());
}

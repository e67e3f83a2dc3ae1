using System.Runtime.CompilerServices;

namespace Warmup.Midi;

/// <summary>The syllables of the sung notes: each is checked, and written as an event of its own.</summary>
internal sealed partial class VoiceEvents
{
    /// <summary>
    /// Writes an event for the note's syllable. Every syllable is a word of its own and ends with a space; the last of a line also ends the line. A
    /// note without a syllable continues the one before it, and an event without text says so.
    /// </summary>
    private void WriteLyric(ref TrackWriter writer, long tick, int index)
    {
        var notes = _notes.AsSpan();
        var syllable = Checked(notes[index], index).Syllable!;
        writer.Text(tick, TrackWriter.Lyric, syllable, (syllable.Length > 0, EndsLine(notes, index)) switch
        {
            (true, true) => " \r"u8,
            (true, false) => " "u8,
            (false, true) => "\r"u8,
            _ => default,
        });
    }

    /// <summary>The pitch of a note, once the note's syllable is checked.</summary>
    private ref readonly SungPitch Checked(in ScoreNote note, int index)
    {
        ref readonly var pitch = ref _pitches[note.PitchIndex];
        if (!ReferenceEquals(note.Syllable, pitch.Syllable))
        {
            // Syllables repeat: the same string need not be looked at again.
            Check(note, index);
        }

        return ref pitch;
    }

    /// <summary>Checks the syllable of a note, and has its pitch remember it.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Check(in ScoreNote note, int index)
    {
        CheckSyllable(note.Syllable, index);
        _pitches[note.PitchIndex].Sing(note.Syllable);
    }

    private static bool EndsLine(ReadOnlySpan<ScoreNote> notes, int index) =>
        unchecked(index + 1) >= notes.Length || notes[unchecked(index + 1)].LineIndex != notes[index].LineIndex;

    private void CheckSyllable(string syllable, int note)
    {
        if (Plan.Options.Text == MidiTextEncoding.Ascii && !MidiText.IsAsciiAble(syllable))
        {
            throw new ExportException(
                $"{Plan.PlaceOf(_section, note)}the syllable '{syllable}' has no ASCII form; choose UTF-8, other syllables or no lyrics");
        }

        if (syllable.AsSpan().IndexOfAny(MidiText.Reserved) is >= 0 and var at)
        {
            throw new ExportException(
                $"{Plan.PlaceOf(_section, note)}the syllable '{syllable}' holds '{syllable[at]}'; programs take {MidiText.Reserved} in a lyric for commands, so choose other syllables or no lyrics");
        }
    }
}

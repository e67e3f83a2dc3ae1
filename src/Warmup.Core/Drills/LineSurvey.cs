using System.Runtime.InteropServices;

namespace Warmup;

/// <summary>A tone of lines.</summary>
/// <param name="Tone">The tone.</param>
/// <param name="FirstLine">The index of the line in which it first sounds.</param>
internal readonly record struct LineTone(ScaleTone Tone, int FirstLine);

/// <summary>What one walk over the notes of lines finds: the different tones, which of them each note has, and what the grid depends on.</summary>
internal sealed class LineSurvey
{
    private const int UsualTones = 8;

    private readonly List<LineTone> _tones = new(UsualTones);
    private readonly ushort[] _toneOfNote;

    public LineSurvey(Expansion lines)
    {
        NoteCount = lines.NoteCount;
        _toneOfNote = new ushort[NoteCount];
        (IsPlain, IsInUnits, HasHalves) = (true, true, false);

        // One more than each tone's index, where it has been met.
        Span<ushort> met = stackalloc ushort[((2 * ScaleTone.HighestOctave) + 1) * Degree.Count];
        met.Clear();
        var at = 0;
        for (var line = 0; line < lines.Lines.Count; line++)
        {
            foreach (ref readonly var note in lines.Lines[line].Notes.AsSpan())
            {
                ref var index = ref met[((note.Tone.Octave + ScaleTone.HighestOctave) * Degree.Count) + note.Tone.Degree.Ordinal];
                if (index == 0)
                {
                    _tones.Add(new LineTone(note.Tone, line));
                    index = (ushort)_tones.Count;
                }

                _toneOfNote[at++] = (ushort)(index - 1);
                if (!note.IsPlain)
                {
                    IsPlain = false;
                    IsInUnits &= note.TakesOneUnit;
                    HasHalves |= note.IsHalved;
                }
            }
        }
    }

    /// <summary>The notes of all lines.</summary>
    public int NoteCount { get; }

    /// <summary>Whether every note is plain, as in most lines.</summary>
    public bool IsPlain { get; }

    /// <summary>Whether every note takes one unit and no silence.</summary>
    public bool IsInUnits { get; }

    /// <summary>Whether the middle of a note matters.</summary>
    public bool HasHalves { get; }

    /// <summary>The different tones in the order in which they first sound.</summary>
    public ReadOnlySpan<LineTone> Tones => CollectionsMarshal.AsSpan(_tones);

    /// <summary>The indexes of the tones of some notes that follow each other.</summary>
    /// <param name="first">The first of the notes, counted over all lines.</param>
    /// <param name="count">Their number.</param>
    public ReadOnlySpan<ushort> TonesOf(int first, int count) => _toneOfNote.AsSpan(first, count);
}

namespace Warmup;

/// <summary>A tone of lines.</summary>
/// <param name="Tone">The tone.</param>
/// <param name="FirstLine">The index of the line in which it first sounds.</param>
internal readonly record struct LineTone(ScaleTone Tone, int FirstLine);

/// <summary>What one walk over the notes of lines finds: the different tones, which of them each note has, and what the grid depends on.</summary>
internal readonly ref struct LineSurvey
{
    private const int UsualTones = 8;

    private readonly LineTone[] _tones = new LineTone[UsualTones];
    private readonly int _toneCount;
    private readonly ushort[] _toneOfNote;

    public LineSurvey(Expansion lines)
    {
        NoteCount = lines.NoteCount;
        _toneOfNote = new ushort[NoteCount];
        (IsPlain, IsInUnits, HasHalves) = (true, true, false);

        // One more than each tone's index, where it has been met.
        Span<ushort> met = stackalloc ushort[ScaleTone.Count];
        met.Clear();
        var toneOfNote = _toneOfNote.AsSpan();
        var all = lines.Lines.AsSpan();
        for (var line = 0; line < all.Length; line++)
        {
            foreach (ref readonly var note in all[line].AsSpan())
            {
                ref var index = ref met[note.Tone.Ordinal];
                if (index == 0)
                {
                    if (_toneCount == _tones.Length)
                    {
                        Array.Resize(ref _tones, 2 * _toneCount);
                    }

                    _tones[_toneCount++] = new LineTone(note.Tone, line);
                    index = (ushort)_toneCount;
                }

                toneOfNote[0] = unchecked((ushort)(index - 1));
                toneOfNote = toneOfNote[1..];
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
    public ReadOnlyMemory<LineTone> Tones => _tones.AsMemory(0, _toneCount);

    /// <summary>The indexes of the tones of some notes that follow each other.</summary>
    /// <param name="first">The first of the notes, counted over all lines.</param>
    /// <param name="count">Their number.</param>
    public ReadOnlySpan<ushort> TonesOf(int first, int count) => _toneOfNote.AsSpan(first, count);
}

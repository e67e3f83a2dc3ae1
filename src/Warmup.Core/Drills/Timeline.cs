namespace Warmup;

/// <summary>Puts line after line in time.</summary>
internal sealed class Timeline(TimeGrid grid, RoundPlan rounds, Palette palette, bool lineByLine)
{
    private readonly ScoreNote[] _notes = new ScoreNote[rounds.Notes];
    private readonly ScoreLine[] _lines = new ScoreLine[rounds.Lines];
    private readonly List<Breath> _breaths = [];
    private readonly int _resolution = grid.Resolution;
    private long _at = grid.CountIn;
    private int _note;
    private int _line;

    /// <summary>The different tones, once all lines are in time.</summary>
    public Palette Palette => palette;

    /// <summary>Where the next line begins, in aksharas.</summary>
    public Rational At => grid.Aksharas(_at);

    /// <summary>The notes, once all lines are in time.</summary>
    public ValueList<ScoreNote> Notes => ValueList.Adopt(_notes);

    /// <summary>The lines, once all are in time.</summary>
    public ValueList<ScoreLine> Lines => ValueList.Adopt(_lines);

    public ValueList<Breath> Breaths => _breaths.ToValueList();

    /// <summary>Sings a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="index">Its index in the pattern.</param>
    /// <param name="speed">The speed.</param>
    /// <param name="round">The time through the drill, from 0.</param>
    /// <param name="breath">The breath after it, in steps.</param>
    public void Sing(Line line, int index, Speed speed, int round, long breath)
    {
        var onset = _at;
        var first = _note;
        _at += grid.EduppuOf(_line);
        var sung = line.Notes.AsSpan();
        for (var i = 0; i < sung.Length; i++)
        {
            ref readonly var note = ref sung[i];
            var length = grid.Steps(note.Length, speed);
            var pitch = palette.IndexOf(note.Tone, index);
            var silence = grid.Silence(note, speed);
            if (i < sung.Length - 1)
            {
                Add(note, length, pitch, false, silence == 0 && sung[i + 1].Tone != note.Tone);
                _at += length + silence;
                continue;
            }

            var close = grid.Close(_at, length, silence, breath);
            if (close.BreathEnd > close.NoteEnd)
            {
                _breaths.Add(new Breath(grid.Aksharas(close.NoteEnd), grid.Aksharas(close.BreathEnd - close.NoteEnd), _note));
            }

            Add(note, close.NoteEnd - _at, pitch, close.NoteEnd - _at > length || (lineByLine && close.NoteEnd - _at == length), false);
            _at = close.Next;
        }

        _lines[_line++] = new ScoreLine(first, _note - first, grid.Aksharas(onset), grid.Aksharas(_at - onset)) { Speed = speed, Round = round };
    }

    /// <summary>Adds a note.</summary>
    /// <param name="sung">The note of the line.</param>
    /// <param name="length">Its length in steps.</param>
    /// <param name="pitch">The index of its pitch.</param>
    /// <param name="held">Whether it is held at the end of its line.</param>
    /// <param name="leads">Whether a note of another pitch follows at once in its line.</param>
    private void Add(in LineNote sung, long length, int pitch, bool held, bool leads)
    {
        var note = new ScoreNote((int)_at, (int)length, _resolution, pitch, _line, sung.Sung ?? palette.Syllable(pitch), held);
        _notes[_note++] = sung.IsHalved
            ? note with
            {
                Joining = sung.Joining switch
                {
                    Joining.Glide when leads => Joining.Glide,
                    Joining.Staccato when !held => Joining.Staccato,
                    _ => Joining.Plain,
                },
                Loudness = sung.Loudness,
            }
            : note;
    }
}

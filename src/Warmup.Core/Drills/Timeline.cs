namespace Warmup;

/// <summary>Puts line after line in time.</summary>
internal sealed class Timeline(TimeGrid grid, RoundPlan rounds, Palette palette, bool lineByLine)
{
    private readonly ScoreNote[] _notes = new ScoreNote[rounds.Notes];
    private readonly ScoreLine[] _lines = new ScoreLine[rounds.Lines];
    private readonly int _resolution = grid.Resolution;

    // Lines that run on have none.
    private List<Breath>? _breaths;
    private Speed _speed;
    private long _unit;
    private int _round;
    private long _breath;
    private long _at = grid.CountIn;
    private int _note;
    private int _line;

    /// <summary>The different tones, once all lines are in time.</summary>
    public Palette Palette => palette;

    /// <summary>Where the last line ends so far, in grid steps.</summary>
    public int End => (int)_at;

    /// <summary>The notes, once all lines are in time.</summary>
    public ValueList<ScoreNote> Notes => ValueList.Adopt(_notes);

    /// <summary>The lines, once all are in time.</summary>
    public ValueList<ScoreLine> Lines => ValueList.Adopt(_lines);

    public ValueList<Breath> Breaths => _breaths?.ToValueList() ?? default;

    /// <summary>Goes on at a speed.</summary>
    /// <param name="speed">The speed.</param>
    /// <param name="round">The time through the drill, from 0.</param>
    /// <param name="breath">The breath after each line, in steps.</param>
    public void Begin(Speed speed, int round, long breath) => (_speed, _unit, _round, _breath) = (speed, grid.Unit(speed), round, breath);

    /// <summary>Sings a line of plain notes.</summary>
    /// <param name="tones">The index of each note's tone in the palette.</param>
    public void SingPlain(ReadOnlySpan<ushort> tones)
    {
        var (first, last) = (_note, tones[^1]);
        var at = _at + grid.EduppuOf(_line);
        AddPlain(tones[..^1], at);
        at += (tones.Length - 1) * _unit;
        var (end, next) = Close(at, _unit, 0);
        _notes[_note++] = new ScoreNote((int)at, (int)(end - at), _resolution, last, _line, palette.Syllable(last), IsHeld(end - at, _unit));
        EndLine(first, next);
    }

    /// <summary>Sings a line.</summary>
    /// <param name="sung">Its notes.</param>
    /// <param name="tones">The index of each note's tone in the palette.</param>
    public void Sing(ReadOnlySpan<LineNote> sung, ReadOnlySpan<ushort> tones)
    {
        var first = _note;
        var last = sung.Length - 1;
        var at = _at + grid.EduppuOf(_line);
        for (var i = 0; i < last; i++)
        {
            ref readonly var note = ref sung[i];
            var (length, silence) = note.TakesOneUnit ? (_unit, 0) : (grid.Steps(note, _speed), grid.Silence(note, _speed));
            Add(note, at, length, tones[i], false, silence == 0 && tones[i + 1] != tones[i]);
            at += length + silence;
        }

        var written = grid.Steps(sung[last], _speed);
        var (end, next) = Close(at, written, grid.Silence(sung[last], _speed));
        Add(sung[last], at, end - at, tones[last], IsHeld(end - at, written), false);
        EndLine(first, next);
    }

    /// <summary>What becomes of the last note of a line, and the breath after it.</summary>
    /// <returns>Where the note ends, and where the next line begins.</returns>
    private (long End, long Next) Close(long at, long written, long silence)
    {
        var close = grid.Close(at, written, silence, _breath);
        if (close.BreathEnd > close.NoteEnd)
        {
            (_breaths ??= []).Add(new Breath(grid.Aksharas(close.NoteEnd), grid.Aksharas(close.BreathEnd - close.NoteEnd), _note));
        }

        return (close.NoteEnd, close.Next);
    }

    private bool IsHeld(long length, long written) => length > written || (lineByLine && length == written);

    private void EndLine(int first, long next)
    {
        _lines[_line++] = new ScoreLine(first, _note - first, (int)_at, (int)(next - _at), _resolution, _speed, _round);
        _at = next;
    }

    /// <summary>Adds plain notes, one directly after the other.</summary>
    /// <param name="tones">The indexes of their pitches.</param>
    /// <param name="at">Where the first begins, in steps.</param>
    private void AddPlain(ReadOnlySpan<ushort> tones, long at)
    {
        var (onset, unit, line, resolution) = ((int)at, (int)_unit, _line, _resolution);
        var notes = _notes.AsSpan(_note, tones.Length);
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = new ScoreNote(onset, unit, resolution, tones[i], line, palette.Syllable(tones[i]), false);

            // The plan of the rounds has bound the steps.
            onset = unchecked(onset + unit);
        }

        _note += notes.Length;
    }

    /// <summary>Adds a note.</summary>
    /// <param name="sung">The note of the line.</param>
    /// <param name="at">Where it begins, in steps.</param>
    /// <param name="length">Its length in steps.</param>
    /// <param name="pitch">The index of its pitch.</param>
    /// <param name="held">Whether it is held at the end of its line.</param>
    /// <param name="leads">Whether a note of another pitch follows at once in its line.</param>
    private void Add(in LineNote sung, long at, long length, int pitch, bool held, bool leads)
    {
        ref var note = ref _notes[_note++];
        note = new ScoreNote((int)at, (int)length, _resolution, pitch, _line, sung.Sung ?? palette.Syllable(pitch), held);
        if (sung.IsHalved)
        {
            note = note with
            {
                Joining = sung.Joining switch
                {
                    Joining.Glide when leads => Joining.Glide,
                    Joining.Staccato when !held => Joining.Staccato,
                    _ => Joining.Plain,
                },
                Loudness = sung.Loudness,
            };
        }
    }
}

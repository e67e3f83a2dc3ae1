namespace Warmup;

/// <summary>Puts line after line in time.</summary>
internal sealed class Timeline(TimeGrid grid, RoundPlan rounds, Palette palette, bool lineByLine)
{
    private readonly ScoreNote[] _notes = new ScoreNote[rounds.Notes];
    private readonly ScoreLine[] _lines = new ScoreLine[rounds.Lines];
    private readonly int _resolution = grid.Resolution;

    // Lines that run on have none.
    private List<Breath>? _breaths;

    // Plain notes need none.
    private SungTexts? _texts;
    private int _speedIndex;
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

    /// <summary>What is sung, once all lines are in time.</summary>
    public ValueList<string> SungSyllables => _texts?.All ?? palette.Syllables;

    /// <summary>The lines, once all are in time.</summary>
    public ValueList<ScoreLine> Lines => ValueList.Adopt(_lines);

    public ValueList<Breath> Breaths => _breaths?.ToValueList() ?? default;

    /// <summary>Goes on at a speed.</summary>
    /// <param name="index">The index of the speed among the drill's.</param>
    /// <param name="speed">The speed.</param>
    /// <param name="round">The time through the drill, from 0.</param>
    /// <param name="breath">The breath after each line, in steps.</param>
    public void Begin(int index, Speed speed, int round, long breath) =>
        (_speedIndex, _speed, _unit, _round, _breath) = (index, speed, grid.Unit(speed), round, breath);

    /// <summary>Sings a line.</summary>
    /// <param name="line">Its index in the pattern.</param>
    /// <param name="sung">Its notes.</param>
    /// <param name="tones">The index of each note's tone in the palette.</param>
    /// <param name="arePlain">Whether its notes are known to be plain.</param>
    /// <exception cref="PatternException">It lasts too long.</exception>
    public void Sing(int line, ReadOnlySpan<LineNote> sung, ReadOnlySpan<ushort> tones, bool arePlain)
    {
        var first = _note;
        var onset = _at + grid.EduppuOf(_line);
        var (lead, written, silence) = grid.SpanOf(_speedIndex, _unit, line);
        var last = onset + lead;
        var (end, breathEnd, next) = grid.Close(last, written, silence, _breath);
        grid.Bound(next, _at, _line);
        if (arePlain)
        {
            AddPlain(tones, onset, end - last, IsHeld(end - last, written));
        }
        else
        {
            AddEach(sung[..^1], tones, onset);
            Add(sung[^1], last, end - last, tones[^1], IsHeld(end - last, written), false);
        }

        if (breathEnd > end)
        {
            AddBreath(end, breathEnd);
        }

        _lines[_line++] = new ScoreLine(first, _note - first, (int)_at, (int)(next - _at), _resolution, _speed, _round);
        _at = next;
    }

    private void AddBreath(long onset, long end) => (_breaths ??= []).Add(new Breath(grid.Aksharas(onset), grid.Aksharas(end - onset), _note - 1));

    private bool IsHeld(long length, long written) => length > written || (lineByLine && length == written);

    /// <summary>Adds the notes of a plain line, one directly after the other.</summary>
    /// <param name="tones">The indexes of their pitches.</param>
    /// <param name="at">Where the first begins, in steps.</param>
    /// <param name="last">The length of the last one.</param>
    /// <param name="held">Whether the last one is held.</param>
    private void AddPlain(ReadOnlySpan<ushort> tones, long at, long last, bool held)
    {
        var (onset, unit, line, resolution) = ((int)at, (int)_unit, _line, _resolution);
        var notes = _notes.AsSpan(_note, tones.Length);
        var end = notes.Length - 1;
        for (var i = 0; i < end; i++)
        {
            notes[i] = new ScoreNote(onset, unit, resolution, tones[i], tones[i], line, false);

            // The line's end fits, so its notes do.
            onset = unchecked(onset + unit);
        }

        notes[end] = new ScoreNote(onset, (int)last, resolution, tones[end], tones[end], line, held);
        _note += notes.Length;
    }

    /// <summary>Adds all notes of a line but the last.</summary>
    /// <param name="sung">These notes.</param>
    /// <param name="tones">The indexes of the pitches of the whole line.</param>
    /// <param name="at">Where the first begins, in steps.</param>
    private void AddEach(ReadOnlySpan<LineNote> sung, ReadOnlySpan<ushort> tones, long at)
    {
        for (var i = 0; i < sung.Length; i++)
        {
            ref readonly var note = ref sung[i];
            var (length, silence) = note.TakesOneUnit ? (_unit, 0) : (grid.Steps(note, _speed), grid.Silence(note, _speed));
            Add(note, at, length, tones[i], false, silence == 0 && tones[i + 1] != tones[i]);
            at += length + silence;
        }
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
        note = new ScoreNote((int)at, (int)length, _resolution, pitch, (_texts ??= new SungTexts(palette.Syllables)).IndexOf(pitch, sung.Sung), _line, held);
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

using System.Runtime.CompilerServices;

namespace Warmup.Midi;

/// <summary>The sung notes with their tuning and syllables.</summary>
internal sealed class VoiceEvents : TrackEvents
{
    private const int Channel = DroneChannels.VoiceChannel;
    private const int TuningProgram = 0;
    private const int Untuned = -1;

    // The pitch to which each key has been retuned so far, where keys are.
    private readonly int[] _retuned;
    private readonly MidiTuning _tuning;
    private readonly bool _hasLyrics;
    // What changes while the present key sounds, and the note at which its key began.
    private readonly List<ShapeEvent> _shape = [];
    private int _bend;
    private int _expression;
    private int _shaped;
    private int _last;
    private int _section;
    private int _note;
    private Step _step;

    // What the notes of the present section need, one by one.
    private ValueList<ScoreNote> _notes;
    private KeyTuning[] _keys = [];
    private (string? Text, ShortText Lyric, ShortText LastLyric)[] _syllables = [];
    private int[] _velocities = [];
    private int _akshara;
    private long _aksharaEnd;
    private int _resolution;
    private long _start;
    private long _stepTicks;

    public VoiceEvents(MidiPlan plan)
        : base(plan)
    {
        _tuning = plan.Options.Tuning;
        _retuned = IsRetuned ? new int[128] : [];
        _hasLyrics = plan.Options.HasLyrics;
    }

    private enum Step
    {
        SetUp,
        Retune,
        Bend,
        Lyric,
        On,
        Change,
        Off,
    }

    public override void Start()
    {
        Array.Fill(_retuned, Untuned);
        _bend = Untuned;
        _expression = VoiceShape.Even;
        _section = 0;
        _note = 0;
        _step = Step.SetUp;
        Next = At(0, EventPhase.Setup);
    }

    protected override void Emit(ref TrackWriter writer)
    {
        switch (_step)
        {
            case Step.SetUp:
                if (!Plan.Options.IsSingleTrack)
                {
                    writer.Text(0, 0x03, "Voice");
                }

                SetUpChannel(ref writer, Channel, Plan.Options.VoiceProgram, Plan.Options.VoiceVolume, TuningProgram, Plan.SlideSemitones);
                EnterSection();
                break;
            case Step.Retune:
                RetuneSection(ref writer);
                EnterNote();
                break;
            case Step.Bend:
                Ready(ref writer, Tick);
                AfterTuning();
                break;
            case Step.Lyric:
                WriteLyric(ref writer, Tick, _note);
                Go(Step.On, EventPhase.On);
                break;
            case Step.On:
                writer.NoteOn(Tick, Channel, Key.Key, Velocity(Note));
                Shape();
                GoOn();
                break;
            case Step.Change:
                Change(ref writer, _shape[_shaped++]);
                GoOn();
                break;
            default:
                writer.NoteOff(Tick, Channel, Key.Key);
                _note = _last + 1;
                EnterNote();
                break;
        }
    }

    public override void Emit(ref TrackWriter writer, long limit)
    {
        base.Emit(ref writer, Next + 1);
        while (Next < limit)
        {
            if (limit == Over && _step is Step.Bend or Step.Lyric or Step.On)
            {
                WriteSection(ref writer);
            }
            else
            {
                base.Emit(ref writer, Next + 1);
            }
        }
    }

    /// <summary>Writes the rest of a section's notes where the voice has a track of its own: nothing comes between the events of a note.</summary>
    private void WriteSection(ref TrackWriter writer)
    {
        var notes = _notes.AsSpan();
        for (var n = _note; n < notes.Length; n++)
        {
            ref readonly var note = ref notes[n];
            ref readonly var key = ref _keys[note.PitchIndex];
            var on = TickOf(note.OnsetSteps);
            if (!IsReady(note, key))
            {
                _note = n;
                Ready(ref writer, on);
            }

            var lyric = _hasLyrics ? ShortLyric(notes, n) : default;
            if (lyric.Length > 0 == _hasLyrics && !VoiceShape.IsNeeded(note))
            {
                writer.Note(on, TickOf(note.SoundEndSteps), Channel, key.Key, Velocity(note), lyric);
                continue;
            }

            _note = n;
            WriteShaped(ref writer, on);
            n = _last;
        }

        _note = notes.Length;
        EnterNote();
    }

    /// <summary>Writes the present note, and those that it slides to, where its key is shaped or its syllable is long.</summary>
    private void WriteShaped(ref TrackWriter writer, long on)
    {
        if (_hasLyrics)
        {
            WriteLyric(ref writer, on, _note);
        }

        writer.NoteOn(on, Channel, Key.Key, Velocity(Note));
        Shape();
        foreach (var change in _shape)
        {
            Change(ref writer, change);
        }

        writer.NoteOff(TickOf(_notes.AsSpan()[_last].SoundEndSteps), Channel, Key.Key);
    }

    private Section Section => Plan.Score.Sections[_section];

    private ref readonly ScoreNote Note => ref _notes.AsSpan()[_note];

    private ref readonly KeyTuning Key => ref _keys[Note.PitchIndex];

    private bool IsRetuned => _tuning == MidiTuning.TuningStandard;

    /// <summary>
    /// How loud a note is where it stands in the avartana; avartanas follow each other from the section's beginning. Asked for note after note,
    /// it counts aksharas and need not divide.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Velocity(in ScoreNote note)
    {
        while (note.OnsetSteps >= _aksharaEnd)
        {
            _aksharaEnd += _resolution;
            _akshara = _akshara + 1 < _velocities.Length ? _akshara + 1 : 0;
        }

        return note.OnsetSteps == _aksharaEnd - _resolution ? _velocities[_akshara] : Plan.Options.VoiceVelocity;
    }

    /// <summary>How loud a note is on each akshara of an avartana; in free rhythm all are as loud as between them.</summary>
    private static int[] Velocities(Meter meter, MidiOptions options)
    {
        if (meter.IsFree)
        {
            return [options.VoiceVelocity];
        }

        var velocities = new int[meter.Beats];
        for (var beat = 0; beat < velocities.Length; beat++)
        {
            velocities[beat] = Math.Min(127, options.VoiceVelocity + meter.AccentOf(beat) switch
            {
                BeatAccent.Avartana => options.AvartanaAccent,
                BeatAccent.Anga => options.AngaAccent,
                _ => options.AksharaAccent,
            });
        }

        return velocities;
    }

    private void EnterSection()
    {
        _note = 0;
        _notes = Section.Notes;
        _keys = Plan.Keys[_section];
        _syllables = new (string?, ShortText, ShortText)[_keys.Length];
        _velocities = Velocities(Section.Meter, Plan.Options);
        _resolution = Section.Resolution;
        (_akshara, _aksharaEnd) = (0, _resolution);
        _start = Plan.Starts[_section];
        _stepTicks = Plan.StepTicks(_section);
        if (IsRetuned)
        {
            _step = Step.Retune;
            Next = At(_start, EventPhase.Tuning);
        }
        else
        {
            EnterNote();
        }
    }

    private void EnterNote()
    {
        if (_note == _notes.Count)
        {
            if (_section + 1 == Plan.Score.Sections.Count)
            {
                Next = Over;
                return;
            }

            _section++;
            EnterSection();
            return;
        }

        if (IsReady(Note, Key))
        {
            AfterTuning();
        }
        else
        {
            Go(Step.Bend, EventPhase.Tuning);
        }
    }

    /// <summary>Whether a note can begin as the channel is.</summary>
    private bool IsReady(in ScoreNote note, in KeyTuning key) => IsTuned(key) && IsUnbent && _expression == VoiceShape.ExpressionOf(note);

    /// <summary>Whether a slide before has left no bend behind where keys are not tuned by bends.</summary>
    private bool IsUnbent => _tuning == MidiTuning.PitchBend || _bend is Untuned or KeyTuning.NoBend;

    private bool IsTuned(in KeyTuning key) => _tuning switch
    {
        MidiTuning.PitchBend => _bend == key.Bend,
        MidiTuning.TuningStandard => _retuned[key.Key] == key.Retuned,
        _ => true,
    };

    private void AfterTuning()
    {
        if (_hasLyrics)
        {
            Go(Step.Lyric, EventPhase.Lyric);
        }
        else
        {
            Go(Step.On, EventPhase.On);
        }
    }

    private long TickOf(int steps) => _start + (steps * _stepTicks);

    private void Go(Step step, EventPhase phase)
    {
        _step = step;
        Next = At(TickOf(Note.OnsetSteps), phase);
    }

    /// <summary>Tunes the channel for the note that begins, and sets how loud it begins.</summary>
    private void Ready(ref TrackWriter writer, long tick)
    {
        if (!IsTuned(Key))
        {
            Tune(ref writer, tick, Key);
        }

        if (!IsUnbent)
        {
            _bend = KeyTuning.NoBend;
            writer.Bend(tick, Channel, _bend);
        }

        if (VoiceShape.ExpressionOf(Note) is var expression && expression != _expression)
        {
            _expression = expression;
            writer.Expression(tick, Channel, expression);
        }
    }

    /// <summary>Gathers what changes while the key of the present note sounds; for most notes, nothing.</summary>
    private void Shape()
    {
        _shaped = 0;
        _last = _note;
        _shape.Clear();
        if (VoiceShape.IsNeeded(Note))
        {
            _last = VoiceShape.LastOf(_notes.AsSpan(), _note);
            VoiceShape.Add(_shape, Section, _note, Key.Bend, Plan, TickOf);
        }
    }

    /// <summary>Moves to the next change of the key, or to its end.</summary>
    private void GoOn()
    {
        if (_shaped < _shape.Count)
        {
            _step = Step.Change;
            Next = At(_shape[_shaped].Tick, _shape[_shaped].Kind == ShapeKind.Syllable ? EventPhase.Lyric : EventPhase.Tuning);
            return;
        }

        _step = Step.Off;
        Next = At(TickOf(_notes.AsSpan()[_last].SoundEndSteps), EventPhase.Off);
    }

    private void Change(ref TrackWriter writer, ShapeEvent change)
    {
        switch (change.Kind)
        {
            case ShapeKind.Bend:
                _bend = change.Value;
                writer.Bend(change.Tick, Channel, _bend);
                break;
            case ShapeKind.Expression:
                _expression = change.Value;
                writer.Expression(change.Tick, Channel, _expression);
                break;
            case ShapeKind.Syllable when _hasLyrics:
                WriteLyric(ref writer, change.Tick, change.Value);
                break;
            default:
                break;
        }
    }

    private void Tune(ref TrackWriter writer, long tick, in KeyTuning key)
    {
        if (IsRetuned)
        {
            var message = new TuningMessage(stackalloc byte[TuningMessage.Size], TuningProgram);
            message.Add(key);
            writer.SystemExclusive(tick, message.Data);
            _retuned[key.Key] = key.Retuned;
        }
        else
        {
            _bend = key.Bend;
            writer.Bend(tick, Channel, _bend);
        }
    }

    /// <summary>Retunes the keys of a section before it begins; a key that two pitches share is retuned again where it sounds.</summary>
    private void RetuneSection(ref TrackWriter writer)
    {
        var message = new TuningMessage(stackalloc byte[TuningMessage.Size], TuningProgram);
        Span<bool> seen = stackalloc bool[128];
        foreach (var key in _keys)
        {
            if (!seen[key.Key] && _retuned[key.Key] != key.Retuned && !message.IsFull)
            {
                message.Add(key);
                _retuned[key.Key] = key.Retuned;
            }

            seen[key.Key] = true;
        }

        if (message.Keys > 0)
        {
            writer.SystemExclusive(Tick, message.Data);
        }
    }

    /// <summary>
    /// Writes an event for the note's syllable. Every syllable is a word of its own and ends with a space; the last of a line also ends the line. A
    /// note without a syllable continues the one before it, and an event without text says so.
    /// </summary>
    private void WriteLyric(ref TrackWriter writer, long tick, int index)
    {
        var notes = _notes.AsSpan();
        if (ShortLyric(notes, index) is { Length: > 0 } lyric)
        {
            writer.Text(tick, TrackWriter.Lyric, lyric);
            return;
        }

        var syllable = notes[index].Syllable;
        writer.Text(tick, TrackWriter.Lyric, syllable, (syllable.Length > 0, EndsLine(notes, index)) switch
        {
            (true, true) => " \r"u8,
            (true, false) => " "u8,
            (false, true) => "\r"u8,
            _ => default,
        });
    }

    /// <summary>Checks the syllable of a note; if it is short and plain, as nearly all are, gives its event's text.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private ShortText ShortLyric(ReadOnlySpan<ScoreNote> notes, int index)
    {
        ref readonly var note = ref notes[index];
        ref var known = ref _syllables[note.PitchIndex];
        if (!ReferenceEquals(note.Syllable, known.Text))
        {
            // Syllables repeat: the same string need not be looked at again.
            known = Checked(note.Syllable, index);
        }

        return EndsLine(notes, index) ? known.LastLyric : known.Lyric;
    }

    /// <summary>Checks a syllable, and makes the texts of its event inside a line and at its end.</summary>
    private (string Text, ShortText Lyric, ShortText LastLyric) Checked(string syllable, int note)
    {
        CheckSyllable(syllable, note);
        if (ShortText.Of(syllable) is not { Length: > 0 } word)
        {
            return (syllable, default, default);
        }

        var lyric = word.With(' ');
        return (syllable, lyric, lyric.With('\r'));
    }

    private static bool EndsLine(ReadOnlySpan<ScoreNote> notes, int index) => index + 1 == notes.Length || notes[index + 1].LineIndex != notes[index].LineIndex;

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

using System.Buffers.Binary;
using System.Runtime.CompilerServices;

namespace Warmup.Midi;

/// <summary>The sung notes with their tuning and syllables.</summary>
internal sealed partial class VoiceEvents : TrackEvents
{
    private const int Channel = DroneChannels.VoiceChannel;
    private const int TuningProgram = 0;
    private const int Untuned = -1;

    // Four bytes of time, a bend in four with the one after it, an event of eight with the time after it, and eight bytes of messages.
    private const int LongestNote = 4 + 4 + sizeof(ulong) + 1 + sizeof(ulong);

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
    private KeyTuning[] _pitches = [];
    private SungSyllable[] _syllables = [];
    private Velocities _velocities;
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
                writer.NoteOn(Tick, Channel, Key, _velocities.At(Note.OnsetSteps));
                Shape();
                GoOn();
                break;
            case Step.Change:
                Change(ref writer, _shape[_shaped++]);
                GoOn();
                break;
            default:
                writer.NoteOff(Tick, Channel, Key);
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
        while (_note < notes.Length)
        {
            var (on, off) = (TickOf(Note.OnsetSteps), TickOf(Note.SoundEndSteps));
            if (!IsReady(Note, Pitch))
            {
                Ready(ref writer, on);
            }

            if (!writer.IsRunning && !VoiceShape.IsNeeded(Note) && (!_hasLyrics || _syllables[Note.SyllableIndex].Bytes > 0) && NoteForm.Of(Note.LengthSteps, off - on) is { } form)
            {
                WriteAlike(ref writer, form);
            }
            else
            {
                WriteShaped(ref writer, on);
                _note = _last + 1;
            }
        }

        EnterNote();
    }

    /// <summary>
    /// Writes the present note, and those after it that are as long and as plain: of each the bend where it changes, the event of its syllable, the
    /// message that begins it, the time that it lasts and the message that ends it. What follows at once follows after a time of one byte, 0.
    /// </summary>
    private void WriteAlike(ref TrackWriter writer, in NoteForm form)
    {
        var notes = _notes.AsSpan();
        var (pitches, syllables, hasLyrics, isBent, start, stepTicks) = (_pitches, _syllables, _hasLyrics, _tuning == MidiTuning.PitchBend, _start, _stepTicks);
        var (joining, velocities, bend) = (Note.Joining, _velocities, _bend);
        var room = writer.Room(LongestNote);
        var (n, at, tick) = (_note, 0, writer.Tick);

        // The plan has seen that the ticks of the whole score fit.
        unchecked
        {
            for (; n < notes.Length && at + LongestNote <= room.Length; n++)
            {
                ref readonly var note = ref notes[n];
                ref readonly var pitch = ref pitches[note.PitchIndex];
                if (note.LengthSteps != form.Steps || note.Joining != joining || note.Loudness != Loudness.Even || (IsRetuned && !IsTuned(pitch)))
                {
                    break;
                }

                var on = start + (note.OnsetSteps * stepTicks);
                if (hasLyrics && syllables[note.SyllableIndex].Bytes == 0)
                {
                    break;
                }

                var place = room.Slice(at, LongestNote);
                var used = TrackWriter.Time(place, on - tick);
                if (isBent && pitch.Bend != bend)
                {
                    bend = pitch.Bend;
                    BinaryPrimitives.WriteInt32LittleEndian(place[used..], 0xE0 | Channel | ((bend & 0x7F) << 8) | ((bend >> 7) << 16));
                    used += 4;
                }

                if (hasLyrics)
                {
                    ref readonly var syllable = ref syllables[note.SyllableIndex];
                    var (lyric, bytes) = EndsLine(notes, n) ? (syllable.LastEvent, syllable.Bytes + 1) : (syllable.Event, syllable.Bytes);
                    BinaryPrimitives.WriteUInt64LittleEndian(place[used..], lyric);
                    place[used + bytes] = 0;
                    used += bytes + 1;
                }

                BinaryPrimitives.WriteUInt64LittleEndian(place[used..], form.Messages(Channel, pitch.Key, velocities.At(note.OnsetSteps)));
                at += used + form.Bytes;
                tick = on + form.Ticks;
            }
        }

        (_note, _velocities, _bend) = (n, velocities, bend);
        writer.Take(at, tick, 0x80 | Channel);
    }

    /// <summary>Writes the present note, and those that it slides to, where its key is shaped or its syllable is long.</summary>
    private void WriteShaped(ref TrackWriter writer, long on)
    {
        if (_hasLyrics)
        {
            WriteLyric(ref writer, on, _note);
        }

        writer.NoteOn(on, Channel, Key, _velocities.At(Note.OnsetSteps));
        Shape();
        foreach (var change in _shape)
        {
            Change(ref writer, change);
        }

        writer.NoteOff(TickOf(_notes.AsSpan()[_last].SoundEndSteps), Channel, Key);
    }

    private Section Section => Plan.Score.Sections[_section];

    private ref readonly ScoreNote Note => ref _notes.AsSpan()[_note];

    private ref readonly KeyTuning Pitch => ref _pitches[Note.PitchIndex];

    private int Key => Pitch.Key;

    private bool IsRetuned => _tuning == MidiTuning.TuningStandard;

    private void EnterSection()
    {
        _note = 0;
        _notes = Section.Notes;
        _pitches = Plan.KeysOf(_section);
        _syllables = _hasLyrics ? Syllables() : [];
        _velocities = new Velocities(Section, Plan.Options);
        _start = Plan.StartOf(_section);
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

        if (IsReady(Note, Pitch))
        {
            AfterTuning();
        }
        else
        {
            Go(Step.Bend, EventPhase.Tuning);
        }
    }

    /// <summary>Whether a note can begin as the channel is.</summary>
    private bool IsReady(in ScoreNote note, in KeyTuning pitch) => IsTuned(pitch) && IsUnbent && _expression == VoiceShape.ExpressionOf(note);

    /// <summary>Whether a slide before has left no bend behind where keys are not tuned by bends.</summary>
    private bool IsUnbent => _tuning == MidiTuning.PitchBend || _bend is Untuned or KeyTuning.NoBend;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool IsTuned(in KeyTuning pitch) => _tuning switch
    {
        MidiTuning.PitchBend => _bend == pitch.Bend,
        MidiTuning.TuningStandard => _retuned[pitch.Key] == pitch.Retuned,
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
        if (!IsTuned(Pitch))
        {
            Tune(ref writer, tick, Pitch);
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
            VoiceShape.Add(_shape, Section, _note, Pitch.Bend, Plan, TickOf);
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

    private void Tune(ref TrackWriter writer, long tick, in KeyTuning pitch)
    {
        if (IsRetuned)
        {
            var message = new TuningMessage(stackalloc byte[TuningMessage.Size], TuningProgram);
            message.Add(pitch);
            writer.SystemExclusive(tick, message.Data);
            _retuned[pitch.Key] = pitch.Retuned;
        }
        else
        {
            _bend = pitch.Bend;
            writer.Bend(tick, Channel, _bend);
        }
    }

    /// <summary>Retunes the keys of a section before it begins; a key that two pitches share is retuned again where it sounds.</summary>
    private void RetuneSection(ref TrackWriter writer)
    {
        var message = new TuningMessage(stackalloc byte[TuningMessage.Size], TuningProgram);
        Span<bool> seen = stackalloc bool[128];
        foreach (ref readonly var pitch in _pitches.AsSpan())
        {
            if (!seen[pitch.Key] && _retuned[pitch.Key] != pitch.Retuned && !message.IsFull)
            {
                message.Add(pitch);
                _retuned[pitch.Key] = pitch.Retuned;
            }

            seen[pitch.Key] = true;
        }

        if (message.Keys > 0)
        {
            writer.SystemExclusive(Tick, message.Data);
        }
    }
}

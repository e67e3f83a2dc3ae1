namespace Warmup.Midi;

/// <summary>The title, the tempi, keys and meters, and a marker at the beginning of each line and each answer.</summary>
internal sealed class ConductorEvents(MidiPlan plan) : TrackEvents(plan)
{
    // The standard's own values: a quarter has 24 clocks and 8 thirty-seconds.
    private const int ClocksPerWhole = 96;
    private const int ThirtySecondsPerQuarter = 8;

    private static readonly ShortText LineWord = ShortText.Of("Line").With(' ');

    private readonly bool _hasOneSection = plan.Score.Sections.Count == 1;

    private int _section;
    private Section _at = plan.Score.Sections[0];
    private ValueList<ScoreLine> _lines;
    private long _start;
    private long _stepTicks;
    private bool _isOpen;
    private int _measure;
    private int _line;
    private bool _isAnswer;
    private int _tempo;
    private long _measureTick;
    private long _lineTick;
    private long _tempoTick;

    public override void Start()
    {
        _section = 0;
        Enter();
    }

    protected override void Emit(ref TrackWriter writer)
    {
        if (!_isOpen)
        {
            Open(ref writer);
            _isOpen = true;
        }
        else if (_tempoTick <= _measureTick && _tempoTick <= _lineTick)
        {
            WriteTempo(ref writer, _at.TempoChanges[_tempo].Tempo);
            _tempo++;
            _tempoTick = TempoTick();
        }
        else if (_measureTick <= _lineTick)
        {
            WriteTimeSignature(ref writer);
        }
        else
        {
            WriteMarkers(ref writer);
        }

        var next = Math.Min(_tempoTick, Math.Min(_measureTick, _lineTick));
        if (next != long.MaxValue)
        {
            Next = At(next, EventPhase.Setup);
        }
        else if (_section + 1 < Plan.Score.Sections.Count)
        {
            _section++;
            Enter();
        }
        else
        {
            Next = Over;
        }
    }

    private long MeasureTick() => _measure < _at.Measures.Count ? Plan.TickOf(_section, _at.Measures.AsSpan()[_measure].OnsetSteps) : long.MaxValue;

    private long TempoTick() => _tempo < _at.TempoChanges.Count ? Plan.TickOf(_section, _at.TempoChanges[_tempo].Onset) : long.MaxValue;

    private long LineTick() => _line < _lines.Count ? _start + (Marker.StepsIn(_lines.AsSpan()[_line]) * _stepTicks) : long.MaxValue;

    /// <summary>The text of a marker as most have it, <c>Line 12</c>; none where it is longer.</summary>
    private ShortText ShortMarker => !_hasOneSection || _isAnswer || _line >= 99 ? default
        : _line >= 9 ? LineWord.With((char)('0' + ((_line + 1) / 10))).With((char)('0' + ((_line + 1) % 10)))
        : LineWord.With((char)('1' + _line));

    private LineMarker Marker => new(_hasOneSection ? -1 : _section, _line, _isAnswer);

    private void Enter()
    {
        _at = Plan.Score.Sections[_section];
        _lines = Plan.Options.HasMarkers ? _at.Lines : default;
        (_start, _stepTicks) = (Plan.StartOf(_section), Plan.StepTicks(_section));
        _isOpen = false;
        _measure = 0;
        _line = 0;
        _isAnswer = false;
        _tempo = 0;
        (_measureTick, _lineTick, _tempoTick) = (MeasureTick(), LineTick(), TempoTick());
        Next = At(_start, EventPhase.Setup);
    }

    private void Open(ref TrackWriter writer)
    {
        if (_section == 0)
        {
            writer.Text(Tick, 0x03, Plan.Score.Title);
        }

        if (!_hasOneSection)
        {
            writer.Text(Tick, 0x01, _at.Title);
        }

        WriteTempo(ref writer, _at.Tempo);

        // No sharps or flats, major: the standard's own default. MIDI knows only major and minor keys, and most scales are neither.
        writer.Meta(Tick, 0x59, [0, 0]);
    }

    private void WriteTempo(ref TrackWriter writer, Rational aksharas)
    {
        var tempo = Plan.MicrosecondsPerQuarter(_section, aksharas);
        writer.Meta(Tick, 0x51, [(byte)(tempo >> 16), (byte)((tempo >> 8) & 0xFF), (byte)(tempo & 0xFF)]);
    }

    private void WriteTimeSignature(ref TrackWriter writer)
    {
        var (numerator, power) = Plan.TimeSignature(_section, _measure);

        // A metronome clicks each beat of a meter, which is dotted in a compound one, and in free rhythm each unit of the signature.
        var click = _at.Meter.IsFree ? new Rational(1, 1 << power) : _at.Meter.BeatValue;
        writer.Meta(Tick, 0x58, [(byte)numerator, (byte)power, (byte)Math.Max(1, (click * ClocksPerWhole).Floor()), ThirtySecondsPerQuarter]);

        // Measures of the same length share a signature.
        var measures = _at.Measures.AsSpan()[_measure..];
        var alike = 1;
        while (alike < measures.Length && measures[alike].LengthSteps == measures[0].LengthSteps)
        {
            alike++;
        }

        _measure += alike;
        _measureTick = MeasureTick();
    }

    /// <summary>Writes the next marker; where the track has no other events but these, those after it too, as long as no tempo or meter comes first.</summary>
    private void WriteMarkers(ref TrackWriter writer)
    {
        var until = Plan.Options.IsSingleTrack ? _lineTick : Math.Min(_tempoTick, _measureTick);
        var lines = _lines.AsSpan();
        do
        {
            if (ShortMarker is { Length: > 0 } marker)
            {
                writer.Text(_lineTick, 0x06, marker);
            }
            else
            {
                WriteMarker(ref writer);
            }

            _isAnswer = !_isAnswer && lines[_line].HasAnswer;
            _line += _isAnswer ? 0 : 1;
            _lineTick = LineTick();
        }
        while (_lineTick < until);
    }

    private void WriteMarker(ref TrackWriter writer)
    {
        Span<byte> text = stackalloc byte[LineMarker.Longest];
        writer.Meta(_lineTick, 0x06, text[..Marker.Write(text)]);
    }
}

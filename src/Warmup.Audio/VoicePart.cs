namespace Warmup.Audio;

/// <summary>The guide tone: a soft vowel on each note, and nothing between notes.</summary>
internal sealed class VoicePart(WavPlan plan) : SoundPart
{
    // The project's own settings: soft, and short enough for the fastest drills.
    private const double AttackSeconds = 0.025;
    private const double ReleaseSeconds = 0.035;

    private readonly double[] _sine = WaveTable.Sine();
    private readonly List<WaveTable> _tables = [];
    private readonly double _gain = GainBudget.Voice * GainBudget.Factor(plan.Options.VoiceDecibels);
    private readonly ShapedTone _shaped = new();
    private Tone? _tone;
    private bool _isShaped;
    private int _last;
    private int _ready = -1;
    private bool[] _filled = [];
    private int _section;
    private int _note;
    private bool _sounds;

    protected override void Add(Span<double> block, long end)
    {
        while (ToNote())
        {
            var start = plan.FrameOfNote(_section, _note);
            if (start >= end)
            {
                return;
            }

            if (!_sounds)
            {
                Begin(start);
                _sounds = true;
            }

            var rest = From(block, Math.Max(start, Frame));
            if (_isShaped)
            {
                _shaped.AddTo(rest);
            }
            else
            {
                _tone!.AddTo(rest);
            }

            if ((_isShaped ? _shaped.Left : _tone!.Left) > 0)
            {
                return;
            }

            _sounds = false;
            _note = _last + 1;
        }
    }

    /// <summary>Moves to the section that has the next note.</summary>
    private bool ToNote()
    {
        while (_section < plan.Score.Sections.Count && _note == plan.Score.Sections[_section].Notes.Count)
        {
            _section++;
            _note = 0;
        }

        return _section < plan.Score.Sections.Count;
    }

    private void Begin(long start)
    {
        var section = plan.Score.Sections[_section];
        var note = section.Notes[_note];
        var rate = plan.Options.SampleRate;
        _last = _note;
        _isShaped = note.Joining == Joining.Glide || note.Loudness == Loudness.SwellAndFade;
        if (_isShaped)
        {
            Shape(section, start);
            _shaped.Start(_gain, ShapeOf(start), rate);
            return;
        }

        var table = TableOf(section, note.PitchIndex);
        _tone ??= new Tone(table);
        _tone.Table = table;
        _tone.Start(section.Pitches[note.PitchIndex].Hz / rate, _gain, 1, ShapeOf(start));
    }

    private ToneShape ShapeOf(long start) =>
        ToneShape.Of(plan.EndFrameOfNote(_section, _last) - start, AttackSeconds, ReleaseSeconds, plan.Options.SampleRate);

    /// <summary>Gathers the notes that slide into each other from the present one on, or the one note that swells.</summary>
    private void Shape(Section section, long start)
    {
        _shaped.Clear();
        while (true)
        {
            var note = section.Notes[_last];
            var slides = note.Joining == Joining.Glide;
            var next = slides ? section.Notes[_last + 1].PitchIndex : note.PitchIndex;
            _shaped.Add(new TonePart(
                plan.FrameOfNote(_section, _last) - start,
                plan.FrameOf(_section, note.Middle) - start,
                plan.FrameOf(_section, note.End) - start,
                section.Pitches[note.PitchIndex].Hz / plan.Options.SampleRate,
                section.Pitches[next].Hz / plan.Options.SampleRate,
                TableOf(section, note.PitchIndex),
                TableOf(section, next),
                note.Loudness == Loudness.SwellAndFade));
            if (!slides)
            {
                return;
            }

            _last++;
        }
    }

    /// <summary>The period of a pitch, computed once for a section; the next section uses the same tables again.</summary>
    private WaveTable TableOf(Section section, int pitch)
    {
        if (_ready != _section)
        {
            _ready = _section;
            if (_filled.Length < section.Pitches.Count)
            {
                _filled = new bool[section.Pitches.Count];
            }

            Array.Clear(_filled);
            while (_tables.Count < section.Pitches.Count)
            {
                _tables.Add(new WaveTable());
            }
        }

        if (!_filled[pitch])
        {
            var hz = section.Pitches[pitch].Hz;
            Span<double> amplitudes = stackalloc double[WaveTable.MostHarmonics];
            amplitudes = amplitudes[..WaveTable.HarmonicsOf(HighestOf(section, pitch), plan.Options.SampleRate)];
            Spectrum.Voice(hz, amplitudes);
            _tables[pitch].Fill(_sine, amplitudes);
            _filled[pitch] = true;
        }

        return _tables[pitch];
    }

    /// <summary>The highest frequency at which the period of a pitch is heard: it slides to other pitches and is slid to.</summary>
    private static double HighestOf(Section section, int pitch)
    {
        var highest = section.Pitches[pitch].Hz;
        var notes = section.Notes.AsSpan();
        for (var n = 0; n + 1 < notes.Length; n++)
        {
            if (notes[n].Joining == Joining.Glide && (notes[n].PitchIndex == pitch || notes[n + 1].PitchIndex == pitch))
            {
                highest = Math.Max(highest, Math.Max(section.Pitches[notes[n].PitchIndex].Hz, section.Pitches[notes[n + 1].PitchIndex].Hz));
            }
        }

        return highest;
    }
}

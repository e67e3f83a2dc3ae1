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
    private Tone? _tone;
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
                Begin(start, plan.EndFrameOfNote(_section, _note));
                _sounds = true;
            }

            _tone!.AddTo(From(block, Math.Max(start, Frame)));
            if (_tone.Left > 0)
            {
                return;
            }

            _sounds = false;
            _note++;
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

    private void Begin(long start, long end)
    {
        var section = plan.Score.Sections[_section];
        var pitch = section.Notes[_note].PitchIndex;
        var hz = section.Pitches[pitch].Hz;
        var table = TableOf(section, pitch);
        _tone ??= new Tone(table);
        _tone.Table = table;
        var rate = plan.Options.SampleRate;
        _tone.Start(hz / rate, _gain, 1, ToneShape.Of(end - start, AttackSeconds, ReleaseSeconds, rate));
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
            amplitudes = amplitudes[..WaveTable.HarmonicsOf(hz, plan.Options.SampleRate)];
            Spectrum.Voice(hz, amplitudes);
            _tables[pitch].Fill(_sine, amplitudes);
            _filled[pitch] = true;
        }

        return _tables[pitch];
    }
}

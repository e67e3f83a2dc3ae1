namespace Warmup.Audio;

/// <summary>The guide tone: a soft vowel, joined from note to note in a breath, and nothing between breaths.</summary>
internal sealed class VoicePart(WavPlan plan) : SoundPart
{
    // The project's own settings: how far a change of pitch and a repeated pitch reach into each of the two notes.
    private const double LegatoSeconds = 0.02;
    private const double AgainSeconds = 0.03;

    private readonly double[] _sine = WaveTable.Sine();
    private readonly List<WaveTable> _tables = [];
    private readonly SungTone _tone = new(GainBudget.Voice * GainBudget.Factor(plan.Options.VoiceDecibels), plan.Options.SampleRate);
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
                Begin(plan.Score.Sections[_section], start);
                _sounds = true;
            }

            _tone.AddTo(From(block, Math.Max(start, Frame)));
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

    private void Begin(Section section, long start)
    {
        var note = section.Notes[_note];
        _tone.Sing(new SungNote(
            EndOf(_note) - start,
            plan.FrameOf(_section, note.Middle) - start,
            section.Pitches[note.PitchIndex].Hz / plan.Options.SampleRate,
            TableOf(section, note.PitchIndex),
            note.Loudness == Loudness.SwellAndFade,
            _note > 0 ? NeighbourOf(section, _note - 1, note.PitchIndex, isBefore: true) : default,
            NeighbourOf(section, _note, note.PitchIndex, isBefore: false)));
    }

    private long EndOf(int note) => plan.EndFrameOfNote(_section, note);

    /// <summary>How a pitch is joined to the other note of a pair.</summary>
    private Neighbour NeighbourOf(Section section, int first, int pitch, bool isBefore)
    {
        var joint = JointAfter(section.Notes.AsSpan(), first);
        if (joint == VoiceJoint.None)
        {
            return default;
        }

        var other = section.Notes[isBefore ? first : first + 1].PitchIndex;
        return new Neighbour(
            joint,
            section.Pitches[other].Hz / section.Pitches[pitch].Hz,
            TableOf(section, other),
            joint == VoiceJoint.Slide && isBefore ? 0 : HalfOf(section, joint, first));
    }

    /// <summary>How a note is joined to the next one of its section.</summary>
    private static VoiceJoint JointAfter(ReadOnlySpan<ScoreNote> notes, int note) =>
        notes[note].Joining == Joining.Glide ? VoiceJoint.Slide
        : note + 1 == notes.Length || notes[note].SoundEndSteps != notes[note + 1].OnsetSteps ? VoiceJoint.None
        : notes[note].PitchIndex == notes[note + 1].PitchIndex ? VoiceJoint.Again
        : VoiceJoint.Legato;

    /// <summary>The frames that a joint takes of the note before it: of a slide, from the note's middle; of others, at most a quarter of either note.</summary>
    private long HalfOf(Section section, VoiceJoint joint, int note)
    {
        var (start, end) = (plan.FrameOfNote(_section, note), EndOf(note));
        if (joint == VoiceJoint.Slide)
        {
            return end - plan.FrameOf(_section, section.Notes[note].Middle);
        }

        var most = (long)((joint == VoiceJoint.Again ? AgainSeconds : LegatoSeconds) * plan.Options.SampleRate);
        return Math.Min(most, Math.Min(end - start, EndOf(note + 1) - end) / 4);
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

            // Every pitch is as loud as the others, where the share allows it.
            var power = _tables[pitch].Fill(_sine, amplitudes, hz);
            _tables[pitch].Lower(Math.Sqrt(KWeighting.Power(GainBudget.VoiceLoudness) / power) / GainBudget.Voice);
            _filled[pitch] = true;
        }

        return _tables[pitch];
    }

    /// <summary>The highest frequency at which the period of a pitch is heard: it goes over to other pitches and they to it.</summary>
    private static double HighestOf(Section section, int pitch)
    {
        var highest = section.Pitches[pitch].Hz;
        var notes = section.Notes.AsSpan();
        for (var n = 0; n + 1 < notes.Length; n++)
        {
            if ((notes[n].PitchIndex == pitch || notes[n + 1].PitchIndex == pitch) && JointAfter(notes, n) is VoiceJoint.Slide or VoiceJoint.Legato)
            {
                highest = Math.Max(highest, Math.Max(section.Pitches[notes[n].PitchIndex].Hz, section.Pitches[notes[n + 1].PitchIndex].Hz));
            }
        }

        return highest;
    }
}

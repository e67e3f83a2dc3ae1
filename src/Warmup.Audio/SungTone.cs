namespace Warmup.Audio;

/// <summary>How a note is joined to its neighbour in the same breath.</summary>
internal enum VoiceJoint
{
    /// <summary>Not at all: there is silence between them.</summary>
    None,

    /// <summary>The pitch goes over quickly; the sound does not pause.</summary>
    Legato,

    /// <summary>The same pitch again: the sound becomes softer for a moment.</summary>
    Again,

    /// <summary>A slide, which begins in the middle of the first note and has arrived where the second begins.</summary>
    Slide,
}

/// <summary>The joint between a note and one neighbour.</summary>
/// <param name="Joint">How they are joined.</param>
/// <param name="Ratio">The neighbour's frequency in terms of the note's own.</param>
/// <param name="Table">The neighbour's period.</param>
/// <param name="Half">How much of the joint lies within the note, in frames.</param>
internal readonly record struct Neighbour(VoiceJoint Joint, double Ratio, WaveTable? Table, long Half);

/// <summary>A note to be sung; times are frames from its beginning.</summary>
/// <param name="Length">Its length.</param>
/// <param name="Middle">Where a swell is loudest.</param>
/// <param name="Step">Its frequency in turns a frame.</param>
/// <param name="Table">Its period.</param>
/// <param name="IsSwelling">Whether it begins and ends softly.</param>
/// <param name="Before">The joint at its beginning.</param>
/// <param name="After">The joint at its end.</param>
internal readonly record struct SungNote(
    long Length, long Middle, double Step, WaveTable Table, bool IsSwelling, in Neighbour Before, in Neighbour After);

/// <summary>
/// The sound of a voice, note after note: in one breath it is one tone whose phase never jumps, so that nothing is struck anew where the pitch
/// changes.
/// </summary>
/// <remarks>
/// A change of pitch follows half a cosine in cents and is half-way where the next note begins; a slide is a straight line in cents. The two
/// periods are read at the same phase and mixed, so that neither the wave nor its sum has a jump, and no mixture is higher than 1.
/// </remarks>
internal sealed class SungTone(double gain, int sampleRate)
{
    // The project's own settings: soft edges, short enough for the fastest drills; 8 dB softer for a moment where a pitch comes again; 12 dB softer at
    // both ends of a swell; a level takes this long to change where nothing else leads it.
    private const double AttackSeconds = 0.025;
    private const double ReleaseSeconds = 0.035;
    private const double Again = 0.4;
    private const double Softest = 0.25;
    private const double LevelSeconds = 0.03;

    private readonly double _mostChange = 1 / (LevelSeconds * sampleRate);
    private SungNote _note;
    private ToneShape _shape;
    private long _steady;
    private long _steadyEnd;
    private double _phase;
    private double _level;
    private long _at;

    /// <summary>The frames of the note still to come.</summary>
    public long Left => _note.Length - _at;

    /// <summary>Begins a note, or goes on with it where it is joined to the one before.</summary>
    public void Sing(in SungNote note)
    {
        _note = note;
        _at = 0;
        var edges = ToneShape.Of(note.Length, AttackSeconds, ReleaseSeconds, sampleRate);
        var begins = note.Before.Joint == VoiceJoint.None;
        _shape = new ToneShape(note.Length, begins ? edges.Attack : 0, note.After.Joint == VoiceJoint.None ? edges.Release : 0);
        (_steady, _steadyEnd) = note.IsSwelling
            ? (note.Length, note.Length)
            : (Math.Max(_shape.Attack, note.Before.Half), note.Length - Math.Max(_shape.Release, note.After.Half));
        if (begins)
        {
            _phase = 0;
            _level = LevelAt(0);
        }
    }

    /// <summary>Adds the next frames to a block, at most as many as are still to come.</summary>
    public void AddTo(Span<double> block)
    {
        block = Left < block.Length ? block[..(int)Left] : block;
        while (!block.IsEmpty)
        {
            var isSteady = _at >= _steady && _at < _steadyEnd && _level >= 1;
            var until = _at < _steady ? _steady : _at < _steadyEnd ? _steadyEnd : _note.Length;
            var part = block[..(int)Math.Min(block.Length, until - _at)];
            if (isSteady)
            {
                AddSteady(part);
            }
            else
            {
                AddShaped(part);
            }

            _at += part.Length;
            block = block[part.Length..];
        }
    }

    private void AddSteady(Span<double> block)
    {
        var (points, phase, step) = (_note.Table.Points, _phase, _note.Step);
        for (var i = 0; i < block.Length; i++)
        {
            block[i] += WaveTable.At(points, phase) * gain;
            phase += step;
            if (phase >= 1)
            {
                phase -= 1;
            }
        }

        _phase = phase;
    }

    private void AddShaped(Span<double> block)
    {
        for (var i = 0; i < block.Length; i++)
        {
            var at = _at + i;
            var value = _note.Table.At(_phase);
            var step = _note.Step;
            if (at < _note.Before.Half && _note.Before.Joint == VoiceJoint.Legato)
            {
                Turn(_note.Before, 0.5 - (0.5 * Math.Sin(Math.PI / 2 * at / _note.Before.Half)), ref value, ref step);
            }
            else if (_note.Length - at is var left && left <= _note.After.Half && _note.After.Joint is VoiceJoint.Legato or VoiceJoint.Slide)
            {
                var way = 1 - ((double)left / _note.After.Half);
                Turn(_note.After, _note.After.Joint == VoiceJoint.Slide ? way : 0.5 - (0.5 * Math.Cos(Math.PI / 2 * way)), ref value, ref step);
            }

            _level += Math.Clamp(LevelAt(at) - _level, -_mostChange, _mostChange);
            block[i] += value * gain * _level * _shape.At(at) * Dip(_note.Before, at) * Dip(_note.After, _note.Length - at);
            _phase += step;
            _phase -= _phase >= 1 ? 1 : 0;
        }
    }

    /// <summary>Turns a value and a frequency some way to the neighbour's.</summary>
    private void Turn(in Neighbour to, double way, ref double value, ref double step)
    {
        value += way * (to.Table!.At(_phase) - value);
        step *= Math.Pow(to.Ratio, way);
    }

    /// <summary>How soft the sound is at a distance from where the same pitch comes again.</summary>
    private static double Dip(in Neighbour neighbour, long distance) => neighbour.Joint == VoiceJoint.Again && distance < neighbour.Half
        ? 1 - ((1 - Again) * (0.5 + (0.5 * Math.Cos(Math.PI * distance / neighbour.Half))))
        : 1;

    /// <summary>The level at a frame: in a swell, halves of a cosine up to its middle and down again.</summary>
    private double LevelAt(long frame)
    {
        if (!_note.IsSwelling)
        {
            return 1;
        }

        var (from, length) = frame < _note.Middle ? (frame, _note.Middle) : (_note.Length - frame, _note.Length - _note.Middle);
        return Softest + ((1 - Softest) * (0.5 - (0.5 * Math.Cos(Math.PI * from / length))));
    }
}

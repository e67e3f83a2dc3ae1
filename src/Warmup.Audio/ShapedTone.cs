namespace Warmup.Audio;

/// <summary>A note within a tone that slides from note to note or swells; times are frames from the tone's beginning.</summary>
/// <param name="Start">Where the note begins.</param>
/// <param name="Middle">Where its slide begins and its swell is loudest.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Step">Its frequency in turns a frame.</param>
/// <param name="NextStep">The frequency to which it slides; its own where it does not slide.</param>
/// <param name="Table">Its period.</param>
/// <param name="NextTable">The period to which it slides.</param>
/// <param name="IsSwelling">Whether it begins and ends softly.</param>
internal readonly record struct TonePart(
    long Start, long Middle, long End, double Step, double NextStep, WaveTable Table, WaveTable NextTable, bool IsSwelling)
{
    public bool IsSliding => !ReferenceEquals(Table, NextTable);
}

/// <summary>
/// A tone whose pitch and level move: one sound from the first of its notes to the last, so that nothing begins anew where a slide arrives.
/// </summary>
/// <remarks>
/// A slide multiplies the frequency by the same factor each frame, which is even in cents, and begins and ends on the exact frequencies. Its
/// two periods are read at the same phase and mixed, so that neither the wave nor its sum has a jump, and no mixture is higher than 1.
/// </remarks>
internal sealed class ShapedTone
{
    // The project's own settings: 12 dB softer at both ends of a swell; a level takes this long to change where nothing else leads it.
    private const double Softest = 0.25;
    private const double LevelSeconds = 0.03;

    private readonly List<TonePart> _parts = [];
    private ToneShape _shape;
    private double _gain;
    private double _mostChange;
    private double _phase;
    private double _step;
    private double _factor;
    private double _level;
    private long _at;
    private int _part;

    /// <summary>The frames still to come.</summary>
    public long Left => _shape.Length - _at;

    /// <summary>Begins a tone without parts.</summary>
    public void Clear() => _parts.Clear();

    /// <summary>Adds the next note.</summary>
    public void Add(in TonePart part) => _parts.Add(part);

    /// <summary>Begins the tone.</summary>
    /// <param name="gain">The greatest height.</param>
    /// <param name="shape">The length and the edges.</param>
    /// <param name="sampleRate">Frames a second.</param>
    public void Start(double gain, ToneShape shape, int sampleRate)
    {
        (_gain, _shape, _mostChange) = (gain, shape, 1 / (LevelSeconds * sampleRate));
        (_phase, _at, _part) = (0, 0, 0);
        _level = LevelAt(_parts[0], 0);
        Enter();
    }

    /// <summary>Adds the next frames to a block, at most as many as are still to come.</summary>
    public void AddTo(Span<double> block)
    {
        block = Left < block.Length ? block[..(int)Left] : block;
        for (var i = 0; i < block.Length; i++, _at++)
        {
            while (_part + 1 < _parts.Count && _at >= _parts[_part].End)
            {
                _part++;
                Enter();
            }

            var part = _parts[_part];
            var value = part.Table.At(_phase);
            if (part.IsSliding && _at >= part.Middle)
            {
                var way = (double)(_at - part.Middle) / (part.End - part.Middle);
                value += way * (part.NextTable.At(_phase) - value);
                _step *= _factor;
            }

            _level += Math.Clamp(LevelAt(part, _at) - _level, -_mostChange, _mostChange);
            block[i] += value * _gain * _level * _shape.At(_at);
            _phase += _step;
            _phase -= _phase >= 1 ? 1 : 0;
        }
    }

    private void Enter()
    {
        var part = _parts[_part];
        _step = part.Step;
        _factor = part.IsSliding ? Math.Pow(part.NextStep / part.Step, 1.0 / (part.End - part.Middle)) : 1;
    }

    /// <summary>The level of a note at a frame: halves of a cosine up to its middle and down again.</summary>
    private static double LevelAt(in TonePart part, long frame)
    {
        if (!part.IsSwelling)
        {
            return 1;
        }

        var (from, length) = frame < part.Middle ? (frame - part.Start, part.Middle - part.Start) : (part.End - frame, part.End - part.Middle);
        return Softest + ((1 - Softest) * (0.5 - (0.5 * Math.Cos(Math.PI * from / length))));
    }
}

namespace Warmup.Audio;

/// <summary>The length of a tone and how it begins and ends, all in frames.</summary>
/// <param name="Length">The length.</param>
/// <param name="Attack">How long it rises, at most half the length.</param>
/// <param name="Release">How long it falls at its end, at most half the length.</param>
internal readonly record struct ToneShape(long Length, long Attack, long Release)
{
    /// <summary>A shape whose edges take at most a quarter of a short tone each.</summary>
    public static ToneShape Of(long length, double attackSeconds, double releaseSeconds, int sampleRate) => new(
        length,
        Math.Min((long)(attackSeconds * sampleRate), length / 4),
        Math.Min((long)(releaseSeconds * sampleRate), length / 4));

    /// <summary>The height of the shape at a frame, 0 to 1: halves of a cosine, which begin and end without a corner.</summary>
    public double At(long frame)
    {
        var height = 1.0;
        if (frame < Attack)
        {
            height *= 0.5 - (0.5 * Math.Cos(Math.PI * (frame + 0.5) / Attack));
        }

        var left = Length - 1 - frame;
        if (left < Release)
        {
            height *= 0.5 - (0.5 * Math.Cos(Math.PI * (left + 0.5) / Release));
        }

        return height;
    }
}

/// <summary>A tone that sounds: each block continues where the last one ended.</summary>
/// <remarks>
/// The phase is counted in turns from 0 to 1, in double precision: the frequency is rounded once (to 1 part in 10^16), the phase once a
/// frame, by at most 2^-53 turns, and the turn is taken off without rounding. A tone of 20 Hz at 48 kHz goes 4.2e-4 turns a frame, so
/// its frequency is off by less than 3e-13 of itself, 5e-10 cents, however long it lasts; a higher tone by less.
/// </remarks>
internal sealed class Tone(WaveTable table)
{
    private double _phase;
    private double _step;
    private double _gain;
    private double _decay;
    private long _at;
    private ToneShape _shape;

    /// <summary>The period that sounds.</summary>
    public WaveTable Table { get; set; } = table;

    /// <summary>The frames still to come.</summary>
    public long Left => _shape.Length - _at;

    /// <summary>Begins a tone.</summary>
    /// <param name="step">The frequency in turns a frame, less than 1/2.</param>
    /// <param name="gain">The greatest height.</param>
    /// <param name="decay">The part of the height that remains after a frame: 1 for a tone that does not fade.</param>
    /// <param name="shape">The length and the edges.</param>
    public void Start(double step, double gain, double decay, ToneShape shape)
    {
        _phase = 0;
        _step = step;
        _gain = gain;
        _decay = decay;
        _at = 0;
        _shape = shape;
    }

    /// <summary>Adds the next frames to a block, at most as many as are still to come.</summary>
    public void AddTo(Span<double> block)
    {
        if (Left < block.Length)
        {
            block = block[..(int)Left];
        }

        var points = Table.Points;
        var phase = _phase;
        var step = _step;
        var gain = _gain;
        var fall = _shape.Length - _shape.Release;
        for (var i = 0; i < block.Length; i++)
        {
            var value = WaveTable.At(points, phase) * gain;
            var frame = _at + i;
            block[i] += frame >= _shape.Attack && frame < fall ? value : value * _shape.At(frame);
            gain *= _decay;
            phase += step;
            if (phase >= 1)
            {
                phase -= 1;
            }
        }

        _phase = phase;
        _gain = gain;
        _at += block.Length;
    }
}

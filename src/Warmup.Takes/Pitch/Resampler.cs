using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using MathNet.Numerics;

namespace Warmup.Takes;

/// <summary>
/// Brings sound to another rate: each new sample is the sum of the old ones around it, weighed by a sinc in a Kaiser window. What lies above the
/// new rate's reach is taken out first, but for a band beside it that no harmonic is looked for in.
/// </summary>
internal sealed class Resampler
{
    // Harmonics are looked for up to 4,700 Hz. What is kept above falls back onto frequencies above this one.
    private const double KeptHz = 5_500;

    // How far below the sound what falls back lies, in dB, and the form of the window that does it (Kaiser's formulas, from memory).
    private const double Below = 80;
    private const double Beta = 0.1102 * (Below - 8.7);

    // Rates that have little in common would need a kernel for every sample: the nearest of these places will do.
    private const int MostPlaces = 1024;

    private readonly int _old;
    private readonly int _new;
    private readonly int _places;
    private readonly int _taps;
    private readonly float[] _kernels;
    private float[] _held = [];
    private float[] _made = [];
    private int _count;
    private int _at;
    private int _part;

    /// <param name="from">The rate of what comes in, in Hz.</param>
    /// <param name="to">The rate of what goes out, in Hz.</param>
    public Resampler(int from, int to)
    {
        var common = (int)Euclid.GreatestCommonDivisor(from, to);
        (_old, _new) = (from / common, to / common);
        _places = Math.Min(_new, MostPlaces);
        var (kept, lost) = (Math.Min(KeptHz, 0.45 * from), Math.Min(to - KeptHz, 0.55 * from));
        var taps = (Below - 8) / (2.285 * 2 * Math.PI * (lost - kept) / from);
        _taps = (int)Math.Ceiling(taps / Vector256<float>.Count) * Vector256<float>.Count;
        _kernels = new float[_places * _taps];
        for (var p = 0; p < _places; p++)
        {
            Fill(_kernels.AsSpan(p * _taps, _taps), p / (double)_places, (kept + lost) / from);
        }

        // The first new sample stands where the first old one does.
        _count = (_taps / 2) - 1;
        _held = new float[_count];
    }

    /// <summary>The new samples up to the last for which all old ones around it are there; valid until the next call.</summary>
    public ReadOnlyMemory<float> Next(float[] samples)
    {
        if (_old == _new)
        {
            return samples;
        }

        if (_held.Length < _count + samples.Length)
        {
            Array.Resize(ref _held, _count + samples.Length);
            _made = new float[(int)((long)_held.Length * _new / _old) + 1];
        }

        samples.CopyTo(_held, _count);
        _count += samples.Length;
        var made = 0;
        for (; _at + _taps <= _count; made++)
        {
            _made[made] = Sum(_at, _part * _places / _new * _taps);
            _part += _old;
            _at += _part / _new;
            _part %= _new;
        }

        _held.AsSpan(Math.Min(_at, _count), Math.Max(0, _count - _at)).CopyTo(_held);
        (_at, _count) = (Math.Max(0, _at - _count), Math.Max(0, _count - _at));
        return _made.AsMemory(0, made);
    }

    /// <summary>The last new samples: after the end there is silence.</summary>
    public ReadOnlyMemory<float> End() => _old == _new ? default : Next(new float[_taps / 2]);

    private static void Fill(Span<float> kernel, double part, double cutoff)
    {
        var sum = 0.0;
        for (var t = 0; t < kernel.Length; t++)
        {
            var off = t + 1 - (kernel.Length / 2) - part;
            var within = 2 * off / kernel.Length;
            var window = SpecialFunctions.BesselI0(Beta * Math.Sqrt(Math.Max(0, 1 - (within * within))));
            var angle = Math.PI * cutoff * off;
            kernel[t] = (float)(window * (angle == 0 ? 1 : Math.Sin(angle) / angle));
            sum += kernel[t];
        }

        foreach (ref var weight in kernel)
        {
            weight = (float)(weight / sum);
        }
    }

    /// <summary>The sum of the old samples from a place, each times its weight.</summary>
    private float Sum(int at, int kernel)
    {
        // Eight sums side by side, on every processor the same: so the result does not depend on the machine.
        ref var samples = ref MemoryMarshal.GetReference(_held.AsSpan(at, _taps));
        ref var weights = ref MemoryMarshal.GetReference(_kernels.AsSpan(kernel, _taps));
        var sum = Vector256<float>.Zero;
        for (var t = 0; t < _taps; t += Vector256<float>.Count)
        {
            sum += Vector256.LoadUnsafe(ref samples, (nuint)t) * Vector256.LoadUnsafe(ref weights, (nuint)t);
        }

        return Vector256.Sum(sum);
    }
}

using NWaves.Transforms;

namespace Warmup.Takes;

/// <summary>
/// Finds the pitches that a frame of sound may have, by what its harmonics and the gaps between them hold of the spectrum, and then exactly by
/// the frequencies of the harmonics' peaks. It weighs the spectrum, not the period: a voice that is tuned justly to its drone shares a period
/// with it.
/// </summary>
internal sealed class Harmonics
{
    /// <summary>Samples of a frame: 64 ms.</summary>
    public const int Window = 1024;

    /// <summary>Powers of a frame's spectrum.</summary>
    public const int Powers = Bins + 2;

    private const int Transform = 2 * Window;
    private const double BinHz = MonoSound.Rate / (double)Transform;
    private const int Bins = 640;
    private const double LowestHz = 62;
    private const double HighestHz = 1_500;
    private const double HighestHarmonicHz = 4_700;
    private const int MostHarmonics = 12;
    private const double GridCents = 15;
    private const float OctaveShare = 0.4f;

    // Something is left of all that sounds: the voice may have been there all the time itself.
    private const float LeastLeft = 0.05f;

    // Where a voice is heard first, from 60 Hz to 1 kHz, and how far to either side a harmonic reaches: half of the window's lobe.
    private const int LowestRise = 8;
    private const int HighestRise = 128;
    private const int Lobe = 3;

    private readonly RealFft _fft = new(Transform);
    private readonly float[] _window = new float[Window];
    private readonly float[] _padded = new float[Transform];
    private readonly float[] _re = new float[Transform];
    private readonly float[] _im = new float[Transform];
    private readonly float[] _power = new float[Powers];
    private readonly float[] _left = new float[Powers];
    private readonly float[] _root = new float[Powers];
    private readonly double[] _offsets = new double[65];
    private readonly double[] _gridHz;
    private readonly int[] _first;
    private readonly ushort[] _bins;
    private readonly float[] _weights;
    private readonly float[] _salience;
    private readonly PitchCandidate[] _found = new PitchCandidate[PitchTrack.Candidates];
    private readonly double[] _harmonicHz = new double[MostHarmonics];
    private readonly double[] _harmonicWeight = new double[MostHarmonics];

    public Harmonics()
    {
        for (var i = 0; i < Window; i++)
        {
            _window[i] = (float)(0.5 - (0.5 * Math.Cos(2 * Math.PI * (i + 0.5) / Window)));
        }

        var count = (int)(1200 * Math.Log2(HighestHz / LowestHz) / GridCents) + 1;
        _gridHz = new double[count];
        _first = new int[count + 1];
        _salience = new float[count];
        var bins = new List<ushort>();
        var weights = new List<float>();
        for (var g = 0; g < count; g++)
        {
            var hz = LowestHz * Math.Pow(2, g * GridCents / 1200);
            _gridHz[g] = hz;
            _first[g] = bins.Count;
            Kernel(hz, bins, weights);
        }

        _first[count] = bins.Count;
        _bins = [.. bins];
        _weights = [.. weights];
        FillOffsets();
    }

    /// <summary>The level of the frame in dB of full scale.</summary>
    public float Level { get; private set; }

    /// <summary>How far the harmonics of the frame's strongest pitch rise above what stays, below 1 kHz, in dB.</summary>
    public float Rise { get; private set; }

    /// <summary>Transforms a frame of <see cref="Window"/> samples.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="powers">Takes the <see cref="Powers"/> of its spectrum.</param>
    public void Transformed(ReadOnlySpan<float> samples, Span<float> powers)
    {
        Array.Clear(_padded);
        for (var i = 0; i < Window; i++)
        {
            _padded[i] = samples[i] * _window[i];
        }

        _fft.Direct(_padded, _re, _im);
        for (var k = 0; k < powers.Length; k++)
        {
            powers[k] = (_re[k] * _re[k]) + (_im[k] * _im[k]);
        }
    }

    /// <summary>The candidates of a frame, the strongest first; valid until the next call.</summary>
    /// <param name="powers">The powers of its spectrum.</param>
    /// <param name="stays">Those of what would sound in it if nobody sang: they are taken off.</param>
    public ReadOnlySpan<PitchCandidate> Of(ReadOnlySpan<float> powers, ReadOnlySpan<float> stays)
    {
        var sum = 0.0;
        var rootSum = 0.0;
        for (var k = 1; k < _power.Length; k++)
        {
            var power = powers[k];
            _power[k] = power;
            _left[k] = Math.Max(LeastLeft * power, power - stays[k]);
            var root = MathF.Sqrt(MathF.Sqrt(_left[k]));
            _root[k] = root;
            if (k * BinHz >= 50)
            {
                sum += power;
                rootSum += root * root;
            }
        }

        // A sine of full scale has -3 dB.
        Level = (float)(10 * Math.Log10((sum / (0.375 * Window * Transform / 2)) + 1e-12));
        Array.Clear(_found);
        if (Level > -90)
        {
            Weigh(rootSum);
            PickPeaks();
            WeakenBelowOctaves();
        }

        Rise = RiseOf(stays);
        return _found;
    }

    /// <summary>Where a pitch's harmonics lie (positive weights) and the middles between them (negative).</summary>
    private static void Kernel(double hz, List<ushort> bins, List<float> weights)
    {
        var harmonics = Math.Min(MostHarmonics, (int)(HighestHarmonicHz / hz));
        var norm = 0.0;
        for (var h = 1; h <= harmonics; h++)
        {
            norm += 1.0 / h;
        }

        norm = Math.Sqrt(norm);
        for (var h = 1; h <= harmonics; h++)
        {
            bins.Add((ushort)Math.Round(h * hz / BinHz));
            weights.Add((float)(1 / Math.Sqrt(h) / norm));
        }

        for (var h = 0; h < harmonics; h++)
        {
            var before = h == 0 ? 0 : 1 / Math.Sqrt(h);
            bins.Add((ushort)Math.Round((h + 0.5) * hz / BinHz));
            weights.Add((float)(-0.5 * (before + (1 / Math.Sqrt(h + 1))) / norm));
        }
    }

    private float RiseOf(ReadOnlySpan<float> stays)
    {
        var all = 1e-9;
        foreach (var power in stays[LowestRise..HighestRise])
        {
            all += power;
        }

        var rise = 0.0;
        var hz = Pitches.Hz(_found[0].Cents);
        for (var at = hz; _found[0].Strength > 0 && at < (HighestRise - Lobe) * BinHz; at += hz)
        {
            var k = (int)Math.Round(at / BinHz);
            for (var i = k - Lobe; i <= k + Lobe; i++)
            {
                rise += _left[i];
            }
        }

        return (float)(10 * Math.Log10((rise / all) + 1e-6));
    }

    private void Weigh(double rootSum)
    {
        // A lobe of the window covers about four bins.
        var scale = (float)(2 / Math.Sqrt(rootSum + 1e-9));
        for (var g = 0; g < _salience.Length; g++)
        {
            var sum = 0f;
            for (var i = _first[g]; i < _first[g + 1]; i++)
            {
                sum += _root[_bins[i]] * _weights[i];
            }

            _salience[g] = sum * scale;
        }
    }

    private void PickPeaks()
    {
        for (var g = 1; g < _salience.Length - 1; g++)
        {
            var here = _salience[g];
            if (here <= 0.05f || here < _salience[g - 1] || here <= _salience[g + 1] || here <= _found[^1].Strength)
            {
                continue;
            }

            var cents = Refined(_gridHz[g]);
            var at = _found.Length - 1;
            while (at > 0 && _found[at - 1].Strength < here)
            {
                _found[at] = _found[at - 1];
                at--;
            }

            _found[at] = new PitchCandidate((float)cents, here);
        }
    }

    /// <summary>
    /// Takes from each pitch a share of what its upper octave has: where that is strong, the odd harmonics are weak, and the lower pitch is
    /// the octave's shadow or a drone's.
    /// </summary>
    private void WeakenBelowOctaves()
    {
        Span<float> shadows = stackalloc float[PitchTrack.Candidates];
        for (var k = 0; k < _found.Length; k++)
        {
            foreach (var other in _found)
            {
                if (Math.Abs(other.Cents - _found[k].Cents - 1200) < 40)
                {
                    shadows[k] = Math.Max(shadows[k], OctaveShare * other.Strength);
                }
            }
        }

        for (var k = 0; k < _found.Length; k++)
        {
            _found[k] = _found[k] with { Strength = Math.Max(0, _found[k].Strength - shadows[k]) };
        }

        // A stable order, the strongest first; those without strength keep their place at the end.
        for (var k = 1; k < _found.Length; k++)
        {
            for (var j = k; j > 0 && _found[j].Strength > _found[j - 1].Strength; j--)
            {
                (_found[j], _found[j - 1]) = (_found[j - 1], _found[j]);
            }
        }
    }

    /// <summary>The pitch from the peaks of its harmonics, in cents above MIDI note 0.</summary>
    private double Refined(double hz)
    {
        var count = 0;
        for (var h = 1; h <= MostHarmonics && h * hz < HighestHarmonicHz; h++)
        {
            var near = h * hz / BinHz;
            var reach = Math.Max(1.5, near * 0.015);
            var (low, high) = ((int)Math.Ceiling(near - reach), (int)Math.Floor(near + reach));
            var best = -1;
            for (var k = Math.Max(2, low); k <= high && k < Bins; k++)
            {
                if (_power[k] >= _power[k - 1] && _power[k] > _power[k + 1] && (best < 0 || _power[k] > _power[best]))
                {
                    best = k;
                }
            }

            if (best < 0)
            {
                continue;
            }

            _harmonicHz[count] = (best + Offset(best)) * BinHz / h;
            _harmonicWeight[count] = _left[best] / _power[best] * _left[best] * (double)h * h;
            count++;
        }

        if (count == 0)
        {
            return Cents(hz);
        }

        var f = Mean(count, hz, 1200);
        f = Mean(count, f, 40);
        f = Mean(count, f, 15);
        return Cents(f);
    }

    /// <summary>The weighted mean of the harmonics' fundamentals that lie near a frequency.</summary>
    private double Mean(int count, double hz, double withinCents)
    {
        var (sum, weight) = (0.0, 0.0);
        var within = hz * ((withinCents / 1200) * 0.6931);
        for (var i = 0; i < count; i++)
        {
            if (Math.Abs(_harmonicHz[i] - hz) <= within)
            {
                sum += _harmonicHz[i] * _harmonicWeight[i];
                weight += _harmonicWeight[i];
            }
        }

        return weight > 0 ? sum / weight : hz;
    }

    private static double Cents(double hz) => Pitches.Cents(hz);

    /// <summary>How far beside its bin a peak lies, from the bins around it.</summary>
    private double Offset(int k)
    {
        var (a, b, c) = (Math.Log(_power[k - 1] + 1e-20), Math.Log(_power[k] + 1e-20), Math.Log(_power[k + 1] + 1e-20));
        var bend = a - (2 * b) + c;
        var parabola = bend < 0 ? Math.Clamp(0.5 * (a - c) / bend, -0.6, 0.6) : 0;
        var at = (parabola + 0.64) * 50;
        var i = (int)at;
        return _offsets[i] + ((at - i) * (_offsets[i + 1] - _offsets[i]));
    }

    /// <summary>What the parabola through three bins of the window's own lobe says of each true offset, turned round.</summary>
    private void FillOffsets()
    {
        static double Lobe(double x) => Math.Abs(x) < 1e-9 ? 1 : Math.Abs(Math.Abs(x) - 1) < 1e-9 ? 0.5 : Math.Sin(Math.PI * x) / (Math.PI * x) / (1 - (x * x));
        static double Said(double d)
        {
            var (a, b, c) = (Math.Log(Math.Abs(Lobe((-1 - d) / 2))), Math.Log(Math.Abs(Lobe(-d / 2))), Math.Log(Math.Abs(Lobe((1 - d) / 2))));
            return 0.5 * (a - c) / (a - (2 * b) + c);
        }

        for (var i = 0; i < _offsets.Length; i++)
        {
            var said = (i / 50.0) - 0.64;
            var (low, high) = (-0.9, 0.9);
            for (var n = 0; n < 50; n++)
            {
                var middle = (low + high) / 2;
                (low, high) = Said(middle) < said ? (middle, high) : (low, middle);
            }

            _offsets[i] = (low + high) / 2;
        }
    }
}

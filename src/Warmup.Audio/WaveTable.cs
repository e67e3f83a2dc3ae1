using System.Runtime.CompilerServices;

namespace Warmup.Audio;

/// <summary>One period of a tone as the sum of its harmonics, none of which lies above the band that a sample rate allows.</summary>
/// <remarks>
/// The highest harmonic has 64 points a period. Read with cubic interpolation, its error is below 3e-6 of that harmonic (-110 dB), and
/// the tone passes the greatest of its points by at most 1/cos(64 pi / 4096), 0.13 % (Ehlich and Zeller 1964, from memory).
/// </remarks>
internal sealed class WaveTable
{
    /// <summary>The points of a period.</summary>
    public const int Size = 4096;

    /// <summary>The most harmonics.</summary>
    public const int MostHarmonics = 64;

    /// <summary>The part of the band below half the sample rate that harmonics may use.</summary>
    public const double Band = 0.9;

    // One point before the period and two after it, so that the interpolation need not wrap.
    private readonly double[] _points = new double[Size + 3];

    /// <summary>The points: the first is the one before the period.</summary>
    public double[] Points => _points;

    /// <summary>The height at a phase, from 0 up to 1, between the points of a period.</summary>
    public double At(double phase) => At(_points, phase);

    /// <inheritdoc cref="At(double)"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double At(double[] points, double phase)
    {
        var x = phase * Size;
        var k = (int)x;
        return Between(points[k], points[k + 1], points[k + 2], points[k + 3], x - k);
    }

    /// <summary>The number of harmonics that fit.</summary>
    /// <param name="hz">The fundamental in Hz.</param>
    /// <param name="sampleRate">Frames a second.</param>
    public static int HarmonicsOf(double hz, int sampleRate) => (int)Math.Min(MostHarmonics, HighestHz(sampleRate) / hz);

    /// <summary>The highest frequency of a harmonic, in Hz.</summary>
    public static double HighestHz(int sampleRate) => Band * sampleRate / 2;

    /// <summary>Fills the period with harmonics, to a peak of 1; without any it is silent. Gives its weighted power (<see cref="KWeighting"/>).</summary>
    /// <param name="sine">A period of a sine, <see cref="Size"/> points.</param>
    /// <param name="amplitudes">The amplitude of each harmonic from the fundamental on, at most <see cref="MostHarmonics"/>.</param>
    /// <param name="hz">The fundamental in Hz.</param>
    public double Fill(ReadOnlySpan<double> sine, ReadOnlySpan<double> amplitudes, double hz)
    {
        var period = _points.AsSpan(1, Size);
        period.Clear();
        var power = 0.0;
        foreach (var amplitude in amplitudes)
        {
            power += amplitude * amplitude;
        }

        // The phases follow Schroeder (1970): they spread the harmonics over the period, so that a low peak carries much sound.
        var phase = 0.0;
        var below = 0.0;
        for (var h = 1; h <= amplitudes.Length; h++)
        {
            var amplitude = amplitudes[h - 1];
            var at = (int)((phase - Math.Floor(phase)) * Size) & (Size - 1);
            for (var n = 0; n < period.Length; n++)
            {
                period[n] += amplitude * sine[at];
                at = (at + h) & (Size - 1);
            }

            below += power > 0 ? amplitude * amplitude / power : 0;
            phase -= below;
        }

        var peak = 0.0;
        foreach (var point in period)
        {
            peak = Math.Max(peak, Math.Abs(point));
        }

        if (peak == 0)
        {
            return 0;
        }

        Scale(1 / peak);
        return KWeighting.PowerOf(hz, amplitudes) / (peak * peak);
    }

    /// <summary>Lowers the period to a height; one of 1 and above changes nothing.</summary>
    public void Lower(double height) => Scale(Math.Min(1, height));

    private void Scale(double height)
    {
        var period = _points.AsSpan(1, Size);
        for (var n = 0; n < period.Length; n++)
        {
            period[n] *= height;
        }

        _points[0] = period[^1];
        _points[^2] = period[0];
        _points[^1] = period[1];
    }

    /// <summary>The cubic through four points, the second at 0 and the third at 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Between(double a, double b, double c, double d, double x)
    {
        var third = ((d - a) / 6) + ((b - c) / 2);
        var second = ((a + c) / 2) - b;
        var first = c - (a / 3) - (b / 2) - (d / 6);
        return (((((third * x) + second) * x) + first) * x) + b;
    }

    /// <summary>A period of a sine.</summary>
    public static double[] Sine()
    {
        var sine = new double[Size];
        for (var n = 0; n < sine.Length; n++)
        {
            sine[n] = Math.Sin(2 * Math.PI * n / Size);
        }

        return sine;
    }
}

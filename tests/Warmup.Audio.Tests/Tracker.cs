using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Warmup.Audio.Tests;

/// <summary>
/// Measures what sounds, knowing nothing of the score: the pitch by the autocorrelation (Wiener-Khinchin, over MathNet's Fourier
/// transform), made finer by how far the fundamental's phase goes between two windows; and the spectrum.
/// </summary>
internal static class Tracker
{
    /// <summary>The fundamental in Hz, from 25 to 5000.</summary>
    public static double Hz(ReadOnlySpan<short> sound, int rate)
    {
        var coarse = rate / Period(sound, rate);

        // The nearer the windows, the surer that no whole turn is missed; the farther, the finer.
        foreach (var share in (double[])[0.1, 0.5])
        {
            var apart = (int)(sound.Length * share);
            var window = sound.Length - apart;
            var turns = (Phase(sound.Slice(apart, window), coarse / rate, apart) - Phase(sound[..window], coarse / rate, 0)) / (2 * Math.PI);
            coarse += (turns - Math.Round(turns)) * rate / apart;
        }

        return coarse;
    }

    public static double Cents(double hz, double reference) => 1200 * Math.Log2(hz / reference);

    /// <summary>The phase of the part at a frequency, in radians, against a wave that began at frame 0; Hann window.</summary>
    public static double Phase(ReadOnlySpan<short> sound, double turnsPerFrame, double first)
    {
        var sum = Complex.Zero;
        for (var n = 0; n < sound.Length; n++)
        {
            var hann = 0.5 - (0.5 * Math.Cos(2 * Math.PI * (n + 0.5) / sound.Length));
            sum += sound[n] * hann * Complex.FromPolarCoordinates(1, -2 * Math.PI * Math.IEEERemainder(turnsPerFrame * (first + n), 1));
        }

        return sum.Phase;
    }

    /// <summary>The strength of each bin in decibels below the strongest; four-term Blackman-Harris window (side lobes below -92 dB).</summary>
    public static double[] Decibels(ReadOnlySpan<short> sound)
    {
        var bins = new Complex[sound.Length];
        for (var n = 0; n < bins.Length; n++)
        {
            var x = 2 * Math.PI * n / bins.Length;
            bins[n] = sound[n] * (0.35875 - (0.48829 * Math.Cos(x)) + (0.14128 * Math.Cos(2 * x)) - (0.01168 * Math.Cos(3 * x)));
        }

        Fourier.Forward(bins, FourierOptions.NoScaling);
        var half = bins[..(bins.Length / 2)].Select(b => b.Magnitude).ToArray();
        var peak = half.Max();
        return [.. half.Select(m => 20 * Math.Log10((m + 1e-12) / peak))];
    }

    /// <summary>The period in frames: the first great peak of the autocorrelation, normalised as McLeod and Wyvill (2005) do.</summary>
    private static double Period(ReadOnlySpan<short> sound, int rate)
    {
        var size = (int)BitOperations.RoundUpToPowerOf2((uint)(2 * sound.Length));
        var bins = new Complex[size];
        for (var n = 0; n < sound.Length; n++)
        {
            bins[n] = sound[n];
        }

        Fourier.Forward(bins, FourierOptions.NoScaling);
        for (var n = 0; n < size; n++)
        {
            bins[n] *= Complex.Conjugate(bins[n]);
        }

        Fourier.Inverse(bins, FourierOptions.AsymmetricScaling);
        var longest = Math.Min(rate / 25, sound.Length / 2);
        var alike = new double[longest + 1];
        var energy = 2 * bins[0].Real;
        for (var lag = 0; lag <= longest; lag++)
        {
            alike[lag] = 2 * bins[lag].Real / energy;
            energy -= ((double)sound[lag] * sound[lag]) + ((double)sound[sound.Length - 1 - lag] * sound[sound.Length - 1 - lag]);
        }

        var shortest = rate / 5000;
        var peaks = Enumerable.Range(shortest, longest - shortest)
            .Where(lag => alike[lag] > 0 && alike[lag] >= alike[lag - 1] && alike[lag] > alike[lag + 1]).ToList();
        Assert.NotEmpty(peaks);
        var great = 0.9 * peaks.Max(lag => alike[lag]);
        var first = peaks.First(lag => alike[lag] >= great);
        var (before, at, after) = (alike[first - 1], alike[first], alike[first + 1]);
        return first + (0.5 * (before - after) / (before - (2 * at) + after));
    }
}

namespace Warmup.Audio;

/// <summary>The amplitudes of harmonics. Every number here is the project's own setting, chosen for a soft sound.</summary>
internal static class Spectrum
{
    // The resonances of an open vowel, near an "a": centre and width in Hz. They are wider than a mouth's, for a softer tone.
    private static ReadOnlySpan<double> FormantHz => [700, 1150, 2600, 3400];

    private static ReadOnlySpan<double> FormantWidths => [140, 170, 260, 380];

    /// <summary>Where along a string it is plucked, as a fraction of its length.</summary>
    private const double PluckedAt = 0.14;

    /// <summary>The first harmonic of a string's shine.</summary>
    private const int FirstOfShine = 5;

    /// <summary>
    /// A sung vowel: a source that falls by 6 dB an octave, through the resonances one after the other.
    /// </summary>
    /// <param name="hz">The fundamental in Hz.</param>
    /// <param name="amplitudes">The harmonics to fill, from the fundamental on.</param>
    public static void Voice(double hz, Span<double> amplitudes)
    {
        for (var h = 1; h <= amplitudes.Length; h++)
        {
            var f = h * hz;
            var amplitude = 1.0 / h;
            for (var r = 0; r < FormantHz.Length; r++)
            {
                var centre = FormantHz[r] * FormantHz[r];
                var off = centre - (f * f);
                var width = FormantWidths[r] * f;
                amplitude *= centre / Math.Sqrt((off * off) + (width * width));
            }

            amplitudes[h - 1] = amplitude;
        }
    }

    /// <summary>The part of a plucked string that rings long.</summary>
    /// <param name="amplitudes">The harmonics to fill, from the fundamental on.</param>
    public static void StringBody(Span<double> amplitudes)
    {
        for (var h = 1; h <= amplitudes.Length; h++)
        {
            amplitudes[h - 1] = Math.Abs(Math.Sin(Math.PI * h * PluckedAt)) / Math.Pow(h, 1.5);
        }
    }

    /// <summary>The part of a plucked string that comes a little later and fades sooner: the upper harmonics.</summary>
    /// <param name="amplitudes">The harmonics to fill, from the fundamental on.</param>
    public static void StringShine(Span<double> amplitudes)
    {
        for (var h = 1; h <= amplitudes.Length; h++)
        {
            amplitudes[h - 1] = h < FirstOfShine ? 0 : 1.0 / h;
        }
    }

    /// <summary>A soft reed.</summary>
    /// <param name="amplitudes">The harmonics to fill, from the fundamental on.</param>
    public static void Reed(Span<double> amplitudes)
    {
        for (var h = 1; h <= amplitudes.Length; h++)
        {
            amplitudes[h - 1] = Math.Pow(h, -1.3);
        }
    }
}

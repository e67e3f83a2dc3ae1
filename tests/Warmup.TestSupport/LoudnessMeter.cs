namespace Warmup.TestSupport;

/// <summary>
/// Integrated loudness in LKFS by Recommendation ITU-R BS.1770-5 (2023), Annex 1: K-weighting, blocks of 400 ms of which three quarters overlap, an
/// absolute gate at -70 LKFS and a relative one 10 LU below what remains. Front channels alone, so each has the weight 1.
/// </summary>
public static class LoudnessMeter
{
    /// <summary>The sample rate for which the recommendation gives its filters.</summary>
    public const int Rate = 48_000;

    private const double Offset = -0.691;
    private const double AbsoluteGate = -70;
    private const double RelativeGate = -10;
    private const int Block = Rate * 4 / 10;
    private const int Step = Block / 4;

    /// <summary>The loudness of one or more channels of samples from -1 to 1 at 48,000 a second; negative infinity for silence.</summary>
    public static double Of(params double[][] channels)
    {
        var weighted = channels.Select(Squares).ToArray();
        var powers = new List<double>();
        for (var start = 0; start + Block <= channels[0].Length; start += Step)
        {
            powers.Add(weighted.Sum(sums => sums[start + Block] - sums[start]) / Block);
        }

        powers.RemoveAll(p => Lkfs(p) <= AbsoluteGate);
        if (powers.Count == 0)
        {
            return double.NegativeInfinity;
        }

        var gate = Lkfs(powers.Average()) + RelativeGate;
        return Lkfs(powers.Where(p => Lkfs(p) > gate).Average());
    }

    /// <summary>The same of 16-bit samples.</summary>
    public static double Of(params short[][] channels) => Of([.. channels.Select(c => Array.ConvertAll(c, s => s / 32_768.0))]);

    private static double Lkfs(double power) => Offset + (10 * Math.Log10(power));

    /// <summary>The sums of the squares of the weighted samples, from the first up to each.</summary>
    private static double[] Squares(double[] samples)
    {
        // Tables 1 and 2 of Annex 1.
        var shelf = new Filter(1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585);
        var highPass = new Filter(1, -2, 1, -1.99004745483398, 0.99007225036621);
        var sums = new double[samples.Length + 1];
        for (var n = 0; n < samples.Length; n++)
        {
            var weighted = highPass.Next(shelf.Next(samples[n]));
            sums[n + 1] = sums[n] + (weighted * weighted);
        }

        return sums;
    }

    /// <summary>A filter of second order, in its direct form.</summary>
    private sealed class Filter(double b0, double b1, double b2, double a1, double a2)
    {
        private double _x1;
        private double _x2;
        private double _y1;
        private double _y2;

        public double Next(double x)
        {
            var y = (b0 * x) + (b1 * _x1) + (b2 * _x2) - (a1 * _y1) - (a2 * _y2);
            (_x2, _x1, _y2, _y1) = (_x1, x, _y1, y);
            return y;
        }
    }
}

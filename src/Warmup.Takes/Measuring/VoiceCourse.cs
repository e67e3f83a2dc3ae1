namespace Warmup.Takes;

/// <summary>One pitch for each frame of a voice that sings alone: the course through the candidates that is strong and does not leap.</summary>
internal static class VoiceCourse
{
    private const double Weakness = 3;
    private const double LeapAHundred = 0.6;
    private const double MostLeap = 4;

    /// <summary>The course in cents above MIDI note 0; not a number where there is no voice.</summary>
    public static float[] Of(PitchTrack track, Func<int, bool> isVoice)
    {
        var course = new float[track.Count];
        Array.Fill(course, float.NaN);
        const int K = PitchTrack.Candidates;
        var costs = new double[K];
        for (var from = 0; from < track.Count;)
        {
            var to = from;
            while (to < track.Count && isVoice(to) && track.At(to)[0].Strength > 0.15f)
            {
                to++;
            }

            if (to > from)
            {
                Stretch(track, from, to, course, costs);
            }

            from = Math.Max(to, from + 1);
        }

        return course;
    }

    private static void Stretch(PitchTrack track, int from, int to, float[] course, double[] costs)
    {
        const int K = PitchTrack.Candidates;
        var before = new byte[(to - from) * K];
        var next = new double[K];
        for (var f = from; f < to; f++)
        {
            var here = track.At(f);
            for (var k = 0; k < K; k++)
            {
                var (best, least) = (0, double.PositiveInfinity);
                for (var j = 0; j < K && f > from; j++)
                {
                    var leap = Math.Min(MostLeap, LeapAHundred * Math.Abs(here[k].Cents - track.At(f - 1)[j].Cents) / 100);
                    (best, least) = costs[j] + leap < least ? (j, costs[j] + leap) : (best, least);
                }

                next[k] = here[k].Strength <= 0 ? 1e9 : (f > from ? least : 0) + (Weakness * (1 - (here[k].Strength / here[0].Strength)));
                before[((f - from) * K) + k] = (byte)best;
            }

            next.CopyTo(costs, 0);
        }

        var at = Array.IndexOf(costs, costs.Min());
        for (var f = to - 1; f >= from; f--)
        {
            course[f] = track.At(f)[at].Cents;
            at = before[((f - from) * K) + at];
        }
    }
}

using System.Diagnostics;

namespace Warmup.Benchmarks;

/// <summary>The least time of a piece of work that is done again and again, about a millisecond of it timed at once.</summary>
internal static class Least
{
    private const int Batches = 300;
    private const int WarmUps = 8;

    /// <summary>Measures work that everything it calls has been compiled for.</summary>
    /// <param name="run">The work.</param>
    /// <returns>The time of one run in nanoseconds, and the bytes it allocates.</returns>
    public static (double Nanoseconds, double Allocated) Of(Action run)
    {
        var times = 1;
        for (var i = 0; i < WarmUps; i++)
        {
            while (Time(run, times) < TimeSpan.FromMilliseconds(1))
            {
                times *= 2;
            }

            Thread.Sleep(100);
        }

        var (least, allocated) = (TimeSpan.MaxValue, GC.GetAllocatedBytesForCurrentThread());
        for (var batch = 0; batch < Batches; batch++)
        {
            var time = Time(run, times);
            least = time < least ? time : least;
        }

        return (least.TotalNanoseconds / times, (double)(GC.GetAllocatedBytesForCurrentThread() - allocated) / (Batches * times));
    }

    private static TimeSpan Time(Action run, int times)
    {
        var start = Stopwatch.GetTimestamp();
        for (var i = 0; i < times; i++)
        {
            run();
        }

        return Stopwatch.GetElapsedTime(start);
    }
}

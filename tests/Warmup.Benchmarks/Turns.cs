using System.Diagnostics;
using System.Runtime;

namespace Warmup.Benchmarks;

/// <summary>
/// Stages of the job by turns, a thirty-sixth of it timed at once: whatever else the machine does meets all of them alike, and of each part
/// the least time says what the work takes.
/// </summary>
internal sealed class Turns
{
    private const int Parts = 36;
    private const int Part = JobBenchmarks.Drills / Parts;
    private const int MostWarmUps = 40;

    private readonly JobBenchmarks _job = new();
    private readonly Dictionary<string, Cost> _costs = [];

    /// <summary>Runs stages.</summary>
    /// <param name="rounds">How often each does the job.</param>
    /// <param name="stages">The stages: their names, and what they do.</param>
    public Turns(int rounds, params (string Name, Action<JobBenchmarks> Run)[] stages)
    {
        WarmUp(stages);
        foreach (var (name, _) in stages)
        {
            _costs[name] = new Cost();
        }

        for (var round = 0; round < rounds; round++)
        {
            foreach (var (name, run) in stages)
            {
                Time(run, _costs[name]);
            }
        }
    }

    /// <summary>What a stage costs.</summary>
    public Cost this[string stage] => _costs[stage];

    /// <summary>How many times as fast as another a stage is: by the least times, and by the median of the rounds, round against round.</summary>
    public (double Least, double Median) Ratio(string stage, string reference)
    {
        var (of, to) = (_costs[stage], _costs[reference]);
        return (to.Least / of.Least, Cost.MedianOf(to.Rounds.Zip(of.Rounds, (r, s) => r / s)));
    }

    /// <summary>Runs the stages until nothing more is compiled.</summary>
    private void WarmUp((string Name, Action<JobBenchmarks> Run)[] stages)
    {
        var (compiled, still) = (0L, 0);
        for (var times = 0; times < MostWarmUps && still < 3; times++)
        {
            foreach (var (_, run) in stages)
            {
                _job.Take(0, JobBenchmarks.Drills / 4);
                run(_job);
            }

            Thread.Sleep(150);
            var now = JitInfo.GetCompiledMethodCount();
            (compiled, still) = (now, now == compiled ? still + 1 : 0);
        }
    }

    private void Time(Action<JobBenchmarks> run, Cost cost)
    {
        var (allocated, sum) = (GC.GetAllocatedBytesForCurrentThread(), 0.0);
        for (var part = 0; part < Parts; part++)
        {
            _job.Take(part * Part, Part);
            var start = Stopwatch.GetTimestamp();
            run(_job);
            var time = Stopwatch.GetElapsedTime(start).TotalMicroseconds / Part;
            cost.Add(part, time);
            sum += time;
        }

        cost.Add(sum / Parts, (double)(GC.GetAllocatedBytesForCurrentThread() - allocated) / JobBenchmarks.Drills);
    }

    /// <summary>What one drill costs a stage, in microseconds and bytes.</summary>
    internal sealed class Cost
    {
        private readonly double[] _least = Enumerable.Repeat(double.PositiveInfinity, Parts).ToArray();
        private readonly List<double> _rounds = [];

        /// <summary>The mean of each round.</summary>
        public IReadOnlyList<double> Rounds => _rounds;

        /// <summary>The mean of the parts' least times.</summary>
        public double Least => _least.Average();

        /// <summary>The median of the rounds.</summary>
        public double Median => MedianOf(_rounds);

        /// <summary>The bytes that the last round allocated.</summary>
        public double Allocated { get; private set; }

        public void Add(int part, double time) => _least[part] = Math.Min(_least[part], time);

        public void Add(double round, double allocated)
        {
            _rounds.Add(round);
            Allocated = allocated;
        }

        public static double MedianOf(IEnumerable<double> values)
        {
            var ordered = values.Order().ToArray();
            return ordered[ordered.Length / 2];
        }
    }
}

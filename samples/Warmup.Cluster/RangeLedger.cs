using System.Collections;

namespace Warmup.ManyMachines;

/// <summary>
/// Which worker has which range, and which ranges are done. A range whose worker has left is handed out again; a range that comes back twice
/// counts once. The ledger knows neither actors nor the clock, so that its rules can be tested alone.
/// </summary>
/// <typeparam name="TWorker">What tells workers apart.</typeparam>
/// <param name="ranges">The number of ranges.</param>
internal sealed class RangeLedger<TWorker>(int ranges)
    where TWorker : notnull
{
    private readonly BitArray _done = new(ranges);
    private readonly Queue<int> _again = [];
    private readonly Dictionary<TWorker, int> _held = [];
    private int _next;

    public int Ranges { get; } = ranges;

    public int Done { get; private set; }

    public bool IsComplete => Done == Ranges;

    /// <summary>How many ranges were taken from workers that left.</summary>
    public int TakenBack { get; private set; }

    /// <summary>The range for a worker: the one that it already holds, since that message may have been lost, or a new one.</summary>
    /// <returns>The range, or <see langword="null"/> while there is none to hand out.</returns>
    public int? Hand(TWorker worker)
    {
        if (_held.TryGetValue(worker, out var held) && !_done[held])
        {
            return held;
        }

        if (NextRange() is not { } range)
        {
            _held.Remove(worker);
            return null;
        }

        _held[worker] = range;
        return range;
    }

    /// <summary>A worker has a range from an earlier ledger of the same job: it is not handed to another.</summary>
    public void Hold(TWorker worker, int range)
    {
        if (range >= 0 && range < Ranges && !_done[range] && !_held.ContainsKey(worker) && !_held.ContainsValue(range))
        {
            _held[worker] = range;
        }
    }

    /// <summary>A range has been done, by any worker.</summary>
    /// <returns>Whether the result counts, as the first one of its range.</returns>
    public bool Accept(TWorker worker, int range)
    {
        if (_held.TryGetValue(worker, out var held) && held == range)
        {
            _held.Remove(worker);
        }

        return Accept(range);
    }

    /// <summary>A range is known to be done.</summary>
    /// <returns>Whether that is new.</returns>
    public bool Accept(int range)
    {
        if (range < 0 || range >= Ranges || _done[range])
        {
            return false;
        }

        _done[range] = true;
        Done++;
        return true;
    }

    /// <summary>A worker has left.</summary>
    /// <returns>The range that is handed out again, or <see langword="null"/>.</returns>
    public int? Leave(TWorker worker)
    {
        if (!_held.Remove(worker, out var held) || _done[held])
        {
            return null;
        }

        _again.Enqueue(held);
        TakenBack++;
        return held;
    }

    /// <summary>The first and last ranges of all stretches that are done.</summary>
    /// <param name="without">Ranges that are left out.</param>
    public IReadOnlyList<int[]> Stretches(IReadOnlySet<int> without)
    {
        var stretches = new List<int[]>();
        for (var range = 0; range < Ranges; range++)
        {
            if (_done[range] && !without.Contains(range))
            {
                if (stretches is [.., { } last] && last[1] == range - 1)
                {
                    last[1] = range;
                }
                else
                {
                    stretches.Add([range, range]);
                }
            }
        }

        return stretches;
    }

    private int? NextRange()
    {
        while (_again.TryDequeue(out var range))
        {
            if (!IsTaken(range))
            {
                return range;
            }
        }

        while (_next < Ranges && IsTaken(_next))
        {
            _next++;
        }

        return _next < Ranges ? _next++ : null;
    }

    private bool IsTaken(int range) => _done[range] || _held.ContainsValue(range);
}

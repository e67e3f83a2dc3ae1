using System.Collections;

namespace Warmup.ManyMachines;

/// <summary>
/// Which worker has which range, and which ranges are done. A range whose worker has left or fallen silent is handed out again; a range that
/// comes back twice counts once. The ledger knows neither actors nor the clock, so that its rules can be tested alone.
/// </summary>
/// <typeparam name="TWorker">What tells workers apart.</typeparam>
/// <param name="ranges">The number of ranges.</param>
/// <param name="silence">A worker that says nothing for longer than this has fallen silent.</param>
internal sealed class RangeLedger<TWorker>(int ranges, TimeSpan silence)
    where TWorker : notnull
{
    private readonly BitArray _done = new(ranges);
    private readonly Queue<int> _again = [];
    private readonly Dictionary<TWorker, (int Range, TimeSpan Heard)> _held = [];
    private int _next;

    public int Ranges { get; } = ranges;

    public int Done { get; private set; }

    public bool IsComplete => Done == Ranges;

    /// <summary>How many ranges were taken from workers that left or fell silent.</summary>
    public int TakenBack { get; private set; }

    /// <summary>The range for a worker: the one that it already holds, since that message may have been lost, or a new one.</summary>
    /// <returns>The range, or <see langword="null"/> while there is none to hand out.</returns>
    public int? Hand(TWorker worker, TimeSpan now)
    {
        if (!_held.TryGetValue(worker, out var held) || _done[held.Range])
        {
            if (NextRange() is not { } range)
            {
                _held.Remove(worker);
                return null;
            }

            held.Range = range;
        }

        _held[worker] = (held.Range, now);
        return held.Range;
    }

    /// <summary>A worker has said something.</summary>
    public void Hear(TWorker worker, TimeSpan now)
    {
        if (_held.TryGetValue(worker, out var held))
        {
            _held[worker] = (held.Range, now);
        }
    }

    /// <summary>A range has been done, by any worker.</summary>
    /// <returns>Whether the result counts, as the first one of its range.</returns>
    public bool Accept(TWorker worker, int range)
    {
        if (_held.TryGetValue(worker, out var held) && held.Range == range)
        {
            _held.Remove(worker);
        }

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
        if (!_held.Remove(worker, out var held) || _done[held.Range])
        {
            return null;
        }

        _again.Enqueue(held.Range);
        TakenBack++;
        return held.Range;
    }

    /// <summary>Takes the ranges of all workers that have fallen silent.</summary>
    /// <returns>These workers.</returns>
    public IReadOnlyList<TWorker> Expire(TimeSpan now)
    {
        var silent = _held.Where(h => now - h.Value.Heard > silence).Select(h => h.Key).ToList();
        silent.ForEach(worker => Leave(worker));
        return silent;
    }

    private int? NextRange()
    {
        while (_again.TryDequeue(out var range))
        {
            if (!_done[range])
            {
                return range;
            }
        }

        return _next < Ranges ? _next++ : null;
    }
}

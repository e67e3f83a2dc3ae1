using System.Diagnostics.CodeAnalysis;
using System.Runtime.ExceptionServices;
using System.Threading.Channels;

namespace Warmup;

/// <summary>
/// The items of a run between the one whose result is taken next and the last one read: a ring of slots that are used again, so that a
/// long loop allocates nothing an item, and one that awaits only where it has to wait.
/// </summary>
/// <remarks>All but <see cref="Work"/> belongs to the one that takes the results; a slot belongs to a worker until its result is there.</remarks>
internal sealed class RunWindow<TItem, TTool, TResult> : IDisposable, IAsyncDisposable
{
    private readonly Slot[] _ring;
    private readonly int _hands;
    private readonly IEnumerator<TItem> _items;
    private readonly Func<TTool> _equip;
    private readonly Func<TItem, TTool, CancellationToken, TResult> _make;
    private readonly CancellationToken _cancellation;
    private readonly CancellationTokenSource _unwanted;
    private readonly CancellationToken _stop;

    // Unbounded in name only: no more slots are waiting than the ring has.
    private readonly Channel<Slot> _waiting = Channel.CreateUnbounded<Slot>(new UnboundedChannelOptions { SingleWriter = true });

    private readonly RunTelemetry _told;
    private readonly Bench _own = new();
    private int _hired;
    private long _read;
    private long _taken;
    private bool _ended;

    /// <param name="run">The bounds.</param>
    /// <param name="hands">The workers beside the one that takes the results.</param>
    /// <param name="items">The input.</param>
    /// <param name="equip">Makes what one worker keeps.</param>
    /// <param name="make">Makes an item's result.</param>
    /// <param name="cancellation">The caller's wish to stop.</param>
    public RunWindow(
        OrderedParallel run, int hands, IEnumerable<TItem> items, Func<TTool> equip, Func<TItem, TTool, CancellationToken, TResult> make, CancellationToken cancellation)
    {
        _ring = new Slot[run.LookAhead];
        _hands = hands;
        _equip = equip;
        _make = make;
        _cancellation = cancellation;
        _items = items.GetEnumerator();
        _unwanted = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        _stop = _unwanted.Token;
        _told = RunTelemetry.Begin(run);
    }

    private Slot Head => _ring[_taken % _ring.Length];

    /// <summary>Reads as many items as the look-ahead allows.</summary>
    /// <returns>Whether there is another result.</returns>
    public bool Fill()
    {
        while (!_ended && _read - _taken < _ring.Length)
        {
            _cancellation.ThrowIfCancellationRequested();
            ReadOne();
        }

        _cancellation.ThrowIfCancellationRequested();
        for (; _hired < _hands && _hired < _read; _hired++)
        {
            _ = Task.Run(StayAsync, CancellationToken.None);
        }

        return _taken < _read;
    }

    /// <summary>The next result. While it is not there, this thread works too; it waits only for what another thread is working on.</summary>
    public TResult Next()
    {
        var head = Head;
        while (!head.Done.Wait(0, CancellationToken.None))
        {
            if (!_waiting.Reader.TryRead(out var slot))
            {
                head.Done.Wait(_cancellation);
                break;
            }

            Work(slot, _own);
            _cancellation.ThrowIfCancellationRequested();
        }

        return Take(head);
    }

    /// <summary>The next result, without holding a thread.</summary>
    public async ValueTask<TResult> NextAsync()
    {
        var head = Head;
        await head.Done.WaitAsync(_cancellation).ConfigureAwait(false);
        return Take(head);
    }

    /// <summary>Stops the workers and waits until none is working any more.</summary>
    public void Dispose()
    {
        try
        {
            CallBack();
        }
        finally
        {
            for (; _taken < _read; _taken++)
            {
                Head.Done.Wait(CancellationToken.None);
            }

            Leave();
        }
    }

    /// <summary>Stops the workers and waits until none is working any more, without holding a thread.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            CallBack();
        }
        finally
        {
            for (; _taken < _read; _taken++)
            {
                await Head.Done.WaitAsync(CancellationToken.None).ConfigureAwait(false);
            }

            Leave();
        }
    }

    [SuppressMessage("Design", "CA1031:Do not catch general exception types", Justification = "It is thrown again when its turn has come.")]
    private void ReadOne()
    {
        var slot = _ring[_read % _ring.Length] ??= new Slot();
        try
        {
            if (!_items.MoveNext())
            {
                _ended = true;
                return;
            }

            slot.Item = _items.Current;
        }
        catch (Exception broken)
        {
            // As in a run without workers: the results before it come first.
            _ended = true;
            slot.InputFailure = ExceptionDispatchInfo.Capture(broken);
            slot.Done.Release();
            _read++;
            return;
        }

        _read++;
        _waiting.Writer.TryWrite(slot);
    }

    /// <summary>One worker: item after item, giving its thread back between them.</summary>
    private async Task StayAsync()
    {
        var bench = new Bench();
        await foreach (var slot in _waiting.Reader.ReadAllAsync(CancellationToken.None).ConfigureAwait(false))
        {
            Work(slot, bench);
            await Task.Yield();
        }
    }

    [SuppressMessage("Design", "CA1031:Do not catch general exception types", Justification = "It is thrown again, with its place, when its turn has come.")]
    private void Work(Slot slot, Bench bench)
    {
        try
        {
            _stop.ThrowIfCancellationRequested();
            if (!bench.IsEquipped)
            {
                bench.Tool = _equip();
                bench.IsEquipped = true;
            }

            slot.Result = _make(slot.Item!, bench.Tool!, _stop);
        }
        catch (Exception failure)
        {
            slot.Failure = failure;
        }
        finally
        {
            slot.Done.Release();
        }
    }

    private TResult Take(Slot slot)
    {
        var index = _taken++;
        slot.InputFailure?.Throw();
        if (slot.Failure is { } failure)
        {
            if (failure is OperationCanceledException)
            {
                _cancellation.ThrowIfCancellationRequested();
            }

            _told.Taken(failure);
            throw new OrderedParallelException(index, failure);
        }

        _told.Taken(null);
        var result = slot.Result!;
        slot.Item = default;
        slot.Result = default;
        return result;
    }

    /// <summary>Takes back what no worker has begun.</summary>
    private void CallBack()
    {
        _waiting.Writer.TryComplete();
        while (_waiting.Reader.TryRead(out var slot))
        {
            slot.Done.Release();
        }

        _unwanted.Cancel();
    }

    private void Leave()
    {
        try
        {
            _items.Dispose();
        }
        finally
        {
            _unwanted.Dispose();
            _told.End();
        }
    }

    /// <summary>What one worker keeps.</summary>
    private sealed class Bench
    {
        public bool IsEquipped { get; set; }

        public TTool? Tool { get; set; }
    }

    /// <summary>An item and what becomes of it.</summary>
    private sealed class Slot
    {
        // Its wait handle is never used, so there is nothing to dispose of.
        public SemaphoreSlim Done { get; } = new(0, 1);

        public TItem? Item { get; set; }

        public TResult? Result { get; set; }

        public Exception? Failure { get; set; }

        public ExceptionDispatchInfo? InputFailure { get; set; }
    }
}

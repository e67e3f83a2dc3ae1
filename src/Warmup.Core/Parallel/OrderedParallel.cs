using System.Globalization;
using System.Runtime.CompilerServices;

namespace Warmup;

/// <summary>
/// Runs a function over many items on several workers and returns the results in the order of the input: the same results for any number of
/// workers.
/// </summary>
/// <remarks>
/// <para>The thread that takes the results reads the input, one item at a time and never more than <see cref="LookAhead"/> items beyond
/// the last result it took: an endless input needs no more memory than a short one. When the k-th result is taken, exactly
/// k - 1 + <see cref="LookAhead"/> items have been read, or all of them.</para>
/// <para>Workers are threads of the pool; each gives its thread back after every item, so that other work is served in between. A loop
/// over <see cref="Map{TItem, TResult}"/> is itself one of the workers and waits only for items that are being worked on, so it goes on even
/// when the pool has no thread to spare. Loops over <see cref="MapAsync{TItem, TResult}"/> hold no thread while they wait.</para>
/// <para>Whoever listens to <see cref="Telemetry.Name"/> hears of each run and how many results were taken; nobody does by default.</para>
/// <para>The function must be safe to call on several threads at once; all of this library's functions are. Immutable; two runs are not compared.</para>
/// </remarks>
public sealed class OrderedParallel
{
    private const int LongestLookAhead = 65_536;

    /// <summary>The most workers: 256 (the project's own bound).</summary>
    public static int MostWorkers => 256;

    /// <summary>How many items are worked on at once, 1 to 256. The number of cores is a good choice; the library does not look it up.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public required int Workers { get; init => field = Require.InRange(value, 1, MostWorkers, nameof(Workers)); }

    /// <summary>
    /// The items that may be read before their results are taken, 1 to 65,536; 64 by default (the project's own settings). With fewer than
    /// there are workers, some have nothing to do.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int LookAhead { get; init => field = Require.InRange(value, 1, LongestLookAhead, nameof(LookAhead)); } = 64;

    /// <summary>The results in the order of the input. Nothing is read before the first result is taken.</summary>
    /// <typeparam name="TItem">The type of an item: a drill, or what one is made from.</typeparam>
    /// <typeparam name="TResult">The type of a result.</typeparam>
    /// <param name="items">The input; it may be endless.</param>
    /// <param name="make">Makes an item's result; its token says when the result is no longer wanted.</param>
    /// <param name="cancellationToken">Stops the work; no further item is read.</param>
    /// <returns>A sequence; each enumeration is a run of its own. An enumerator that is left early stops its workers and waits for them.</returns>
    /// <exception cref="OrderedParallelException">While enumerating: an item failed, and the results of all items before it have been taken.</exception>
    /// <exception cref="OperationCanceledException">While enumerating: the work was stopped.</exception>
    public IEnumerable<TResult> Map<TItem, TResult>(
        IEnumerable<TItem> items, Func<TItem, CancellationToken, TResult> make, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(make);
        return Map(items, static () => 0, (item, _, stop) => make(item, stop), cancellationToken);
    }

    /// <summary>The results in the order of the input, made by workers that keep something of their own, such as a buffer to write to.</summary>
    /// <typeparam name="TItem">The type of an item.</typeparam>
    /// <typeparam name="TTool">The type of what a worker keeps.</typeparam>
    /// <typeparam name="TResult">The type of a result.</typeparam>
    /// <param name="items">The input; it may be endless.</param>
    /// <param name="equip">Makes what one worker keeps; called at most once a worker. No two items use one worker's at the same time.</param>
    /// <param name="make">Makes an item's result, which must not hold on to what the worker keeps.</param>
    /// <param name="cancellationToken">Stops the work; no further item is read.</param>
    /// <returns>A sequence, as that of <see cref="Map{TItem, TResult}"/>.</returns>
    /// <exception cref="OrderedParallelException">While enumerating: an item failed, and the results of all items before it have been taken.</exception>
    /// <exception cref="OperationCanceledException">While enumerating: the work was stopped.</exception>
    public IEnumerable<TResult> Map<TItem, TTool, TResult>(
        IEnumerable<TItem> items, Func<TTool> equip, Func<TItem, TTool, CancellationToken, TResult> make, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(equip);
        ArgumentNullException.ThrowIfNull(make);
        return Each(items, equip, make, cancellationToken);
    }

    /// <summary>The results in the order of the input, for <c>await foreach</c>. Nothing is read before the first result is taken.</summary>
    /// <typeparam name="TItem">The type of an item.</typeparam>
    /// <typeparam name="TResult">The type of a result.</typeparam>
    /// <param name="items">The input; it may be endless. It is read while a result is being taken, so reading it should not block.</param>
    /// <param name="make">Makes an item's result; its token says when the result is no longer wanted.</param>
    /// <param name="cancellationToken">Stops the work; no further item is read.</param>
    /// <returns>A sequence, as that of <see cref="Map{TItem, TResult}"/>.</returns>
    /// <exception cref="OrderedParallelException">While enumerating: an item failed, and the results of all items before it have been taken.</exception>
    /// <exception cref="OperationCanceledException">While enumerating: the work was stopped.</exception>
    public IAsyncEnumerable<TResult> MapAsync<TItem, TResult>(
        IEnumerable<TItem> items, Func<TItem, CancellationToken, TResult> make, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(make);
        return MapAsync(items, static () => 0, (item, _, stop) => make(item, stop), cancellationToken);
    }

    /// <summary>The results in the order of the input, for <c>await foreach</c>, made by workers that keep something of their own.</summary>
    /// <typeparam name="TItem">The type of an item.</typeparam>
    /// <typeparam name="TTool">The type of what a worker keeps.</typeparam>
    /// <typeparam name="TResult">The type of a result.</typeparam>
    /// <param name="items">The input; it may be endless. It is read while a result is being taken, so reading it should not block.</param>
    /// <param name="equip">Makes what one worker keeps; called at most once a worker. No two items use one worker's at the same time.</param>
    /// <param name="make">Makes an item's result, which must not hold on to what the worker keeps.</param>
    /// <param name="cancellationToken">Stops the work; no further item is read.</param>
    /// <returns>A sequence, as that of <see cref="Map{TItem, TResult}"/>.</returns>
    /// <exception cref="OrderedParallelException">While enumerating: an item failed, and the results of all items before it have been taken.</exception>
    /// <exception cref="OperationCanceledException">While enumerating: the work was stopped.</exception>
    public IAsyncEnumerable<TResult> MapAsync<TItem, TTool, TResult>(
        IEnumerable<TItem> items, Func<TTool> equip, Func<TItem, TTool, CancellationToken, TResult> make, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(equip);
        ArgumentNullException.ThrowIfNull(make);
        return EachAsync(items, equip, make, cancellationToken);
    }

    /// <summary>The workers and the look-ahead.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Workers} workers, {LookAhead} items ahead");

    private IEnumerable<TResult> Each<TItem, TTool, TResult>(
        IEnumerable<TItem> items, Func<TTool> equip, Func<TItem, TTool, CancellationToken, TResult> make, CancellationToken cancellationToken)
    {
        // The loop that takes the results is one of the workers.
        var window = new RunWindow<TItem, TTool, TResult>(this, Workers - 1, items, equip, make, cancellationToken);
        try
        {
            while (window.Fill())
            {
                yield return window.Next();
            }
        }
        finally
        {
            window.Dispose();
        }
    }

    private async IAsyncEnumerable<TResult> EachAsync<TItem, TTool, TResult>(
        IEnumerable<TItem> items, Func<TTool> equip, Func<TItem, TTool, CancellationToken, TResult> make, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var window = new RunWindow<TItem, TTool, TResult>(this, Workers, items, equip, make, cancellationToken);
        try
        {
            while (window.Fill())
            {
                yield return await window.NextAsync().ConfigureAwait(false);
            }
        }
        finally
        {
            await window.DisposeAsync().ConfigureAwait(false);
        }
    }
}

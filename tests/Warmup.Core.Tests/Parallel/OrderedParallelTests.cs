using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Source: the plain loop. A run gives what <c>items.Select(make)</c> gives, whatever the workers and the look-ahead; the rest of its
/// promise is counted, never timed.
/// </summary>
public class OrderedParallelTests
{
    private static readonly Gen<OrderedParallel> Runs =
        Gen.Choose(1, 9).Two().Select(p => new OrderedParallel { Workers = p.Item1, LookAhead = p.Item2 });

    private static readonly Gen<int[]> Numbers = Gen.Choose(0, 40).SelectMany(n => Gen.Choose(0, 400).ArrayOf(n));

    private static Arbitrary<(OrderedParallel Run, int[] Items)> RunsOverNumbers => Runs.SelectMany(r => Numbers.Select(n => (r, n))).ToArbitrary();

    /// <summary>Takes longer for some items than for others, so that results are ready out of order.</summary>
    private static long Square(int item)
    {
        Thread.SpinWait(item * 10);
        return (long)item * item;
    }

    private static async Task<List<T>> ToListAsync<T>(IAsyncEnumerable<T> results)
    {
        var list = new List<T>();
        await foreach (var result in results)
        {
            list.Add(result);
        }

        return list;
    }

    [Property(MaxTest = 150)]
    public Property Results_are_those_of_the_plain_loop_in_its_order() => Prop.ForAll(RunsOverNumbers, async c =>
    {
        var expected = c.Items.Select(Square).ToList();
        return c.Run.Map(c.Items, (item, _) => Square(item)).SequenceEqual(expected)
            && (await ToListAsync(c.Run.MapAsync(c.Items, (item, _) => Square(item)))).SequenceEqual(expected);
    });

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(8)]
    public void Drills_give_equal_scores_for_every_number_of_workers(int workers)
    {
        var drills =
            from number in Enumerable.Range(1, 72)
            from tonic in (int[])[55, 60]
            from pattern in (Pattern[])[Pattern.Ladder.Ends(), Pattern.Ladder.Reversed()]
            select new Drill { Scale = Catalogue.Default.Parent(number).Scale, Pattern = pattern, Tonic = Tonic.FromMidi(tonic) };
        var scores = new OrderedParallel { Workers = workers }.Map(drills, (drill, stop) => drill.ToScore(stop)).ToList();
        Assert.Equal(288, scores.Count);
        Assert.Equal(drills.Select(d => d.ToScore()), scores);
    }

    [Property(MaxTest = 150)]
    public Property No_more_is_read_than_the_look_ahead_allows_and_no_less() => Prop.ForAll(RunsOverNumbers, async c =>
    {
        var source = new Source(c.Items);
        var results = c.Run.Map(source, (item, _) => Square(item));
        var agrees = source.Read == 0;
        var taken = 0;
        foreach (var _ in results)
        {
            agrees &= source.Read == Math.Min(c.Items.Length, taken++ + c.Run.LookAhead);
        }

        var other = new Source(c.Items);
        taken = 0;
        await foreach (var _ in c.Run.MapAsync(other, (item, _) => Square(item)))
        {
            agrees &= other.Read == Math.Min(c.Items.Length, taken++ + c.Run.LookAhead);
        }

        return agrees && source.Disposed == 1 && other.Disposed == 1;
    });

    [Property(MaxTest = 100)]
    public Property No_more_items_are_worked_on_at_once_than_there_are_workers() => Prop.ForAll(RunsOverNumbers, async c =>
    {
        var counter = new Counter();
        long Make(int item, Tool tool, CancellationToken stop)
        {
            using var one = counter.Enter();
            using var alone = tool.Use();
            return Square(item);
        }

        var first = new Tools();
        var count = c.Run.Map(c.Items, first.Make, Make).Count();
        var second = new Tools();
        var again = (await ToListAsync(c.Run.MapAsync(c.Items, second.Make, Make))).Count;
        return count == c.Items.Length && again == count && counter.Most <= c.Run.Workers
            && first.Made <= c.Run.Workers && second.Made <= c.Run.Workers && !first.WasShared && !second.WasShared;
    });

    [Fact]
    public async Task Two_workers_work_at_the_same_time()
    {
        // Each of two items waits for the other: one worker alone would not come to an end.
        static int Meet(Barrier barrier) => barrier.SignalAndWait(TimeSpan.FromMinutes(5)) ? 1 : 0;
        var run = new OrderedParallel { Workers = 2 };
        using var barrier = new Barrier(2);
        Assert.Equal([1, 1], run.Map([0, 1], (_, _) => Meet(barrier)));
        Assert.Equal([1, 1], await ToListAsync(run.MapAsync([0, 1], (_, _) => Meet(barrier))));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public async Task An_endless_input_is_read_as_far_as_its_results_are_taken(int workers)
    {
        var run = new OrderedParallel { Workers = workers, LookAhead = 16 };
        var source = new Source(Endless());
        Assert.Equal(Enumerable.Range(0, 1_000).Select(Square), run.Map(source, (item, _) => Square(item)).Take(1_000));
        Assert.Equal(1_015, source.Read);
        Assert.Equal(1, source.Disposed);

        var other = new Source(Endless());
        var taken = new List<long>();
        await foreach (var result in run.MapAsync(other, (item, _) => Square(item)))
        {
            taken.Add(result);
            if (taken.Count == 1_000)
            {
                break;
            }
        }

        Assert.Equal(Enumerable.Range(0, 1_000).Select(Square), taken);
        Assert.Equal(1_015, other.Read);
        Assert.Equal(1, other.Disposed);
    }

    [Property(MaxTest = 150)]
    public Property The_first_failure_in_order_comes_after_the_results_before_it()
    {
        var cases = Runs.SelectMany(r => Gen.Choose(1, 40).SelectMany(n => Gen.Choose(0, n - 1).ListOf().Where(l => l.Count > 0).Select(bad => (Run: r, Count: n, Bad: bad.ToHashSet()))));
        return Prop.ForAll(cases.ToArbitrary(), async c =>
        {
            long Make(int item, CancellationToken stop) => c.Bad.Contains(item) ? throw new ArithmeticException($"no {item}") : Square(item);
            var taken = new List<long>();
            var failure = Assert.Throws<OrderedParallelException>(() =>
            {
                foreach (var result in c.Run.Map(Enumerable.Range(0, c.Count), Make))
                {
                    taken.Add(result);
                }
            });
            var takenAsync = new List<long>();
            var failureAsync = await Assert.ThrowsAsync<OrderedParallelException>(async () =>
            {
                await foreach (var result in c.Run.MapAsync(Enumerable.Range(0, c.Count), Make))
                {
                    takenAsync.Add(result);
                }
            });
            var first = c.Bad.Min();
            return failure.Index == first && failureAsync.Index == first && failure.InnerException is ArithmeticException { Message: var message } && message == $"no {first}"
                && taken.SequenceEqual(Enumerable.Range(0, first).Select(Square)) && takenAsync.SequenceEqual(taken);
        });
    }

    [Fact]
    public async Task What_a_worker_cannot_get_fails_its_item()
    {
        static int Equip() => throw new ArithmeticException("no tool");
        var run = new OrderedParallel { Workers = 2 };
        Assert.Equal(0, Assert.Throws<OrderedParallelException>(() => run.Map([1, 2, 3], Equip, (item, _, _) => item).Count()).Index);
        var failure = await Assert.ThrowsAsync<OrderedParallelException>(() => ToListAsync(run.MapAsync([1, 2, 3], Equip, (item, _, _) => item)));
        Assert.IsType<ArithmeticException>(failure.InnerException);
    }

    [Property(MaxTest = 100)]
    public Property A_broken_input_comes_after_the_results_before_it_and_as_it_is() => Prop.ForAll(RunsOverNumbers, c =>
    {
        var source = new Source(c.Items.Concat(Broken()));
        var taken = new List<long>();
        Assert.Throws<ArithmeticException>(() =>
        {
            foreach (var result in c.Run.Map(source, (item, _) => Square(item)))
            {
                taken.Add(result);
            }
        });
        return taken.SequenceEqual(c.Items.Select(Square)) && source.Disposed == 1;
    });

    [Property(MaxTest = 100)]
    public Property A_run_that_is_stopped_reads_nothing_more()
    {
        var cases = Runs.SelectMany(r => Gen.Choose(1, 30).Select(k => (Run: r, Taken: k)));
        return Prop.ForAll(cases.ToArbitrary(), async c =>
        {
            using var stop = new CancellationTokenSource();
            var source = new Source(Endless());
            var taken = 0;
            Assert.ThrowsAny<OperationCanceledException>(() =>
            {
                foreach (var _ in c.Run.Map(source, (item, _) => Square(item), stop.Token))
                {
                    if (++taken == c.Taken)
                    {
                        stop.Cancel();
                    }
                }
            });
            using var stopAsync = new CancellationTokenSource();
            var other = new Source(Endless());
            var takenAsync = 0;
            await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
            {
                await foreach (var _ in c.Run.MapAsync(other, (item, _) => Square(item)).WithCancellation(stopAsync.Token))
                {
                    if (++takenAsync == c.Taken)
                    {
                        await stopAsync.CancelAsync();
                    }
                }
            });
            return taken == c.Taken && takenAsync == c.Taken && source.Disposed == 1 && other.Disposed == 1
                && source.Read == c.Taken - 1 + c.Run.LookAhead && other.Read == source.Read;
        });
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public async Task Stopping_reaches_what_is_being_worked_on(int workers)
    {
        // The function would wait for ever; only its token ends it.
        using var stop = new CancellationTokenSource();
        using var begun = new SemaphoreSlim(0);
        int Make(int item, CancellationToken token)
        {
            begun.Release();
            token.WaitHandle.WaitOne();
            token.ThrowIfCancellationRequested();
            return item;
        }

        var run = new OrderedParallel { Workers = workers };
        var loop = Task.Run(() => run.Map(Endless(), Make, stop.Token).First());
        await begun.WaitAsync();
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => loop);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => ToListAsync(run.MapAsync(Endless(), Make, stop.Token)));
    }

    [Property(MaxTest = 100)]
    public Property Leaving_early_stops_the_workers_before_it_returns()
    {
        var cases = Runs.SelectMany(r => Gen.Choose(0, 20).Select(k => (Run: r, Taken: k)));
        return Prop.ForAll(cases.ToArbitrary(), async c =>
        {
            var counter = new Counter();
            long Make(int item, CancellationToken stop)
            {
                using var one = counter.Enter();
                return Square(item);
            }

            var source = new Source(Endless());
            using (var results = c.Run.Map(source, Make).GetEnumerator())
            {
                for (var k = 0; k < c.Taken; k++)
                {
                    Assert.True(results.MoveNext());
                }
            }

            var quiet = counter.Now == 0;
            var other = new Source(Endless());
            await using (var results = c.Run.MapAsync(other, Make).GetAsyncEnumerator())
            {
                for (var k = 0; k < c.Taken; k++)
                {
                    Assert.True(await results.MoveNextAsync());
                }
            }

            var begun = counter.Entered;
            await Task.Yield();
            return quiet && counter.Now == 0 && counter.Entered == begun && source.Read == (c.Taken == 0 ? 0 : c.Taken - 1 + c.Run.LookAhead) && other.Read == source.Read;
        });
    }

    [Fact]
    public async Task Leaving_waits_for_what_is_being_worked_on()
    {
        // Each item but the first takes until nobody wants it, and a while more; not on the loop's own thread, which has to leave.
        var inside = 0;
        using var begun = new SemaphoreSlim(0);
        int? loop = null;
        int Make(int item, CancellationToken stop)
        {
            if (item == 0 || Environment.CurrentManagedThreadId == loop)
            {
                return item;
            }

            Interlocked.Increment(ref inside);
            begun.Release();
            stop.WaitHandle.WaitOne();
            Thread.Sleep(50);
            Interlocked.Decrement(ref inside);
            return item;
        }

        var run = new OrderedParallel { Workers = 2 };
        await Task.Run(() =>
        {
            loop = Environment.CurrentManagedThreadId;
            using (var results = run.Map(Endless(), Make).GetEnumerator())
            {
                Assert.True(results.MoveNext());
                begun.Wait();
            }

            Assert.Equal(0, Volatile.Read(ref inside));
        });

        loop = null;
        await using (var results = run.MapAsync(Endless(), Make).GetAsyncEnumerator())
        {
            Assert.True(await results.MoveNextAsync());
            await begun.WaitAsync();
        }

        Assert.Equal(0, Volatile.Read(ref inside));
    }

    [Fact]
    public async Task Runs_inside_runs_come_to_an_end()
    {
        // Four levels of sixteen workers on the pool: far more than it has threads for.
        static long Sum(int level) => level == 0
            ? 1
            : new OrderedParallel { Workers = 16, LookAhead = 16 }.Map(Enumerable.Range(0, 8), (_, _) => Sum(level - 1)).Sum();
        var sums = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => Sum(4))));
        Assert.All(sums, sum => Assert.Equal(8 * 8 * 8 * 8, sum));
    }

    [Fact]
    public void Each_enumeration_is_a_run_of_its_own()
    {
        var results = new OrderedParallel { Workers = 2 }.Map((int[])[1, 2, 3], (item, _) => item + 1);
        Assert.Equal([2, 3, 4], results);
        Assert.Equal([2, 3, 4], results);
        Assert.Empty(new OrderedParallel { Workers = 2 }.Map(Array.Empty<int>(), (item, _) => item));
    }

    [Fact]
    public void Bounds_are_checked_and_named()
    {
        Assert.Contains("Workers must be between 1 and 256, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => new OrderedParallel { Workers = 0 }).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new OrderedParallel { Workers = 257 });
        Assert.Contains("LookAhead must be between 1 and 65536, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => new OrderedParallel { Workers = 1, LookAhead = 0 }).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new OrderedParallel { Workers = 1, LookAhead = 65_537 });
        var run = new OrderedParallel { Workers = 1 };
        Assert.Throws<ArgumentNullException>(() => run.Map<int, int>(null!, (item, _) => item));
        Assert.Throws<ArgumentNullException>(() => run.Map<int, int>([], null!));
        Assert.Throws<ArgumentNullException>(() => run.MapAsync<int, int>(null!, (item, _) => item));
        Assert.Throws<ArgumentNullException>(() => run.MapAsync<int, int>([], null!));
    }

    private static IEnumerable<int> Endless()
    {
        for (var i = 0; ; i = (i + 1) % 100_000)
        {
            yield return i;
        }
    }

    private static IEnumerable<int> Broken()
    {
        foreach (var _ in (int[])[1])
        {
            throw new ArithmeticException("no more");
        }

        yield break;
    }

    /// <summary>An input that counts what is read of it.</summary>
    private sealed class Source(IEnumerable<int> items) : IEnumerable<int>
    {
        public int Read { get; private set; }

        public int Disposed { get; private set; }

        public IEnumerator<int> GetEnumerator()
        {
            try
            {
                foreach (var item in items)
                {
                    Read++;
                    yield return item;
                }
            }
            finally
            {
                Disposed++;
            }
        }

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }

    /// <summary>Counts how many are inside at once.</summary>
    private sealed class Counter
    {
        private int _now;
        private int _most;
        private int _entered;

        public int Now => Volatile.Read(ref _now);

        public int Most => Volatile.Read(ref _most);

        public int Entered => Volatile.Read(ref _entered);

        public IDisposable Enter()
        {
            Interlocked.Increment(ref _entered);
            var now = Interlocked.Increment(ref _now);
            for (var most = Most; now > most && Interlocked.CompareExchange(ref _most, now, most) != most; most = Most)
            {
            }

            return new Exit(() => Interlocked.Decrement(ref _now));
        }
    }

    private sealed class Tools
    {
        private int _made;
        private int _shared;

        public int Made => Volatile.Read(ref _made);

        public bool WasShared => Volatile.Read(ref _shared) != 0;

        public Tool Make()
        {
            Interlocked.Increment(ref _made);
            return new Tool(() => Interlocked.Increment(ref _shared));
        }
    }

    private sealed class Tool(Action shared)
    {
        private int _users;

        public IDisposable Use()
        {
            if (Interlocked.Increment(ref _users) > 1)
            {
                shared();
            }

            return new Exit(() => Interlocked.Decrement(ref _users));
        }
    }

    private sealed class Exit(Action leave) : IDisposable
    {
        public void Dispose() => leave();
    }
}

namespace Warmup.TestSupport;

/// <summary>The bytes of memory that this thread takes while it does something.</summary>
public static class Allocation
{
    public static long Of(Action action)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        action();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    /// <summary>The least of several rounds: the first ones load and compile, the least is what the action itself takes.</summary>
    public static long LeastOf(Action action, int rounds = 5) => Enumerable.Range(0, rounds).Min(_ => Of(action));
}

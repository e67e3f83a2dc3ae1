namespace Warmup.TestSupport;

/// <summary>The whole check, for which the environment has WARMUP_ALL=1: what a usual run tries on a sample it tries on everything.</summary>
public static class WholeCheck
{
    public static bool IsAskedFor { get; } = Environment.GetEnvironmentVariable("WARMUP_ALL") == "1";

    /// <summary>One of every few items, the first or one after it; all in the whole check.</summary>
    public static IEnumerable<T> OneIn<T>(int few, IEnumerable<T> all, int after = 0) => IsAskedFor ? all : all.Where((_, i) => i % few == after % few);
}

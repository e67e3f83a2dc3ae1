namespace Warmup.TestSupport;

/// <summary>The whole check, for which the environment has WARMUP_ALL=1: what a usual run tries on a sample it tries on everything.</summary>
public static class WholeCheck
{
    public static bool IsAskedFor { get; } = Environment.GetEnvironmentVariable("WARMUP_ALL") == "1";

    /// <summary>The first of every few items; all in the whole check.</summary>
    public static IEnumerable<T> OneIn<T>(int few, IEnumerable<T> all) => IsAskedFor ? all : all.Where((_, i) => i % few == 0);
}

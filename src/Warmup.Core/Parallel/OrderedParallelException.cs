using System.Globalization;

namespace Warmup;

/// <summary>An item of an <see cref="OrderedParallel"/> run failed; <see cref="Index"/> says which, and the inner exception why.</summary>
public sealed class OrderedParallelException : InvalidOperationException
{
    /// <summary>An item failed.</summary>
    /// <param name="index">The item's place in the input, counted from 0.</param>
    /// <param name="innerException">What the function threw.</param>
    /// <exception cref="ArgumentNullException"><paramref name="innerException"/> is <see langword="null"/>.</exception>
    public OrderedParallelException(long index, Exception innerException)
        : base(string.Create(CultureInfo.InvariantCulture, $"item {index} of the run failed: {Require.NotNull(innerException).Message}"), innerException) => Index = index;

    /// <summary>The failed item's place in the input, counted from 0.</summary>
    public long Index { get; }
}

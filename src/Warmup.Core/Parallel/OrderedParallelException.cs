using System.Globalization;

namespace Warmup;

/// <summary>An item of an <see cref="OrderedParallel"/> run failed; <see cref="Index"/> says which, and the inner exception why.</summary>
public sealed class OrderedParallelException : InvalidOperationException
{
    /// <summary>An exception without details.</summary>
    public OrderedParallelException()
        : this("an item of the run failed")
    {
    }

    /// <summary>An exception with a message.</summary>
    /// <param name="message">What is wrong.</param>
    public OrderedParallelException(string? message)
        : base(message)
    {
    }

    /// <summary>An exception with a message, caused by another.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="innerException">The cause.</param>
    public OrderedParallelException(string? message, Exception? innerException)
        : base(message, innerException)
    {
    }

    /// <summary>An item failed.</summary>
    /// <param name="index">The item's place in the input, counted from 0.</param>
    /// <param name="innerException">What the function threw.</param>
    public OrderedParallelException(long index, Exception innerException)
        : base(string.Create(CultureInfo.InvariantCulture, $"item {index} of the run failed: {Require.NotNull(innerException).Message}"), innerException) => Index = index;

    /// <summary>The failed item's place in the input, counted from 0.</summary>
    public long Index { get; }
}

namespace Warmup.Testing;

/// <summary>A rule broke a law that it claims to keep, or the law was never tried.</summary>
public sealed class LawBrokenException : Exception
{
    /// <summary>An exception without a report.</summary>
    public LawBrokenException()
        : this("a law was broken")
    {
    }

    /// <summary>An exception with the reports as its message.</summary>
    /// <param name="message">The reports.</param>
    public LawBrokenException(string? message)
        : base(message)
    {
    }

    /// <summary>An exception caused by another.</summary>
    /// <param name="message">The reports.</param>
    /// <param name="innerException">The cause.</param>
    public LawBrokenException(string? message, Exception? innerException)
        : base(message, innerException)
    {
    }
}

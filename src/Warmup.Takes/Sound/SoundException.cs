namespace Warmup.Takes;

/// <summary>A recording that cannot be read; the message says why, and what to do.</summary>
public sealed class SoundException : Exception
{
    /// <summary>An error without words of its own.</summary>
    public SoundException()
        : base("the recording cannot be read")
    {
    }

    /// <summary>An error.</summary>
    /// <param name="message">What is wrong, and what to do.</param>
    public SoundException(string? message)
        : base(message)
    {
    }

    /// <summary>An error that another one led to.</summary>
    /// <param name="message">What is wrong, and what to do.</param>
    /// <param name="innerException">What the decoder said.</param>
    public SoundException(string? message, Exception? innerException)
        : base(message, innerException)
    {
    }
}

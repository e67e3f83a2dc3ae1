namespace Warmup.Reading;

/// <summary>A file that cannot be read: not of a known kind, broken, or larger than is read. The message says what is wrong and where.</summary>
public sealed class ReadingException : FormatException
{
    /// <summary>An error without words of its own.</summary>
    public ReadingException()
        : base("the file cannot be read")
    {
    }

    /// <summary>An error in the file as a whole.</summary>
    /// <param name="message">What is wrong, and what to do.</param>
    public ReadingException(string? message)
        : base(message)
    {
    }

    /// <summary>An error that another one led to.</summary>
    /// <param name="message">What is wrong, and what to do.</param>
    /// <param name="innerException">What went wrong below.</param>
    public ReadingException(string? message, Exception? innerException)
        : base(message, innerException)
    {
    }

    /// <summary>An error at a place.</summary>
    /// <param name="message">What is wrong, and what to do.</param>
    /// <param name="place">Where.</param>
    /// <param name="innerException">What went wrong below, if anything.</param>
    /// <exception cref="ArgumentNullException"><paramref name="message"/> is <see langword="null"/>.</exception>
    public ReadingException(string message, PiecePlace place, Exception? innerException = null)
        : base($"{place}: {message ?? throw new ArgumentNullException(nameof(message))}", innerException) => Place = place;

    /// <summary>Where; <c>default</c> for the file as a whole.</summary>
    public PiecePlace Place { get; }
}

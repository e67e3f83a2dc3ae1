namespace Warmup;

/// <summary>A file format a score can be written in. An exporter is one class that implements this.</summary>
public interface IScoreFormat
{
    /// <summary>The format's name, for people.</summary>
    string Name { get; }

    /// <summary>The endings of its files, with the dot, in lower case; the first is the usual one.</summary>
    ValueList<string> Extensions { get; }

    /// <summary>Writes a score. Equal scores give equal bytes.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">The format cannot hold the score.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    void Write(Score score, Stream destination, CancellationToken cancellationToken = default);
}

/// <summary>A format cannot hold a score: a value lies outside what its standard allows.</summary>
public sealed class ExportException : InvalidOperationException
{
    /// <summary>An exception with a message.</summary>
    /// <param name="message">The value, the allowed range and the place.</param>
    public ExportException(string? message)
        : base(message)
    {
    }

    /// <summary>An exception with a message, caused by another.</summary>
    /// <param name="message">The value, the allowed range and the place.</param>
    /// <param name="innerException">The cause.</param>
    public ExportException(string? message, Exception? innerException)
        : base(message, innerException)
    {
    }
}

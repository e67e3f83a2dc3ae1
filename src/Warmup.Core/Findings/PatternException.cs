namespace Warmup;

/// <summary>A scale has no such lines, or the pattern gives too many notes; <see cref="Finding"/> says which and what would clear it.</summary>
public sealed class PatternException : InvalidOperationException
{
    /// <summary>An exception without a finding of its own.</summary>
    public PatternException()
        : this("the scale has no such lines")
    {
    }

    /// <summary>An exception with a message.</summary>
    /// <param name="message">What is wrong.</param>
    public PatternException(string message)
        : this(new Finding(FindingCode.PatternRefused, Severity.Error, message, string.Empty))
    {
    }

    /// <summary>An exception with a message, caused by another.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="innerException">The cause.</param>
    public PatternException(string message, Exception? innerException)
        : base(message, innerException) => Finding = new Finding(FindingCode.PatternRefused, Severity.Error, message, string.Empty);

    /// <summary>An exception that says what the finding says.</summary>
    /// <param name="finding">The finding.</param>
    public PatternException(Finding finding)
        : base(Require.NotNull(finding).Describe()) => Finding = finding;

    /// <summary>What was refused and what would clear it.</summary>
    public Finding Finding { get; }
}

namespace Warmup;

/// <summary>A scale has no such lines, or the pattern gives too many notes; <see cref="Finding"/> says which and what would clear it.</summary>
public sealed class PatternException : InvalidOperationException
{
    /// <summary>An exception that says what the finding says.</summary>
    /// <param name="finding">The finding.</param>
    /// <exception cref="ArgumentNullException"><paramref name="finding"/> is <see langword="null"/>.</exception>
    public PatternException(Finding finding)
        : base(Require.NotNull(finding).Describe()) => Finding = finding;

    /// <summary>What was refused and what would clear it.</summary>
    public Finding Finding { get; }
}

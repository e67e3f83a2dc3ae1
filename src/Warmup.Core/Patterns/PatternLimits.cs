using System.Globalization;

namespace Warmup;

/// <summary>The bounds of a pattern's tree and of its expansion (the project's own settings).</summary>
internal static class PatternLimits
{
    public const int Levels = 64;

    public const int Nodes = 1_000;

    public const int Notes = 100_000;

    /// <summary>The places from the tonic to the upper tonic in the scale for which a tree is bounded before it is expanded.</summary>
    public const int UsualSteps = 7;

    public static string TooMany(string what, int most, long found) =>
        string.Create(CultureInfo.InvariantCulture, $"a pattern must have at most {most} {what}, not {found}");
}

/// <summary>A pattern's tree would be too deep or too large. It says so as data, for whoever reads the pattern from a text.</summary>
internal sealed class PatternTooLargeException(string reason) : ArgumentException(reason)
{
    /// <summary>What the bound is and what was found.</summary>
    public string Reason { get; } = reason;
}

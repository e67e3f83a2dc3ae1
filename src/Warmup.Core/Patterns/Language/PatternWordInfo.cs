namespace Warmup;

/// <summary>A word of the patterns' text, for people.</summary>
/// <param name="Name">The word.</param>
/// <param name="Form">How it is written: <c>.take(n)</c>.</param>
/// <param name="Meaning">What it does; <c>n</c> stands for its number.</param>
/// <param name="IsPrimitive">Whether it begins a pattern; the others stand behind a dot.</param>
public sealed record PatternWordInfo(string Name, string Form, string Meaning, bool IsPrimitive);

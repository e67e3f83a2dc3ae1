namespace Warmup.Reading;

/// <summary>What is known about a file before it is read. Immutable, compared by value.</summary>
public sealed record ReadingOptions
{
    /// <summary>Nothing is known: everything comes from the file or is proposed.</summary>
    public static ReadingOptions Default { get; } = new();

    /// <summary>The scale; <see langword="null"/>, the default, where the file says it or it is proposed.</summary>
    public Scale? Scale { get; init; }

    /// <summary>The tonic; <see langword="null"/>, the default, where the file says it or it is proposed. Its octave is kept.</summary>
    public Tonic? Tonic { get; init; }

    /// <summary>The part that is read: its name in any case, or its number from 1; by default the pitched part with the most syllables.</summary>
    public string? Part { get; init; }
}

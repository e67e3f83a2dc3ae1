namespace Warmup;

/// <summary>A band of pitches with a name: what someone sings with comfort, for instance.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record PitchBand
{
    /// <summary>Makes a band.</summary>
    /// <param name="name">1 to 100 characters, without control or bidirectional characters.</param>
    /// <param name="low">The lowest note.</param>
    /// <param name="high">The highest note, not below the lowest.</param>
    /// <exception cref="ArgumentException">The name is empty, too long or holds such characters, or the highest note lies below the lowest.</exception>
    public PitchBand(string name, NoteName low, NoteName high)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = Require.PlainText(name, LongestName);
        (Low, High) = low.Midi <= high.Midi
            ? (low, high)
            : throw new ArgumentException($"the lowest note {low} lies above the highest, {high}; swap them", nameof(low));
    }

    /// <summary>The longest name, in characters: 100.</summary>
    internal static int LongestName => 100;

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The lowest note.</summary>
    public NoteName Low { get; }

    /// <summary>The highest note, not below <see cref="Low"/>.</summary>
    public NoteName High { get; }

    /// <summary>Whether the band was assumed and not measured; false by default. What shows the band says so.</summary>
    public bool IsAssumed { get; init; }

    /// <summary>The name and the notes: <c>Wren (A3 to E5)</c>.</summary>
    public override string ToString() => $"{Name} ({Low} to {High})";
}

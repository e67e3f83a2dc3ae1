namespace Warmup.ManyMachines;

/// <summary>
/// What was found over some indexes. Tallies add up in any order to the same sum, and the checksum tells an index that is missing or there
/// twice.
/// </summary>
internal sealed record Tally
{
    public static Tally Empty { get; } = new();

    /// <summary>Indexes that were worked through.</summary>
    public long Patterns { get; init; }

    /// <summary>Pairs of a pattern and a scale that has no such lines.</summary>
    public long Refused { get; init; }

    public long Lines { get; init; }

    public long Notes { get; init; }

    /// <summary>Pairs of a pattern and a scale whose every line reads the same from its end.</summary>
    public long Palindromes { get; init; }

    /// <summary>Indexes whose pattern, written as text and read again, is not at that index. The library's law says there are none.</summary>
    public long Broken { get; init; }

    /// <summary>A sum of one well-mixed number for each index and what was heard at it, modulo 2 to the power of 64.</summary>
    public ulong Checksum { get; init; }

    public static Tally operator +(Tally one, Tally other) => new()
    {
        Patterns = one.Patterns + other.Patterns,
        Refused = one.Refused + other.Refused,
        Lines = one.Lines + other.Lines,
        Notes = one.Notes + other.Notes,
        Palindromes = one.Palindromes + other.Palindromes,
        Broken = one.Broken + other.Broken,
        Checksum = unchecked(one.Checksum + other.Checksum),
    };
}

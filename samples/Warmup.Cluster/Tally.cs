using System.Globalization;

namespace Warmup.ManyMachines;

/// <summary>
/// What was found at some indexes. Tallies add up to the same sum in any order, and the checksum shows an index that is missing or counted
/// twice.
/// </summary>
internal sealed record Tally
{
    public static Tally Empty { get; } = new();

    /// <summary>Indexes that were worked through.</summary>
    public long Patterns { get; init; }

    /// <summary>Pairs of a pattern and a scale that refuses it.</summary>
    public long Refused { get; init; }

    public long Lines { get; init; }

    public long Notes { get; init; }

    /// <summary>Pairs of a pattern and a scale in which every line reads the same backwards.</summary>
    public long Palindromes { get; init; }

    /// <summary>Indexes whose pattern, written as text and read again, has another index. By the library's law there are none.</summary>
    public long Broken { get; init; }

    /// <summary>A sum of one well-mixed number for each index and what was heard at it, modulo 2 to the power of 64.</summary>
    public ulong Checksum { get; init; }

    public static Tally operator +(Tally one, Found found) => new()
    {
        Patterns = one.Patterns + 1,
        Refused = one.Refused + found.Refused,
        Lines = one.Lines + found.Lines,
        Notes = one.Notes + found.Notes,
        Palindromes = one.Palindromes + found.Palindromes,
        Broken = one.Broken + (found.IsBroken ? 1 : 0),
        Checksum = unchecked(one.Checksum + found.Checksum),
    };

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

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"patterns {Patterns}, refused {Refused}, lines {Lines}, notes {Notes}, palindromes {Palindromes}, broken {Broken}, checksum {Checksum:x16}");
}

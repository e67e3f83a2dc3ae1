namespace Warmup.ManyMachines;

/// <summary>What was found at one index: a row of a part.</summary>
/// <param name="Index">The index of the pattern in its enumeration.</param>
/// <param name="Refused">The scales that refuse the pattern.</param>
/// <param name="Lines">The lines in all other scales.</param>
/// <param name="Notes">The notes of these lines.</param>
/// <param name="Palindromes">The scales in which every line reads the same backwards.</param>
/// <param name="IsBroken">Whether the pattern, written as text and read again, has another index. By the library's law none has.</param>
/// <param name="Heard">A number made of every tone in every line: patterns that sing the same in all scales have the same number.</param>
internal readonly record struct Found(long Index, int Refused, int Lines, int Notes, int Palindromes, bool IsBroken, ulong Heard)
{
    /// <summary>A well-mixed number of the index and all that was heard at it.</summary>
    public ulong Checksum => Mix(Mix((ulong)Index) ^ Heard);

    /// <summary>The output function of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014): every bit depends on every bit.</summary>
    public static ulong Mix(ulong z)
    {
        unchecked
        {
            z += 0x9E3779B97F4A7C15;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}

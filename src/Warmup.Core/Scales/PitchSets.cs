using System.Numerics;

namespace Warmup;

/// <summary>Sets of the twelve semitones as bits, bit 0 for the tonic.</summary>
internal static class PitchSets
{
    public static int Of(ValueList<Degree> degrees)
    {
        var set = 0;
        foreach (var degree in degrees)
        {
            set |= 1 << (((degree.Semitones % 12) + 12) % 12);
        }

        return set;
    }

    public static ValueList<int> ToValueList(int set) => Enumerable.Range(0, 12).Where(i => (set & (1 << i)) != 0).ToValueList();

    /// <summary>Whether one note was added, left out, or put in another's place.</summary>
    public static bool DifferByOne(int a, int b)
    {
        var onlyA = BitOperations.PopCount((uint)(a & ~b));
        var onlyB = BitOperations.PopCount((uint)(b & ~a));
        return Math.Max(onlyA, onlyB) == 1;
    }
}

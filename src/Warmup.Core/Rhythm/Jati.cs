namespace Warmup;

/// <summary>The count of a laghu, the one anga of a tala that varies.</summary>
public enum Jati
{
    /// <summary>Three aksharas.</summary>
    Tisra,

    /// <summary>Four aksharas.</summary>
    Chatusra,

    /// <summary>Five aksharas.</summary>
    Khanda,

    /// <summary>Seven aksharas.</summary>
    Misra,

    /// <summary>Nine aksharas.</summary>
    Sankirna,
}

/// <summary>What the jatis count.</summary>
internal static class Jatis
{
    private static readonly int[] Counts = [3, 4, 5, 7, 9];

    /// <summary>The five jatis, from the shortest to the longest.</summary>
    public static ValueList<Jati> All { get; } = [Jati.Tisra, Jati.Chatusra, Jati.Khanda, Jati.Misra, Jati.Sankirna];

    /// <summary>The aksharas of a laghu: 3, 4, 5, 7 or 9.</summary>
    /// <param name="jati">The jati.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the five.</exception>
    public static int Aksharas(this Jati jati) => Counts[Require.InRange((int)jati, 0, Counts.Length - 1, nameof(jati))];
}

using System.Globalization;

namespace Warmup;

/// <summary>The count of a laghu, the one anga of a tala that varies; the number of the value is the count in aksharas.</summary>
public enum Jati
{
    /// <summary>Three aksharas.</summary>
    Tisra = 3,

    /// <summary>Four aksharas.</summary>
    Chatusra = 4,

    /// <summary>Five aksharas.</summary>
    Khanda = 5,

    /// <summary>Seven aksharas.</summary>
    Misra = 7,

    /// <summary>Nine aksharas.</summary>
    Sankirna = 9,
}

/// <summary>What the jatis count.</summary>
internal static class Jatis
{
    /// <summary>The five jatis, from the shortest to the longest.</summary>
    public static ValueList<Jati> All { get; } = [Jati.Tisra, Jati.Chatusra, Jati.Khanda, Jati.Misra, Jati.Sankirna];

    /// <summary>The aksharas of a laghu: 3, 4, 5, 7 or 9.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the five.</exception>
    public static int Aksharas(this Jati jati) => (int)All[jati.Index()];

    /// <summary>The place among the five.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the five.</exception>
    public static int Index(this Jati jati) => jati switch
    {
        Jati.Tisra => 0,
        Jati.Chatusra => 1,
        Jati.Khanda => 2,
        Jati.Misra => 3,
        Jati.Sankirna => 4,
        _ => throw new ArgumentOutOfRangeException(
            nameof(jati), jati, string.Create(CultureInfo.InvariantCulture, $"jati must be one that counts 3, 4, 5, 7 or 9, not {(int)jati}")),
    };
}

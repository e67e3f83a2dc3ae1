using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>The whole-number time of a section: ticks so fine that every note value down to a 128th is a whole number of them.</summary>
/// <param name="Resolution">Grid steps an akshara.</param>
/// <param name="Type">The lower number of the time signature: 4 for a quarter.</param>
/// <param name="Parts">How many of these an akshara is: 3 in a compound meter, 1 otherwise.</param>
internal readonly record struct TickGrid(int Resolution, int Type, int Parts)
{
    /// <summary>The number of the shortest note value: a 128th is the seventh half of a whole note.</summary>
    public const int ShortestType = 7;

    private const int TicksPerPart = 128;

    public int TicksPerStep => TicksPerPart * Parts;

    public long Akshara => (long)Resolution * TicksPerStep;

    /// <summary>The note value that the time signature counts.</summary>
    public long Part => (long)Resolution * TicksPerPart;

    public long Whole => Part * Type;

    /// <summary>A 128th note.</summary>
    public long Shortest => Whole >> ShortestType;

    public static TickGrid Of(Section section) => new(section.Resolution, section.Meter.SignatureType, section.Meter.IsCompound ? 3 : 1);

    public long Ticks(int steps) => (long)steps * TicksPerStep;

    public long Ticks(Rational aksharas)
    {
        var ticks = aksharas * Akshara;
        return ticks.IsInteger
            ? ticks.Numerator
            : throw new ExportException(string.Create(
                CultureInfo.InvariantCulture, $"a measure at akshara {aksharas + 1} does not fall on the section's grid of 1/{Resolution} akshara"));
    }

    /// <summary>Reads a length as a plain or dotted note value, from a dotted whole note to a 128th.</summary>
    public bool TryGetValue(long ticks, out int type, out bool dotted)
    {
        var value = Whole;
        for (type = 0; type <= ShortestType; type++, value >>= 1)
        {
            if (ticks == value || (2 * ticks == 3 * value && type < ShortestType))
            {
                dotted = ticks != value;
                return true;
            }
        }

        dotted = false;
        return false;
    }
}

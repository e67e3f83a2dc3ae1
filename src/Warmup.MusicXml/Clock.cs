using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>The whole-number time of a section: ticks so fine that every note value down to a 128th is a whole number of them.</summary>
/// <param name="Resolution">Grid steps an akshara.</param>
/// <param name="BeatType">The note value of an akshara: 4 for a quarter.</param>
internal readonly record struct Clock(int Resolution, int BeatType)
{
    public const int TicksPerStep = 128;

    /// <summary>The number of the shortest note value: a 128th is the seventh half of a whole note.</summary>
    public const int ShortestType = 7;

    public long Akshara => (long)Resolution * TicksPerStep;

    public long Whole => Akshara * BeatType;

    /// <summary>A 128th note.</summary>
    public long Shortest => Whole >> ShortestType;

    public static Clock Of(Section section) => section.Meter.BeatType is 1 or 2 or 4 or 8 or 16 or 32
        ? new Clock(section.Resolution, section.Meter.BeatType)
        : throw new ExportException(string.Create(
            CultureInfo.InvariantCulture, $"the beat of a meter must be a 1st, 2nd, 4th, 8th, 16th or 32nd of a whole note, not {section.Meter.BeatType}"));

    public long Ticks(Rational aksharas)
    {
        var ticks = aksharas * Akshara;
        return ticks.IsInteger
            ? ticks.Numerator
            : throw new ExportException($"a measure at {aksharas} aksharas does not fall on the section's grid of 1/{Resolution} akshara");
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

using System.Globalization;

namespace Warmup.Voices;

/// <summary>What is wrong with the values of a singer, in words; <see langword="null"/> where nothing is.</summary>
internal static class SingerFaults
{
    private const int LowestMidi = 24;
    private const int HighestMidi = 108;

    public static string? OfAlias(string alias)
    {
        if (string.IsNullOrWhiteSpace(alias) || alias.Length > Singer.LongestAlias)
        {
            return string.Create(CultureInfo.InvariantCulture, $"an alias must have 1 to {Singer.LongestAlias} characters, not {alias.Trim().Length}");
        }

        var bad = Require.IndexOfControl(alias);
        return bad < 0
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"an alias must not hold control or bidirectional characters (U+{(int)alias[bad]:X4} at position {bad + 1})");
    }

    public static string? OfRange(NoteName low, NoteName high) => OfNote(low, "the lowest comfortable note") ?? OfNote(high, "the highest comfortable note")
        ?? (low.Midi > high.Midi ? $"the lowest comfortable note {low} lies above the highest, {high}; swap them" : null);

    public static string? OfFullLow(NoteName? full, NoteName low) => full is not { } note
        ? null
        : OfNote(note, "the lowest note of the full range") ?? (note.Midi > low.Midi
            ? $"the lowest note of the full range, {note}, lies above the lowest comfortable note {low}; the full range holds the comfortable one"
            : null);

    public static string? OfFullHigh(NoteName? full, NoteName high) => full is not { } note
        ? null
        : OfNote(note, "the highest note of the full range") ?? (note.Midi < high.Midi
            ? $"the highest note of the full range, {note}, lies below the highest comfortable note {high}; the full range holds the comfortable one"
            : null);

    public static string? OfTrials(int count) => count >= 1 && count <= SustainedTone.MostTrials
        ? null
        : string.Create(CultureInfo.InvariantCulture, $"the number of trials must be between 1 and {SustainedTone.MostTrials}, not {count}");

    public static string OfDay(DateOnly? date) => date is { } day ? $"of {day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}" : "without a date";

    public static void Refuse(string? fault, string parameter)
    {
        if (fault is not null)
        {
            throw new ArgumentException(fault, parameter);
        }
    }

    private static string? OfNote(NoteName note, string what) =>
        note.Midi is >= LowestMidi and <= HighestMidi ? null : $"{what} must be between C1 and C8, not {note}";
}

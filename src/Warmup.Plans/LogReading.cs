using System.Globalization;

namespace Warmup.Plans;

/// <summary>What a log holds. Immutable, value equality.</summary>
public sealed record LogReading
{
    internal LogReading(ValueList<LogEntry> entries, ValueList<TextError> errors) => (Entries, Errors) = (entries, errors);

    /// <summary>The entries in the file's order.</summary>
    public ValueList<LogEntry> Entries { get; }

    /// <summary>What is wrong with the lines that could not be read, each with the number of its line. These lines are passed over.</summary>
    public ValueList<TextError> Errors { get; }

    /// <summary>How many entries and errors there are.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Entries.Count} entries, {Errors.Count} errors");
}

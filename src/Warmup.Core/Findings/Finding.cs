using System.Globalization;

namespace Warmup;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing need change.</summary>
    Note,

    /// <summary>The drill can be sung, with care.</summary>
    Warning,

    /// <summary>The drill does not fit, or cannot be made.</summary>
    Error,
}

/// <summary>The codes of the findings: stable names for programs.</summary>
public static class FindingCode
{
    /// <summary>A note lies above the singer's range.</summary>
    public const string AboveRange = "range.above";

    /// <summary>A note lies below the singer's range.</summary>
    public const string BelowRange = "range.below";

    /// <summary>A breath span is longer than the singer's capacity.</summary>
    public const string BreathTooLong = "breath.long";

    /// <summary>Notes follow each other too quickly.</summary>
    public const string TooFast = "agility.fast";

    /// <summary>No breaths can be placed so that every span stays within the singer's capacity.</summary>
    public const string NoBreathPlan = "breath.plan";

    /// <summary>A pattern would give too many notes.</summary>
    public const string PatternTooLong = "pattern.long";

    /// <summary>A scale has no such lines.</summary>
    public const string PatternRefused = "pattern.refused";

    /// <summary>A pattern without lines was to become a drill.</summary>
    public const string PatternEmpty = "pattern.empty";

    /// <summary>A line would go beyond a scale that has no upper tonic.</summary>
    public const string BeyondScale = "scale.beyond";

    /// <summary>A line turns on a note that the other list lacks.</summary>
    public const string NoteMissingFromList = "scale.missing";

    /// <summary>The typed tonic needed triple accidentals and was respelled.</summary>
    public const string TonicRespelled = "spelling.respelled";

    /// <summary>The lines cannot be put in time as asked.</summary>
    public const string TimeRefused = "time.refused";

    /// <summary>A note lies outside MIDI's 0 to 127.</summary>
    public const string OutsideMidi = "pitch.midi";

    /// <summary>The drone has a string less than was asked for.</summary>
    public const string DroneWithoutString = "drone.string";
}

/// <summary>Something found about a drill: what it is, where it is, and what would clear it.</summary>
/// <param name="Code">One of <see cref="FindingCode"/>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Message">What was found, with the measured value and the limit; one sentence, no full stop.</param>
/// <param name="Fix">What would clear it; empty where nothing would.</param>
public sealed record Finding(string Code, Severity Severity, string Message, string Fix)
{
    /// <summary>The alias of the singer it concerns, or <see langword="null"/>.</summary>
    public string? Singer { get; init; }

    /// <summary>The line of the drill, counted from 1, or <see langword="null"/>.</summary>
    public int? Line { get; init; }

    /// <summary>The onset in aksharas from the section's beginning, or <see langword="null"/>.</summary>
    public Rational? Beat { get; init; }

    /// <summary>The measured value, in <see cref="Unit"/>; or <see langword="null"/>.</summary>
    public double? Measured { get; init; }

    /// <summary>The limit it was held against, in <see cref="Unit"/>; or <see langword="null"/>.</summary>
    public double? Limit { get; init; }

    /// <summary>The unit of the measured value: <c>cents</c>, <c>s</c>; or <see langword="null"/>.</summary>
    public string? Unit { get; init; }

    /// <summary>The place, the message and the fix in one line.</summary>
    public override string ToString()
    {
        var place = Line is { } line ? string.Create(CultureInfo.InvariantCulture, $"line {line}: ") : string.Empty;
        var who = Singer is { } singer ? $"{singer}: " : string.Empty;
        return Fix.Length == 0 ? $"{who}{place}{Message}" : $"{who}{place}{Message}; {Fix}";
    }
}

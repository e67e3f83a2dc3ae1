using System.Globalization;

namespace Warmup;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; no change is needed.</summary>
    Note,

    /// <summary>The drill can be sung, with care.</summary>
    Warning,

    /// <summary>The drill does not fit, or cannot be made.</summary>
    Error,
}

/// <summary>The codes of the findings: stable names for programs.</summary>
public static class FindingCode
{
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

    /// <summary>The lines cannot be put in time in this way.</summary>
    public const string TimeRefused = "time.refused";

    /// <summary>The lines end inside the avartana.</summary>
    public const string EndsInsideAvartana = "time.uneven";

    /// <summary>A note lies outside MIDI's 0 to 127.</summary>
    public const string OutsideMidi = "pitch.midi";

    /// <summary>The drone has one string less than its style names.</summary>
    public const string DroneWithoutString = "drone.string";
}

/// <summary>Something found about a drill: what it is, where it is, and what would clear it. Immutable, value equality.</summary>
public sealed record Finding
{
    /// <summary>Says what was found.</summary>
    /// <param name="code">A stable name for programs: one of <see cref="FindingCode"/>, or one of your own.</param>
    /// <param name="severity">How much it matters.</param>
    /// <param name="message">What was found, with the measured value and the limit; one sentence, no full stop.</param>
    /// <param name="fix">What would clear it; empty where nothing would.</param>
    /// <exception cref="ArgumentException">The code or the message is empty, or the severity is none of the three.</exception>
    public Finding(string code, Severity severity, string message, string fix = "")
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(code);
        ArgumentException.ThrowIfNullOrWhiteSpace(message);
        Code = code;
        Severity = Require.Defined(severity);
        Message = message;
        Fix = Require.NotNull(fix);
    }

    /// <summary>A stable name for programs: one of <see cref="FindingCode"/>, or one that a check of your own gives.</summary>
    public string Code { get; }

    /// <summary>How much it matters.</summary>
    public Severity Severity { get; }

    /// <summary>What was found, with the measured value and the limit; one sentence, no full stop.</summary>
    public string Message { get; }

    /// <summary>What would clear it; empty where nothing would.</summary>
    public string Fix { get; }

    /// <summary>The alias of the singer it concerns, or <see langword="null"/>.</summary>
    public string? Singer { get; init; }

    /// <summary>Where it is; <see langword="null"/> where it concerns the whole drill.</summary>
    public ScorePlace? Place { get; init; }

    /// <summary>The measured value, in <see cref="Unit"/>; or <see langword="null"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a finite number.</exception>
    public double? Measured { get; init => field = Finite(value, nameof(Measured)); }

    /// <summary>The limit it was compared with, in <see cref="Unit"/>; or <see langword="null"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a finite number.</exception>
    public double? Limit { get; init => field = Finite(value, nameof(Limit)); }

    /// <summary>The unit of the measured value: <c>cents</c>, <c>s</c>; or <see langword="null"/>.</summary>
    public string? Unit { get; init; }

    /// <summary>The singer, the place, the message and the fix in one line, however long.</summary>
    public string Describe()
    {
        var who = Singer is { } singer ? $"{singer}: " : string.Empty;
        var where = Place is { } place ? $"{place}: " : string.Empty;
        return Fix.Length == 0 ? $"{who}{where}{Message}" : $"{who}{where}{Message}; {Fix}";
    }

    /// <summary>The same, cut to 200 characters; <see cref="Describe"/> gives all of it.</summary>
    public override string ToString() => OneLine.Of(Describe());

    private static double? Finite(double? value, string name) => value is { } number && !double.IsFinite(number)
        ? throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be a finite number, not {number}"))
        : value;
}

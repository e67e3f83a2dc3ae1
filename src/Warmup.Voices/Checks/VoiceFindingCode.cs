namespace Warmup.Voices;

/// <summary>The codes of what is found about a score and a singer: stable names for programs, beside those of <see cref="FindingCode"/>.</summary>
public static class VoiceFindingCode
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
}

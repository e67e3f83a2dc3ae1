using System.Globalization;

namespace Warmup;

/// <summary>How long somebody has sung: it decides how much of the sustained tone a phrase may take and how short a breath may be.</summary>
public enum Experience
{
    /// <summary>New to singing.</summary>
    Beginner,

    /// <summary>Sings regularly.</summary>
    Intermediate,

    /// <summary>Trained.</summary>
    Advanced,
}

/// <summary>A singer: an alias, the comfortable range, the sustained tone and the experience. Nothing personal beyond the alias.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record Singer
{
    /// <summary>The longest alias, in characters.</summary>
    public const int LongestAlias = 60;

    /// <summary>The shortest sustained tone that is taken for a measurement, in seconds (the project's own bound).</summary>
    public const int ShortestTone = 1;

    /// <summary>The longest sustained tone that is taken for a measurement, in seconds (the project's own bound).</summary>
    public const int LongestTone = 120;

    /// <summary>Makes a singer.</summary>
    /// <param name="alias">1 to 60 characters without control characters.</param>
    /// <param name="low">The lowest comfortable note, C1 to C8.</param>
    /// <param name="high">The highest comfortable note, C1 to C8, not below the lowest.</param>
    /// <param name="sustainedSeconds">The longest sustained tone in seconds, 1 to 120.</param>
    /// <param name="experience">The experience.</param>
    /// <exception cref="ArgumentException">A value lies outside its range, or the range is upside down.</exception>
    public Singer(string alias, NoteName low, NoteName high, Rational sustainedSeconds, Experience experience = Experience.Beginner)
    {
        if (string.IsNullOrWhiteSpace(alias))
        {
            throw new ArgumentException($"an alias must have 1 to {LongestAlias} characters", nameof(alias));
        }

        Alias = Require.PlainText(alias, LongestAlias);
        RequireVoice(low, "lowest", nameof(low));
        RequireVoice(high, "highest", nameof(high));
        if (low.Midi > high.Midi)
        {
            throw new ArgumentException($"the lowest comfortable note {low} lies above the highest, {high}; swap them", nameof(low));
        }

        if (sustainedSeconds < ShortestTone || sustainedSeconds > LongestTone)
        {
            throw new ArgumentOutOfRangeException(
                nameof(sustainedSeconds),
                sustainedSeconds,
                string.Create(CultureInfo.InvariantCulture, $"the sustained tone must be between {ShortestTone} and {LongestTone} seconds, not {sustainedSeconds.ToDouble():0.###}"));
        }

        if (!Enum.IsDefined(experience))
        {
            throw new ArgumentOutOfRangeException(nameof(experience), experience, "experience must be beginner, intermediate or advanced");
        }

        Low = low;
        High = high;
        SustainedSeconds = sustainedSeconds;
        Experience = experience;
    }

    /// <summary>The alias.</summary>
    public string Alias { get; }

    /// <summary>The lowest comfortable note.</summary>
    public NoteName Low { get; }

    /// <summary>The highest comfortable note.</summary>
    public NoteName High { get; }

    /// <summary>The longest sustained tone, in seconds.</summary>
    public Rational SustainedSeconds { get; }

    /// <summary>The experience.</summary>
    public Experience Experience { get; }

    /// <summary>
    /// The longest phrase that is asked of the singer, in seconds: 0.4, 0.5 or 0.6 of the sustained tone by experience (the project's own
    /// setting; there is no published norm).
    /// </summary>
    public Rational BreathSeconds => SustainedSeconds * Experience switch
    {
        Experience.Beginner => new Rational(2, 5),
        Experience.Intermediate => new Rational(1, 2),
        _ => new Rational(3, 5),
    };

    /// <summary>
    /// The shortest silence in which the singer can breathe, in seconds: 0.8 for a beginner, 0.4 for others (the project's own setting).
    /// </summary>
    public Rational ShortestBreathSeconds => Experience == Experience.Beginner ? new Rational(4, 5) : new Rational(2, 5);

    /// <summary>The alias and the range.</summary>
    public override string ToString() => $"{Alias} ({Low} to {High})";

    private static void RequireVoice(NoteName note, string which, string parameter)
    {
        if (note.Midi is < 24 or > 108)
        {
            throw new ArgumentOutOfRangeException(parameter, note, $"the {which} comfortable note must be between C1 and C8, not {note}");
        }
    }
}

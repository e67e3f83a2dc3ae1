namespace Warmup.Voices;

/// <summary>How long somebody has sung: it decides how much of the sustained tone a phrase may take, how short a breath may be and how fast notes may follow.</summary>
public enum Experience
{
    /// <summary>New to singing.</summary>
    Beginner,

    /// <summary>Sings regularly.</summary>
    Intermediate,

    /// <summary>Trained.</summary>
    Advanced,
}

/// <summary>The words of <see cref="Experience"/> in files and on screens.</summary>
public static class ExperienceWords
{
    /// <summary><c>beginner</c>, <c>intermediate</c> or <c>advanced</c>.</summary>
    /// <param name="experience">The experience.</param>
    /// <exception cref="ArgumentOutOfRangeException">The experience is none of the three.</exception>
    public static string ToWord(this Experience experience) => experience switch
    {
        Experience.Beginner => "beginner",
        Experience.Intermediate => "intermediate",
        Experience.Advanced => "advanced",
        _ => throw new ArgumentOutOfRangeException(nameof(experience), experience, $"experience must be beginner, intermediate or advanced, not {experience}"),
    };

    /// <summary>Reads <c>beginner</c>, <c>intermediate</c> or <c>advanced</c>.</summary>
    /// <param name="word">The word, in lower case.</param>
    /// <param name="experience">The experience, or the beginner's.</param>
    /// <returns>Whether it was one of the words.</returns>
    public static bool TryParse(string? word, out Experience experience)
    {
        experience = word switch { "intermediate" => Experience.Intermediate, "advanced" => Experience.Advanced, _ => Experience.Beginner };
        return experience != Experience.Beginner || word == "beginner";
    }
}

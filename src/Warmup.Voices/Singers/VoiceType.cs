namespace Warmup.Voices;

/// <summary>What the range of a voice type means.</summary>
public enum VoiceRangeKind
{
    /// <summary>The range classical soloists are sorted by: full, not comfortable.</summary>
    Classical,

    /// <summary>The range of choral parts: full, not comfortable.</summary>
    Choral,

    /// <summary>Measured in a study, soft and loud: what the voice can do, not what is comfortable.</summary>
    Measured,

    /// <summary>A comfortable range.</summary>
    Comfortable,

    /// <summary>A comfortable range that is this project's own setting.</summary>
    ProjectSetting,
}

/// <summary>A voice type and its range: a place to start from until the singer has been heard.</summary>
/// <param name="Name">The name, in lower case.</param>
/// <param name="Low">The lowest note.</param>
/// <param name="High">The highest note.</param>
/// <param name="Kind">What the range means.</param>
/// <param name="HowSure">How sure the row is: read at its source, or from memory and how well remembered.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Caution">What to keep in mind; empty for nothing.</param>
public sealed record VoiceType(string Name, NoteName Low, NoteName High, VoiceRangeKind Kind, string HowSure, string Source, string Caution)
{
    /// <summary>Whether the range may stand in for a comfortable range that has not been measured yet.</summary>
    public bool IsComfortable => Kind is VoiceRangeKind.Comfortable or VoiceRangeKind.ProjectSetting;

    /// <summary>The name, the range and how sure it is.</summary>
    public override string ToString() => $"{Name}: {Low} to {High} ({HowSure})";
}

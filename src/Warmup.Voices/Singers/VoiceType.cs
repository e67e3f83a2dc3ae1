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

/// <summary>A voice type and its range: a place to start from until the singer has been heard. Immutable, value equality.</summary>
public sealed record VoiceType
{
    internal VoiceType(string name, NoteName low, NoteName high, VoiceRangeKind kind, bool isStillChanging, string howSure, string source, string caution) =>
        (Name, Low, High, Kind, IsStillChanging, HowSure, Source, Caution) = (name, low, high, kind, isStillChanging, howSure, source, caution);

    /// <summary>The name, in lower case.</summary>
    public string Name { get; }

    /// <summary>The lowest note.</summary>
    public NoteName Low { get; }

    /// <summary>The highest note.</summary>
    public NoteName High { get; }

    /// <summary>What the range means.</summary>
    public VoiceRangeKind Kind { get; }

    /// <summary>Whether it is a child's or a changing voice, which needs fresh measurements.</summary>
    public bool IsStillChanging { get; }

    /// <summary>How sure the row is: read at its source, or from memory and how well remembered.</summary>
    public string HowSure { get; }

    /// <summary>Where it comes from.</summary>
    public string Source { get; }

    /// <summary>What to keep in mind; empty for nothing.</summary>
    public string Caution { get; }

    /// <summary>Whether the range may stand in for a comfortable range that has not been measured yet.</summary>
    public bool IsComfortable => Kind is VoiceRangeKind.Comfortable or VoiceRangeKind.ProjectSetting;

    /// <summary>The name, the range and how sure it is.</summary>
    public override string ToString() => OneLine.Of($"{Name}: {Low} to {High} ({HowSure})");
}

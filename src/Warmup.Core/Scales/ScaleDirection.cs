namespace Warmup;

/// <summary>The list of a scale that a note is taken from.</summary>
public enum ScaleDirection
{
    /// <summary>The ascent (arohana).</summary>
    Ascent,

    /// <summary>The descent (avarohana).</summary>
    Descent,
}

namespace Warmup;

/// <summary>
/// The scale as a pattern sees it: steps count forward from the home note. A pattern's rule is written once, for a rising line from the
/// tonic; the other directions are the same rule in another frame.
/// </summary>
/// <remarks>
/// Swapped: the rule takes the other list. Mirrored: the rule starts on the upper tonic and goes down. Each undoes itself.
/// </remarks>
internal readonly record struct Frame(Scale Scale, bool Swapped, bool Mirrored)
{
    /// <summary>The list that forward steps take.</summary>
    public Way Way => Swapped ^ Mirrored ? Way.Descent : Way.Ascent;

    /// <summary>Steps from the home note to the far end of the octave.</summary>
    public int Top => Scale.List(Way).Top;

    public Frame Swap() => this with { Swapped = !Swapped };

    public Frame Mirror() => this with { Mirrored = !Mirrored };

    /// <summary>The tone so many steps forward from the home note; <see langword="null"/> where the scale does not go that far.</summary>
    public ScaleTone? this[int step] => Scale.List(Way)[Place(step)];

    public bool IsProperEnd(int step)
    {
        if (!Mirrored)
        {
            return Scale.List(Way).IsProperEnd(step);
        }

        // Seen from the top, "no earlier note is lower and no later one higher" is the same test at the same place.
        return Scale.List(Way).IsProperEnd(Place(step));
    }

    private int Place(int step) => Mirrored ? Top - step : step;
}

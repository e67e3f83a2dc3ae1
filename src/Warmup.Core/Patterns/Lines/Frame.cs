namespace Warmup;

/// <summary>
/// The scale as a pattern sees it: steps count forward from the home note to the far end. A pattern's rule is written once, for a rising
/// line from the tonic; the other directions and spans are the same rule in another frame.
/// </summary>
/// <param name="Scale">The scale.</param>
/// <param name="Swapped">The rule takes the other list.</param>
/// <param name="Mirrored">The rule starts on the upper end and goes down.</param>
/// <param name="Low">The lowest place of the span, in steps of the list above the tonic.</param>
/// <param name="High">The highest place of the span, in steps of the list above the list's top.</param>
/// <remarks>Swapping and mirroring each undo themselves, and a span is undone by the opposite span.</remarks>
internal readonly record struct Frame(Scale Scale, bool Swapped, bool Mirrored, int Low, int High)
{
    public static Frame Of(Scale scale) => new(scale, false, false, 0, 0);

    /// <summary>The list that forward steps take.</summary>
    public ScaleDirection Direction => Swapped ^ Mirrored ? ScaleDirection.Descent : ScaleDirection.Ascent;

    /// <summary>Steps from the home note to the far end.</summary>
    public int Top => Scale.List(Direction).Top + High - Low;

    public Frame Swap() => this with { Swapped = !Swapped };

    public Frame Mirror() => this with { Mirrored = !Mirrored };

    /// <summary>The frame with its home note and its far end moved forward, each by a number of steps.</summary>
    public Frame Span(int home, int end) => Mirrored
        ? this with { High = High - home, Low = Low - end }
        : this with { Low = Low + home, High = High + end };

    /// <summary>The tone a number of steps forward from the home note; <see langword="null"/> where the scale does not go that far.</summary>
    public ScaleTone? this[int step] => Scale.List(Direction)[Place(Direction, step)];

    /// <summary>The place in one of the lists, counted from its tonic, of a step forward from the home note.</summary>
    public int Place(ScaleDirection direction, int step) => Mirrored ? Scale.List(direction).Top + High - step : Low + step;
}

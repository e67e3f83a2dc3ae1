namespace Warmup.Research;

/// <summary>A small rule and its lines.</summary>
/// <param name="Pattern">The rule.</param>
/// <param name="Lines">Its lines.</param>
internal sealed record SearchEntry(Pattern Pattern, Line[] Lines)
{
    /// <summary>The steps of all its figures.</summary>
    public int Steps { get; } = StepsIn(Pattern);

    /// <summary>The steps of all figures of a pattern.</summary>
    public static int StepsIn(Pattern pattern) => pattern is FigurePattern figure
        ? figure.Sequence.Count
        : pattern.Operands.Sum(StepsIn);
}

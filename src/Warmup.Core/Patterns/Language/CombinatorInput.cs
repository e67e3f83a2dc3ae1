namespace Warmup;

/// <summary>What a combinator of your own is given when a pattern is expanded.</summary>
public sealed class CombinatorInput
{
    internal CombinatorInput(ValueList<Line> lines, ValueList<int> numbers, Scale scale, CancellationToken cancellationToken)
    {
        Lines = lines;
        Numbers = numbers;
        Scale = scale;
        CancellationToken = cancellationToken;
    }

    /// <summary>The lines of the pattern that the combinator is applied to.</summary>
    public ValueList<Line> Lines { get; }

    /// <summary>The numbers in the word's parentheses, within its bounds; none where it takes none.</summary>
    public ValueList<int> Numbers { get; }

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>Whether the work should stop, for a combinator that takes long.</summary>
    public CancellationToken CancellationToken { get; }
}

namespace Warmup.Testing;

/// <summary>A rule under test: a function from pattern to pattern, or from lines to lines.</summary>
/// <remarks>The suite only calls the function, which may come from anywhere.</remarks>
public sealed class PatternRule
{
    internal const int LongestName = 60;

    private readonly Func<Pattern, Pattern>? _onPattern;
    private readonly Func<ValueList<Line>, ValueList<Line>>? _onLines;

    private PatternRule(string name, Func<Pattern, Pattern>? onPattern, Func<ValueList<Line>, ValueList<Line>>? onLines)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = Require.PlainText(name, LongestName, "the name of a rule");
        _onPattern = onPattern;
        _onLines = onLines;
    }

    /// <summary>The name, for reports.</summary>
    public string Name { get; }

    /// <summary>A rule from pattern to pattern.</summary>
    /// <param name="name">The name, for reports: 1 to 60 characters without control characters.</param>
    /// <param name="rule">The rule; it must be a function, with equal results for equal patterns.</param>
    /// <exception cref="ArgumentException">The name is empty or too long, or holds a control character.</exception>
    public static PatternRule Of(string name, Func<Pattern, Pattern> rule) => new(name, rule ?? throw new ArgumentNullException(nameof(rule)), null);

    /// <summary>A rule from lines to lines, applied to what a pattern gives in a scale.</summary>
    /// <param name="name">The name, for reports: 1 to 60 characters without control characters.</param>
    /// <param name="rule">The rule; it must be a function, with equal results for equal lines.</param>
    /// <exception cref="ArgumentException">The name is empty or too long, or holds a control character.</exception>
    public static PatternRule OfLines(string name, Func<ValueList<Line>, ValueList<Line>> rule) => new(name, null, rule ?? throw new ArgumentNullException(nameof(rule)));

    /// <summary>The pattern that the rule makes of another; <see langword="null"/> for a rule from lines to lines.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <exception cref="ArgumentException">The result would be too large.</exception>
    public Pattern? PatternOf(Pattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return _onPattern?.Invoke(pattern);
    }

    /// <summary>The lines that the rule gives for a pattern in a scale.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="times">How often the rule is applied in a row, 0 or more; once by default.</param>
    /// <returns>The lines, or <see langword="null"/> where the scale refuses the pattern or the result would be too large.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="times"/> is negative.</exception>
    public ValueList<Line>? Lines(Pattern pattern, Scale scale, int times = 1)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentOutOfRangeException.ThrowIfNegative(times);
        try
        {
            for (var i = 0; _onPattern is not null && i < times; i++)
            {
                pattern = _onPattern(pattern);
            }
        }
        catch (ArgumentException large) when (IsTooLarge(large))
        {
            return null;
        }

        if (!pattern.TryExpand(scale, out var expansion, out _))
        {
            return null;
        }

        var lines = expansion!.Lines;
        for (var i = 0; _onLines is not null && i < times; i++)
        {
            lines = _onLines(lines);
        }

        return lines;
    }

    /// <summary>
    /// Whether a pattern was refused for its depth, its parts or its notes, about which a law says nothing. An argument out of its range is the
    /// rule's own mistake.
    /// </summary>
    internal static bool IsTooLarge(ArgumentException refused) => refused is not (ArgumentOutOfRangeException or ArgumentNullException);

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}

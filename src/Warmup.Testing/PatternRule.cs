namespace Warmup.Testing;

/// <summary>A combinator under test: a function from pattern to pattern, or from lines to lines.</summary>
/// <remarks>The suite only calls the function; it need not know the library's own combinators.</remarks>
public sealed class PatternRule
{
    private readonly Func<Pattern, Pattern>? _onPattern;
    private readonly Func<ValueList<Line>, ValueList<Line>>? _onLines;

    private PatternRule(string name, Func<Pattern, Pattern>? onPattern, Func<ValueList<Line>, ValueList<Line>>? onLines)
    {
        Name = name;
        _onPattern = onPattern;
        _onLines = onLines;
    }

    /// <summary>The name, for reports.</summary>
    public string Name { get; }

    /// <summary>A rule from pattern to pattern.</summary>
    /// <param name="name">The name, for reports.</param>
    /// <param name="rule">The rule; it must be a function, with equal results for equal patterns.</param>
    public static PatternRule Of(string name, Func<Pattern, Pattern> rule) => new(name, rule, null);

    /// <summary>A rule from lines to lines, applied to what a pattern gives in a scale.</summary>
    /// <param name="name">The name, for reports.</param>
    /// <param name="rule">The rule; it must be a function, with equal results for equal lines.</param>
    public static PatternRule OfLines(string name, Func<ValueList<Line>, ValueList<Line>> rule) => new(name, null, rule);

    /// <summary>The pattern that the rule makes of another; <see langword="null"/> for a rule from lines to lines.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <exception cref="ArgumentException">The result would be too large.</exception>
    public Pattern? PatternOf(Pattern pattern) => _onPattern?.Invoke(pattern);

    /// <summary>The lines that the rule gives for a pattern in a scale.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="times">How often the rule is applied in a row, at least 0; once by default.</param>
    /// <returns>The lines, or <see langword="null"/> where the scale refuses the pattern or the result would be too large.</returns>
    public ValueList<Line>? Lines(Pattern pattern, Scale scale, int times = 1)
    {
        try
        {
            for (var i = 0; _onPattern is not null && i < times; i++)
            {
                pattern = _onPattern(pattern);
            }
        }
        catch (ArgumentException)
        {
            // A pattern beyond the bounds of depth, parts or notes: no statement about its lines.
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

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}

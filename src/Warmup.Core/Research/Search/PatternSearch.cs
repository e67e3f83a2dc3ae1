namespace Warmup.Research;

/// <summary>Finds a rule that gives written-out lines.</summary>
/// <remarks>
/// What is heard counts: tones, lengths and silences. The search knows rules of up to three words, sums and slices of them, and
/// combinators that it can take off the lines again; its answer always gives exactly the lines, and is the smallest it finds. A figure
/// that is sung only once is the line written out, and no answer.
/// </remarks>
public static class PatternSearch
{
    // The project's own setting.
    private const int MostNotes = 2_000;

    /// <summary>Finds the smallest rule whose lines in a scale are those written out, such as <c>S R G / R G M / G M P</c>.</summary>
    /// <param name="written">The lines, as <see cref="Pattern.Written"/> reads them.</param>
    /// <param name="scale">The scale in which they are read.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <returns>The rule, never written-out lines; <see langword="null"/> where none is found.</returns>
    /// <exception cref="WarmupFormatException">The text is not a written line.</exception>
    /// <exception cref="PatternException">The scale lacks a letter, or there are too many notes.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static Pattern? Explain(string written, Scale scale, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(written);
        ArgumentNullException.ThrowIfNull(scale);
        return Explain(Pattern.Written(written).Expand(scale, cancellationToken).Lines, scale, cancellationToken);
    }

    /// <summary>Finds the smallest rule that gives some lines in a scale.</summary>
    /// <param name="lines">The lines; at most 2,000 notes (the project's own setting).</param>
    /// <param name="scale">The scale.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <returns>The rule, never written-out lines; <see langword="null"/> where none is found.</returns>
    /// <exception cref="PatternException">There are too many notes.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static Pattern? Explain(ValueList<Line> lines, Scale scale, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(scale);
        var goal = lines.AsSpan().ToArray();
        var notes = Line.CountNotes(goal);
        if (notes > MostNotes)
        {
            throw new PatternException(new Finding(
                FindingCode.PatternTooLong, Severity.Error, $"{notes} notes are to be explained; the most is {MostNotes}", "explain fewer lines"));
        }

        return goal.Length == 0 ? Pattern.Empty : new Searcher(goal, scale, cancellationToken).Find();
    }
}

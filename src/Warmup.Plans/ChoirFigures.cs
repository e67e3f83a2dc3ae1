namespace Warmup.Plans;

/// <summary>What choirs sing, as a plan has it.</summary>
/// <remarks>
/// The bar of rest after each line is the place for the next chord (<see cref="Repertoire.Choir"/>). In a plan they stay on their
/// tonic and no chord follows: so they are filled up like all others of a warm-up, and the breath comes out of the held note.
/// </remarks>
internal static class ChoirFigures
{
    public static bool Has(Exercise exercise) => Repertoire.Choir.Contains(exercise);

    /// <summary>The lines alone, without what fills bars.</summary>
    public static Pattern LinesOf(Pattern pattern) =>
        pattern.Operands.IsEmpty ? pattern
        : pattern.Word is "fill" or "rest" ? LinesOf(pattern.Operands[0])
        : pattern.With(pattern.Operands.ConvertAll(LinesOf), pattern.Numbers);
}

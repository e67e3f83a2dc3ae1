namespace Warmup.Samples;

/// <summary>One row of the table of patterns: a pattern in a scale, with what was measured or why nothing was.</summary>
/// <param name="Source">Where the pattern comes from: <see cref="Enumerated"/>, or a file and the place in it.</param>
/// <param name="Index">The index of the normal form in the enumeration; <see langword="null"/> where that does not list it.</param>
/// <param name="Pattern">The pattern; <see langword="null"/> where none could be made of what was read.</param>
/// <param name="NormalForm">Its normal form, or <see langword="null"/>.</param>
/// <param name="Scale">The scale.</param>
/// <param name="Facts">What was measured; <see langword="null"/> where the row is refused.</param>
/// <param name="Refusal">Why nothing was measured, or <see langword="null"/>.</param>
internal sealed record TableRow(string Source, long? Index, Pattern? Pattern, Pattern? NormalForm, Scale Scale, PatternFacts? Facts, Finding? Refusal)
{
    /// <summary>The source of rows that the enumeration gives.</summary>
    public const string Enumerated = "enumeration";

    /// <summary>Measures a pattern in some scales.</summary>
    public static TableRow[] Of(string source, long? index, Pattern pattern, Pattern normalForm, ValueList<Scale> scales, CancellationToken cancellation)
    {
        var rows = new TableRow[scales.Count];
        for (var i = 0; i < rows.Length; i++)
        {
            var isMeasured = PatternFacts.TryMeasure(pattern, scales[i], out var facts, out var refusal, cancellation);
            rows[i] = new TableRow(source, index, pattern, normalForm, scales[i], facts, isMeasured ? null : refusal);
        }

        return rows;
    }
}

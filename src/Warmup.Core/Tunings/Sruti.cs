using System.Globalization;

namespace Warmup;

/// <summary>One of the 22 srutis of theory.</summary>
/// <param name="Number">1 to 22.</param>
/// <param name="Name">The traditional name (from memory).</param>
/// <param name="Svara">The svara it is a form of.</param>
/// <param name="Form">Which of the svara's two forms it is: <c>low</c>, <c>high</c>, or empty for the usual one.</param>
/// <param name="Ratio">The exact ratio above the tonic.</param>
/// <remarks>
/// <para>
/// Theory only: measurements of sung Carnatic music do not support these values as targets (Krishnaswamy 2003 finds no experimental
/// basis). They serve to compare tunings, and to tune single svaras by <see cref="Tuning.With"/> where a teacher asks for it.
/// </para>
/// <para>The ratios agree with one general audio-synthesis library. Immutable, value equality.</para>
/// </remarks>
public sealed record Sruti(int Number, string Name, Degree Svara, string Form, Rational Ratio)
{
    /// <summary>What must be said wherever these values are shown.</summary>
    public const string Caveat = "The 22 srutis are theory: measured performance does not support them as targets (Krishnaswamy 2003).";

    private static readonly Lazy<ValueList<Sruti>> Table = new(() => CatalogueData.Rows("sruti22.tsv").Select(Read).ToValueList());

    /// <summary>The 22 srutis from low to high.</summary>
    public static ValueList<Sruti> All => Table.Value;

    /// <summary>The interval above the tonic.</summary>
    public Interval Interval => Interval.FromRatio(Ratio);

    private static Sruti Read(string[] row) => new(
        int.Parse(row[0], NumberStyles.None, CultureInfo.InvariantCulture),
        row[1],
        Degree.TryParse(row[2], out var svara) ? svara : throw new InvalidOperationException($"the sruti table holds '{row[2]}', which is no svara"),
        row[3],
        Rational.TryParse(row[4], out var ratio) ? ratio : throw new InvalidOperationException($"the sruti table holds '{row[4]}', which is no ratio"));
}

using System.Globalization;

namespace Warmup;

/// <summary>One of the 22 srutis of theory.</summary>
/// <remarks>
/// <para>
/// Theory only: measurements of sung Carnatic music do not support these values as targets (Krishnaswamy 2003 finds no experimental
/// basis). They serve to compare tunings, and to tune single svaras by <see cref="Tuning.With"/> where a teacher asks for it.
/// </para>
/// <para>The ratios agree with one general audio-synthesis library. Immutable; each stands in <see cref="All"/> once.</para>
/// </remarks>
public sealed class Sruti
{
    private static readonly Lazy<ValueList<Sruti>> Table = new(() => CatalogueData.Rows("sruti22.tsv").Select(Read).ToValueList());

    private Sruti(int number, string name, Degree svara, string form, Interval interval)
    {
        Number = number;
        Name = name;
        Svara = svara;
        Form = form;
        Interval = interval;
    }

    /// <summary>What must be said wherever these values are shown.</summary>
    public static string Caveat => "The 22 srutis are theory: measured performance does not support them as targets (Krishnaswamy 2003).";

    /// <summary>The 22 srutis from low to high.</summary>
    public static ValueList<Sruti> All => Table.Value;

    /// <summary>1 to 22.</summary>
    public int Number { get; }

    /// <summary>The traditional name (from memory).</summary>
    public string Name { get; }

    /// <summary>The svara it is a form of.</summary>
    public Degree Svara { get; }

    /// <summary>Which of the svara's two forms it is: <c>low</c>, <c>high</c>, or empty for the usual one.</summary>
    public string Form { get; }

    /// <summary>The interval above the tonic, an exact ratio.</summary>
    public Interval Interval { get; }

    /// <summary>The number, the name, the svara and the ratio.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Number} {Name}: {(Form.Length == 0 ? Form : Form + " ")}{Svara}, {Interval}");

    private static Sruti Read(string[] row) => new(
        int.Parse(row[0], NumberStyles.None, CultureInfo.InvariantCulture),
        row[1],
        Degree.Parse(row[2]),
        row[3],
        Interval.FromRatio(Rational.Parse(row[4])));
}

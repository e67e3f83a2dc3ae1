using System.Globalization;

namespace Warmup.Testing;

/// <summary>Of what kinds the cases were that a law said something about, so that no law passes for lack of cases. Immutable, value equality.</summary>
/// <remarks>The cases are counted in groups: the shape of the scale, its notes, the parts and lines of the pattern; for laws of scores also sections and talas.</remarks>
public sealed record CaseCoverage
{
    internal CaseCoverage(ValueList<CoverageShare> shares) => Shares = shares;

    /// <summary>The kinds that came up, group by group, the most frequent first.</summary>
    public ValueList<CoverageShare> Shares { get; }

    /// <summary>The share of a kind within its group, 0 to 1; 0 where it never came up.</summary>
    /// <param name="group">The group, such as <c>scales</c>.</param>
    /// <param name="kind">The kind, such as <c>zigzag</c>.</param>
    public double ShareOf(string group, string kind)
    {
        ArgumentNullException.ThrowIfNull(group);
        ArgumentNullException.ThrowIfNull(kind);
        foreach (var share in Shares)
        {
            if (share.Group == group && share.Kind == kind)
            {
                return share.Share;
            }
        }

        return 0;
    }

    /// <summary>A line for each group: <c>scales: 41 % differ up and down, 32 % zigzag, 27 % same both ways</c>.</summary>
    public string Describe() => string.Join('\n', Shares.GroupBy(s => s.Group).Select(g => $"{g.Key}: {string.Join(", ", g)}"));

    /// <summary>The groups in one line, at most 200 characters.</summary>
    public override string ToString() => OneLine.Of(Describe().Replace("\n", "; ", StringComparison.Ordinal));
}

/// <summary>How often a kind of case came up. Immutable, value equality.</summary>
public sealed record CoverageShare
{
    internal CoverageShare(string group, string kind, int count, int cases) => (Group, Kind, Count, Cases) = (group, kind, count, cases);

    /// <summary>What is told apart: <c>scales</c>, <c>notes of a scale</c>, <c>parts of a pattern</c>, <c>lines</c>, <c>sections</c>, <c>talas</c>.</summary>
    public string Group { get; }

    /// <summary>The kind: of scales <c>same both ways</c>, <c>differ up and down</c>, <c>zigzag</c> or <c>without upper tonic</c>.</summary>
    public string Kind { get; }

    /// <summary>How often it came up, at least 1.</summary>
    public int Count { get; }

    /// <summary>How often anything of its group came up.</summary>
    public int Cases { get; }

    /// <summary>Its share within the group, 0 to 1.</summary>
    public double Share => (double)Count / Cases;

    /// <summary>The share in per cent, and the kind.</summary>
    public override string ToString() => OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{100 * Share:0} % {Kind}"));
}

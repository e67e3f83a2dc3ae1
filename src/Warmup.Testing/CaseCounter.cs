using System.Globalization;

namespace Warmup.Testing;

/// <summary>Counts of what kinds the cases of a law are.</summary>
internal sealed class CaseCounter
{
    // In the order in which the groups are first counted.
    private readonly List<(string Group, string Kind)> _order = [];
    private readonly Dictionary<(string Group, string Kind), int> _counts = [];

    /// <summary>Counts a pattern in a scale.</summary>
    public void Add(Pattern pattern, Scale scale)
    {
        Add("scales", !scale.HasUpperTonic ? "without upper tonic" : scale.IsVakra ? "zigzag" : scale.IsSymmetric ? "same both ways" : "differ up and down");
        Add("notes of a scale", scale.Degrees.Count switch { <= 4 => "2 to 4", <= 7 and var notes => notes.ToString(CultureInfo.InvariantCulture), _ => "8 to 12" });
        Add("parts of a pattern", pattern.Nodes switch { 1 => "1", <= 3 => "2 or 3", _ => "4 or more" });
        Add("lines", pattern.TryExpand(scale, out var expansion, out _) ? expansion.Lines.Count switch { 0 => "none", 1 => "1", <= 8 => "2 to 8", _ => "9 or more" } : "refused");
    }

    /// <summary>Counts drills that are sung one after the other.</summary>
    public void Add(ValueList<Drill> drills)
    {
        foreach (var drill in drills)
        {
            Add(drill.Pattern, drill.Scale);
        }

        Add("sections", drills.Count.ToString(CultureInfo.InvariantCulture));
        foreach (var drill in drills)
        {
            Add("talas", KindOf(drill.Meter));
        }
    }

    /// <summary>What was counted, the most frequent kind of a group first.</summary>
    public CaseCoverage ToCoverage() => new(
    [
        .. _order.GroupBy(k => k.Group).SelectMany(g => g.OrderByDescending(k => _counts[k])
            .Select(k => new CoverageShare(k.Group, k.Kind, _counts[k], g.Sum(other => _counts[other])))),
    ]);

    /// <summary>The family of a tala, which is the last word of its name; <c>chapu</c>, <c>time signature</c> or <c>free</c>.</summary>
    private static string KindOf(Meter meter) => meter.IsFree ? "free"
        : meter.Name.Contains('/', StringComparison.Ordinal) ? "time signature"
        : Meter.Chapus.Contains(meter) ? "chapu"
        : meter.Name.Split(' ')[^1].ToLowerInvariant();

    private void Add(string group, string kind)
    {
        if (!_counts.TryGetValue((group, kind), out var count))
        {
            _order.Add((group, kind));
        }

        _counts[(group, kind)] = count + 1;
    }
}

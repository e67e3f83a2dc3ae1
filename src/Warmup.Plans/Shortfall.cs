using System.Globalization;

namespace Warmup.Plans;

/// <summary>Why a warm-up is short: where the scale's other middle drills are. All that are sung are sung as often as they may be.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record Shortfall
{
    internal Shortfall()
    {
    }

    /// <summary>The drills that do not fit someone in the class.</summary>
    public int Unfit { get; internal init; }

    /// <summary>The drills above the week's ceiling of difficulty.</summary>
    public int AboveCeiling { get; internal init; }

    /// <summary>The drills that were sung too recently, or are kept for the scale's next turns.</summary>
    public int Waiting { get; internal init; }

    /// <summary>The drills that are wider but easier than the day's others, or the other way round, or harder than its hardest.</summary>
    public int OutOfOrder { get; internal init; }

    /// <summary>The reasons in words.</summary>
    public override string ToString()
    {
        (int Count, string Text)[] reasons =
        [
            (Unfit, "do not fit the class"),
            (AboveCeiling, "lie above the week's ceiling"),
            (Waiting, "wait for another day"),
            (OutOfOrder, "have no place in the rising order"),
        ];
        var parts = reasons.Where(r => r.Count > 0).Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Count} {r.Text}")).ToList();
        return parts.Count == 0 ? "the scale has no further drills" : $"of the scale's other drills {string.Join(", ", parts)}";
    }
}

using System.Globalization;

namespace Warmup.Testing;

/// <summary>The words that all reports share.</summary>
internal static class ReportText
{
    public static string Kept(string rule, string law, string algebra, bool isKept, int cases, int silent, CaseCoverage coverage)
    {
        var first = string.Create(CultureInfo.InvariantCulture, $"{rule}: {law} ({algebra}): {(isKept ? "held" : "never tried")} in {cases} cases ({silent} said nothing)");
        return coverage.Shares.IsEmpty ? first : $"{first}\n  {coverage.Describe().Replace("\n", "\n  ", StringComparison.Ordinal)}";
    }

    public static string Broken(string rule, string law, string algebra, string sentence, string failure) => $"{rule}: {law} ({algebra}): BROKEN\n  {sentence}\n{failure}";

    /// <summary>A statement that runs the case of a seed once more, where <c>rule</c> and <c>law</c> are named so.</summary>
    public static string Replay(string method, string seed) => $"LawSuite.{method}(rule, new LawOptions {{ Cases = 1, Seed = \"{seed}\" }}, law).ThrowIfBroken();";
}

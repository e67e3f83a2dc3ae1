using System.Globalization;
using Warmup.Drawing;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>Seven days of a plan as one PDF to print, a day a page.</summary>
internal static class PlanWeek
{
    private const int Days = 7;

    /// <summary>The file of the week, in a folder.</summary>
    /// <exception cref="InputException">Nothing is sung in these days.</exception>
    public static string PathIn(string folder, IEnumerable<PlanDay> days, DateOnly first) => Of(days, first).Count > 0
        ? Path.Combine(folder, $"week-{Name(first)}.pdf")
        : throw new InputException($"--week: nothing is sung in the seven days from {Name(first)} on");

    /// <summary>Writes the days of singing from a first day on.</summary>
    public static void Write(WarmupPlan plan, IEnumerable<PlanDay> drawn, DateOnly first, Stream destination, CancellationToken cancellation)
    {
        var days = Of(drawn, first);
        var scores = days.ConvertAll(d => plan.ToScore(d, cancellationToken: cancellation)).ToValueList();
        var title = $"Warm-ups from {Name(days[0].Date)} to {Name(days[^1].Date)}";
        new PdfFormat(new OnePageOptions()).WriteAll(title, scores, destination, cancellation);
    }

    /// <summary>The days of singing among the seven from a first day on.</summary>
    public static List<PlanDay> Of(IEnumerable<PlanDay> days, DateOnly first) =>
        days.Where(d => !d.IsRest && d.Date.DayNumber >= first.DayNumber && d.Date.DayNumber < first.DayNumber + Days).ToList();

    private static string Name(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

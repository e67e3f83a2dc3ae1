using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>Prints which planned days no longer fit the class, why, and what became of them.</summary>
internal static class RenewalReport
{
    private const int MostDays = 40;

    public static void Print(Terminal terminal, PlanRenewal renewal, ValueList<Singer> singers)
    {
        var plan = renewal.Plan;
        terminal.Out.WriteLine($"tonic {plan.Tonic}, level {plan.LevelName}");
        PlanTable.PrintOctaves(terminal, renewal.Octaves, singers);
        if (renewal.Days.IsEmpty)
        {
            terminal.Out.WriteLine("every planned day fits the class as it is now; nothing has changed");
            return;
        }

        foreach (var day in renewal.Days.Take(MostDays))
        {
            var date = day.Before.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            terminal.Out.WriteLine($"{date} {day.Before.Scale!.Name} no longer fits {string.Join(", ", day.Why.ConvertAll(f => f.Singer))}: {day.Why[0].Message}");
            terminal.Out.WriteLine(
                day.Refusal is { } refusal ? $"  no other warm-up is possible, so it stays as it was: {refusal}"
                : day.HasOnlyMoreBreaths ? "  the same drills, with the breaths that the class needs now"
                : $"  now: {string.Join("; ", day.Now.Drills)}");
        }

        if (renewal.Days.Count > MostDays)
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"and {renewal.Days.Count - MostDays} more days"));
        }

        terminal.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{renewal.Days.Count} days no longer fitted, {renewal.Days.Count(d => d.Refusal is null)} are planned anew; all other days are as they were"));
    }
}

using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>Prints how much of the time is sung, and whose breath asks what of the class.</summary>
internal static class SingingTable
{
    // How many of the shortest breaths are looked at.
    public const int MostSingers = 8;

    // Four weeks of six days.
    public const int MostDays = 24;

    public static void Print(Terminal terminal, PlanSinging singing)
    {
        terminal.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"sung by the class in {(singing.Days == 1 ? "1 day" : $"the first {singing.Days} days")} of singing: {singing.Time}"));
        PrintBreaths(terminal, singing.Breaths);
    }

    public static void PrintBreaths(Terminal terminal, ValueList<ClassBreath> breaths)
    {
        foreach (var breath in breaths.Where(b => b.OwnBreathsInside > 0 || b.HasCostForOthers))
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {breath}; {breath.Singer.Alias} sings {100 * breath.Time.Share.ToDouble():0} %"));
        }

        if (breaths.Any(b => b.OwnBreathsInside > 0))
        {
            terminal.Out.WriteLine("  Own breaths: the singer leaves a note early and comes in again softly while the others sing on (staggered breathing, common practice).");
        }
    }
}

using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>A plan as iCalendar (RFC 5545): one event for each day of singing, in local time wherever it is opened, with the drills in its text.</summary>
internal static class PlanCalendar
{
    /// <summary>Writes the calendar. Equal plans give equal bytes: nothing in it comes from the clock or is random.</summary>
    public static void Write(WarmupPlan plan, TimeOnly time, Stream destination)
    {
        var first = plan.Days[0].Date;
        var name = NameOf(plan);
        var calendar = new Ical.Net.Calendar { ProductId = "-//Warmup//Plan 1//EN" };
        foreach (var day in plan.Days)
        {
            if (day.IsRest)
            {
                continue;
            }

            calendar.Events.Add(new CalendarEvent
            {
                Uid = string.Create(CultureInfo.InvariantCulture, $"{day.Date:yyyyMMdd}-{name}@plan.warmup.invalid"),
                Summary = $"Warm-up: {day.Scale!.Name}",
                Description = Text(day),

                // The stamp is the plan's first day, so that the same plan is the same file.
                DtStamp = new CalDateTime(first.Year, first.Month, first.Day, 0, 0, 0, CalDateTime.UtcTzId),
                Start = new CalDateTime(day.Date, time),
                Duration = Duration.FromSeconds((int)day.Duration.TotalSeconds),
            });
        }

        destination.Write(Encoding.UTF8.GetBytes(new CalendarSerializer(calendar).SerializeToString()!));
    }

    /// <summary>
    /// A name made from the plan's own bytes: two classes with plans of the same days and seed keep their events apart in one calendar, and the
    /// same plan imported twice replaces its own.
    /// </summary>
    private static string NameOf(WarmupPlan plan)
    {
        using var file = new MemoryStream();
        PlanFile.Write(plan, file);
        return Convert.ToHexStringLower(SHA256.HashData(file.ToArray()).AsSpan(0, 8));
    }

    private static string Text(PlanDay day)
    {
        var lines = day.Drills.ConvertAll(d => $"{d}: {d.Drill.Title}");
        return string.Join('\n', [.. lines, WarmupPlan.ShortCaution]);
    }
}

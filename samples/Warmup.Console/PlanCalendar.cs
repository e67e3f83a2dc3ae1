using System.Globalization;
using System.Text;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>A plan as iCalendar (RFC 5545): an event a day of singing, in local time wherever it is opened, with the drills in its text.</summary>
internal static class PlanCalendar
{
    /// <summary>Writes the calendar. Equal plans give equal bytes: nothing in it comes from the clock or from chance.</summary>
    public static void Write(WarmupPlan plan, TimeOnly time, Stream destination)
    {
        var first = plan.Days[0].Date;
        var calendar = new Ical.Net.Calendar { ProductId = "-//Warmup//Plan 1//EN" };
        foreach (var day in plan.Days)
        {
            if (day.IsRest)
            {
                continue;
            }

            var scale = plan.Drills[day.Drills[0].Drill].Scale.Name;
            calendar.Events.Add(new CalendarEvent
            {
                Uid = Uid(plan, day),
                Summary = $"Warm-up: {scale}",
                Description = Text(plan, day),

                // The stamp is the plan's first day, so that the same plan is the same file.
                DtStamp = new CalDateTime(first.Year, first.Month, first.Day, 0, 0, 0, CalDateTime.UtcTzId),
                Start = new CalDateTime(day.Date, time),
                Duration = Duration.FromSeconds((int)day.Seconds.Ceiling()),
            });
        }

        destination.Write(Encoding.UTF8.GetBytes(new CalendarSerializer(calendar).SerializeToString()!));
    }

    private static string Uid(WarmupPlan plan, PlanDay day) => string.Create(
        CultureInfo.InvariantCulture, $"{day.Date:yyyyMMdd}-{plan.Days[0].Date:yyyyMMdd}-{plan.Seed}@plan.warmup.invalid");

    private static string Text(WarmupPlan plan, PlanDay day)
    {
        var lines = day.Drills.ConvertAll(d => $"{PlanText.Of(plan, d)}: {plan.Drills[d.Drill].Title}");
        return string.Join('\n', [.. lines, "Stop if it hurts. The teacher's ear overrules the plan."]);
    }
}

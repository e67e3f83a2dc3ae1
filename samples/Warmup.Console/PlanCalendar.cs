using System.Globalization;
using System.Text;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>A plan as iCalendar (RFC 5545): one event for each day of singing, in local time wherever it is opened, with the drills in its text.</summary>
internal static class PlanCalendar
{
    // So many events are held at once, however long the plan is.
    private const int EventsAtOnce = 64;
    private const string Begin = "BEGIN:VEVENT";
    private const string End = "END:VCALENDAR";

    /// <summary>Writes the calendar. Equal plans give equal bytes: nothing in it comes from the clock or is random.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="days">The plan's days; they are gone through twice.</param>
    /// <param name="time">The time of day.</param>
    /// <param name="destination">Where the bytes go.</param>
    public static void Write(WarmupPlan plan, IEnumerable<PlanDay> days, TimeOnly time, Stream destination)
    {
        // Two classes with plans of the same days and seed keep their events apart in one calendar; the same plan imported twice, or renewed, replaces its own.
        var (name, first) = (PlanFile.Fingerprint(plan, days), (DateOnly?)null);
        var isBegun = false;
        foreach (var some in days.Select(Stamped).Where(d => !d.Day.IsRest).Chunk(EventsAtOnce))
        {
            var calendar = new Ical.Net.Calendar { ProductId = "-//Warmup//Plan 1//EN" };
            calendar.Events.AddRange(some.Select(d => Event(d.Day, d.Stamp, name, time)));
            var text = new CalendarSerializer(calendar).SerializeToString()!;

            // The calendar's own lines stand before the first events, and after the last.
            destination.Write(Encoding.UTF8.GetBytes(text[(isBegun ? text.IndexOf(Begin, StringComparison.Ordinal) : 0)..text.LastIndexOf(End, StringComparison.Ordinal)]));
            isBegun = true;
        }

        destination.Write(Encoding.UTF8.GetBytes($"{End}\r\n"));

        // The stamp is the plan's first day, so that the same plan is the same file.
        (PlanDay Day, DateOnly Stamp) Stamped(PlanDay day) => (day, first ??= day.Date);
    }

    private static CalendarEvent Event(PlanDay day, DateOnly stamp, string plan, TimeOnly time) => new()
    {
        Uid = string.Create(CultureInfo.InvariantCulture, $"{day.Date:yyyyMMdd}-{plan}@plan.warmup.invalid"),
        Summary = $"Warm-up: {day.Scale!.Name}",
        Description = Text(day),
        DtStamp = new CalDateTime(stamp.Year, stamp.Month, stamp.Day, 0, 0, 0, CalDateTime.UtcTzId),
        Start = new CalDateTime(day.Date, time),
        Duration = Duration.FromSeconds((int)day.Duration.TotalSeconds),
    };

    private static string Text(PlanDay day)
    {
        var lines = day.Drills.ConvertAll(d => $"{d}: {d.Drill.Title}");
        return string.Join('\n', [.. lines, WarmupPlan.ShortCaution]);
    }
}

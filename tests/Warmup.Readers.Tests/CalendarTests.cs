using System.Globalization;
using System.Text.Json;
using Warmup.Cli;
using Warmup.Plans;

namespace Warmup.Readers.Tests;

/// <summary>
/// Source: the plan's own file, and the calendar as python's icalendar library reads it, which shares nothing with what wrote it; RFC 5545, 3.1 (lines),
/// 3.6.1 (a UID and a DTSTAMP for each event), 3.3.5 (local time has no zone).
/// </summary>
public sealed class CalendarTests : IDisposable
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_calendar_reader_finds_each_day_of_singing_at_its_time_with_its_drills()
    {
        Assert.SkipWhen(Tool.Missing(Tool.Python) is not null || Tool.Python.Run(_folder, "-c", "import icalendar").Code != 0, "python3 has no icalendar (Debian: apt-get install python3-icalendar)");
        File.WriteAllText(Path.Combine(_folder, "class.csv"), "alias,low,high,sustainedSeconds\nWren,G3,E5,18\nOtter,C3,G4,24\n");
        Run("plan", "--singers", In("class.csv"), "--scales", "mohanam, mayamalavagowla", "--start", "2026-12-01", "--days", "14", "--rest", "sunday wednesday", "--time", "18:30", "--formats", "none", "--out", In("plan"));
        var plan = PlanFile.Read(File.ReadAllBytes(In("plan/plan.json")));
        var read = Tool.Python.Run(_folder, Path.Combine(AppContext.BaseDirectory, "read_calendar.py"), In("plan/plan.ics"));
        Assert.Equal((0, string.Empty), (read.Code, read.Error));
        var calendar = JsonSerializer.Deserialize<ReadCalendar>(read.Out, Web)!;

        Assert.Equal("2.0", calendar.Version);
        Assert.NotEmpty(calendar.Product);
        Assert.InRange(calendar.LongestLine, 1, 75);
        Assert.True(calendar.IsEndedByCrLf);
        var days = plan.Days.Where(d => !d.IsRest).ToList();
        Assert.Equal(10, days.Count);
        Assert.Equal(days.Count, calendar.Events.Select(e => e.Uid).Distinct().Count());
        Assert.Equal(
            days.Select(d => (
                d.Date.ToString("yyyy-MM-dd'T18:30:00'", CultureInfo.InvariantCulture),
                d.Duration.TotalSeconds,
                $"Warm-up: {d.Scale!.Name}",
                string.Join('\n', [.. d.Drills.Select(p => $"{p}: {p.Drill.Title}"), WarmupPlan.ShortCaution]))),
            calendar.Events.Select(e => (e.Begin, e.Seconds, e.Summary, e.Description)));
        Assert.All(calendar.Events, e => Assert.True(e.IsLocal));
        Assert.All(calendar.Events, e => Assert.Equal(0, e.StampOffsetSeconds));
    }

    private static void Run(params string[] arguments)
    {
        using var error = new StringWriter();
        var code = Program.Run(arguments, TextWriter.Null, error);
        Assert.True(code == 0, error.ToString());
    }

    private string In(string name) => Path.Combine(_folder, name);

    private sealed record ReadCalendar(string Version, string Product, int LongestLine, bool IsEndedByCrLf, ReadEvent[] Events);

    private sealed record ReadEvent(string Uid, string Begin, bool IsLocal, double StampOffsetSeconds, double Seconds, string Summary, string Description);
}

using System.Text;
using System.Text.Json;
using Ical.Net;
using Json.Schema;

namespace Warmup.Cli.Tests;

/// <summary>
/// Sources: RFC 5545 (lines, folding, UID, DTSTAMP, floating time), read back by Ical.Net; the published schema, evaluated by an
/// independent library; the same bytes again.
/// </summary>
public sealed class PlanCommandTests : IDisposable
{
    /// <summary>The published schema; the library that evaluates it takes one of a name only once.</summary>
    internal static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "schemas", "plan-1.json")));

    private readonly Shell _shell = new();

    public PlanCommandTests()
    {
        using var file = File.Create(Singers);
        SingersFile.Write(Studio.Singers, file);
    }

    private string Singers => _shell.At("singers.json");

    public void Dispose() => _shell.Dispose();

    /// <summary>A new plan with good options, of which some may be replaced.</summary>
    private string[] New(string folder, params string[] changed)
    {
        var options = new Dictionary<string, string>
        {
            ["--singers"] = Singers,
            ["--scales"] = "mohanam, mayamalavagowla",
            ["--start"] = "2026-12-01",
            ["--days"] = "14",
            ["--seed"] = "7",
            ["--out"] = _shell.At(folder),
        };
        for (var i = 0; i < changed.Length; i += 2)
        {
            options[changed[i]] = changed[i + 1];
        }

        return ["plan", .. options.SelectMany(o => (string[])[o.Key, o.Value])];
    }

    private void Make(string folder, params string[] more)
    {
        var run = Shell.Run(New(folder, more));
        Assert.True(run.Code == 0, run.Error);
    }

    [Fact]
    public void A_plan_is_written_and_printed_with_the_cautions()
    {
        var run = Shell.Run([.. New("a"), "--cautions"]);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Contains("December 2026", run.Out, StringComparison.Ordinal);
        Assert.Contains("6 rest", run.Out, StringComparison.Ordinal);
        Assert.Contains("an octave lower: Otter, Badger", run.Out, StringComparison.Ordinal);
        Assert.All(Cautions.All, c => Assert.Contains(c.Text, run.Out, StringComparison.Ordinal));

        // 14 days from Tuesday 1 December hold two Sundays.
        var files = Directory.GetFiles(_shell.At("a")).Select(Path.GetFileName).ToList();
        Assert.Equal(12, files.Count(f => f!.EndsWith(".txt", StringComparison.Ordinal)));
        Assert.Superset(new HashSet<string?> { "plan.json", "plan.html", "plan.ics" }, files.ToHashSet());
        var page = File.ReadAllText(_shell.At("a/plan.html"));
        var pages = files.Where(f => f!.EndsWith(".html", StringComparison.Ordinal) && f != "plan.html").ToList();
        Assert.Equal(12, pages.Count);
        Assert.All(pages, f => Assert.Contains($"href=\"{f}\"", page, StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_words_give_the_same_bytes_and_so_does_a_day_made_again()
    {
        Make("a", "--formats", "txt mid musicxml mxl");
        Make("b", "--formats", "txt mid musicxml mxl");
        var files = Directory.GetFiles(_shell.At("a")).Select(f => Path.GetFileName(f)!).ToList();
        Assert.Equal(12 * 4 + 3, files.Count);
        Assert.All(files, f => Assert.Equal(File.ReadAllBytes(_shell.At("a/" + f)), File.ReadAllBytes(_shell.At("b/" + f))));

        var again = Shell.Run("plan", "--plan", _shell.At("a/plan.json"), "--day", "2026-12-05", "--out", _shell.At("c"), "--formats", "txt mid musicxml mxl");
        Assert.Equal((0, string.Empty), (again.Code, again.Error));
        Assert.Equal(4, Directory.GetFiles(_shell.At("c")).Length);
        Assert.All(Directory.GetFiles(_shell.At("c")), f => Assert.Equal(File.ReadAllBytes(_shell.At("a/" + Path.GetFileName(f))), File.ReadAllBytes(f)));
    }

    [Fact]
    [Trait("Run", "whole")]
    public void A_day_sounds_the_same_each_time()
    {
        Make("a", "--formats", "none", "--minutes", "5");
        string[] day = ["plan", "--plan", _shell.At("a/plan.json"), "--day", "2026-12-05", "--formats", "wav", "--out"];
        Assert.Equal(0, Shell.Run([.. day, _shell.At("b")]).Code);
        Assert.Equal(0, Shell.Run([.. day, _shell.At("c")]).Code);
        Assert.True(File.ReadAllBytes(_shell.At("b/2026-12-05.wav")).AsSpan().SequenceEqual(File.ReadAllBytes(_shell.At("c/2026-12-05.wav"))));
    }

    [Fact]
    public void The_calendar_keeps_the_rules_of_its_standard_on_every_line()
    {
        Make("a", "--formats", "none");
        var bytes = File.ReadAllBytes(_shell.At("a/plan.ics"));
        Assert.EndsWith("\r\n", Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        var start = 0;
        for (var i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] == '\n')
            {
                Assert.Equal((byte)'\r', bytes[i - 1]);
                Assert.InRange(i - 1 - start, 1, 75);
                start = i + 1;
            }
        }

        Assert.Equal(bytes.Length, start);
        Assert.Equal(bytes.Count(b => b == '\n'), bytes.Count(b => b == '\r'));
        var lines = Encoding.UTF8.GetString(bytes).Split("\r\n");
        Assert.Equal(12, lines.Count(l => l == "DTSTAMP:20261201T000000Z"));
        Assert.Equal(12, lines.Count(l => l.StartsWith("DTSTART:", StringComparison.Ordinal) && l.EndsWith("T180000", StringComparison.Ordinal)));
        Assert.DoesNotContain(lines, l => l.Contains("TZID", StringComparison.Ordinal));
    }

    [Fact]
    public void The_calendar_read_back_has_an_event_a_day_of_singing_with_its_drills()
    {
        // The clocks change on 28 March 2027 in the European Union and on 14 March 2027 in the United States; floating time stays 07:30.
        Make("a", "--formats", "none", "--start", "2027-03-10", "--days", "30", "--time", "07:30", "--rest", "sunday wednesday");
        using var plan = JsonDocument.Parse(File.ReadAllBytes(_shell.At("a/plan.json")));
        var days = plan.RootElement.GetProperty("days").EnumerateArray().Where(d => d.GetProperty("drills").GetArrayLength() > 0).ToList();
        var calendar = Calendar.Load(File.ReadAllText(_shell.At("a/plan.ics")))!;
        var events = calendar.Events.OrderBy(e => e.Start!.Value).ToList();
        Assert.Equal(days.Count, events.Count);
        Assert.Equal(events.Count, events.Select(e => e.Uid).Distinct().Count());
        var drills = plan.RootElement.GetProperty("drills");
        foreach (var (day, entry) in days.Zip(events))
        {
            Assert.Equal(day.GetProperty("date").GetString() + " 07:30", entry.Start!.Value.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture));
            Assert.True(entry.Start.IsFloating);
            Assert.True(Rational.TryParse(day.GetProperty("seconds").GetString(), out var seconds, out _));
            Assert.Equal(seconds.Ceiling(), (long)entry.Duration!.Value.ToTimeSpanUnspecified().TotalSeconds);
            var text = entry.Description!.Split('\n');
            Assert.Equal(day.GetProperty("drills").GetArrayLength() + 1, text.Length);
            foreach (var (planned, line) in day.GetProperty("drills").EnumerateArray().Zip(text))
            {
                Assert.StartsWith(drills[planned.GetProperty("drill").GetInt32()].GetProperty("exercise").GetString() + " at ", line, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void A_plan_over_years_has_one_calendar_and_pages_of_a_size()
    {
        Make("a", "--formats", "none", "--days", "1500");
        var calendar = Calendar.Load(File.ReadAllText(_shell.At("a/plan.ics")))!;
        var days = Enumerable.Range(0, 1500).Select(new DateOnly(2026, 12, 1).AddDays).Where(d => d.DayOfWeek != DayOfWeek.Sunday).ToList();
        Assert.Equal(days, calendar.Events.Select(e => DateOnly.FromDateTime(e.Start!.Value)).Order());
        Assert.Equal(1, File.ReadAllText(_shell.At("a/plan.ics")).Split("BEGIN:VCALENDAR").Length - 1);
        var pages = Directory.GetFiles(_shell.At("a"), "*.html");
        Assert.True(pages.Length > 1);
        Assert.All(pages, p => Assert.InRange(new FileInfo(p).Length, 1, 300_000));
        Assert.Contains("nothing was written", Shell.Run(New("a", "--formats", "none", "--days", "1500")).Out, StringComparison.Ordinal);
        Assert.Equal(2, Shell.Run(New("a", "--formats", "none", "--days", "1499")).Code);
    }

    [Fact]
    public void All_five_note_scales_may_be_asked_for_in_so_many_words()
    {
        Make("a", "--formats", "none", "--scales", "all five-note scales");
        Make("b", "--formats", "none", "--scales", "audava");
        Assert.Equal(File.ReadAllBytes(_shell.At("b/plan.json")), File.ReadAllBytes(_shell.At("a/plan.json")));
        var run = Shell.Run(New("x", "--scales", "parents:5-2"));
        Assert.Equal(2, run.Code);
        Assert.Contains("two that rise", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Scales_that_the_days_cannot_hold_are_counted()
    {
        var run = Shell.Run(New("a", "--formats", "none", "--scales", "parents:13-18", "--days", "3"));
        Assert.Equal(0, run.Code);
        Assert.Contains("left out: 3 of 6 scales, since there are only 3 days of singing", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Plans_of_two_classes_with_the_same_days_and_seed_share_no_event()
    {
        Make("a", "--formats", "none");
        Make("b", "--formats", "none", "--minutes", "5");
        var (a, b) = (Calendar.Load(File.ReadAllText(_shell.At("a/plan.ics")))!, Calendar.Load(File.ReadAllText(_shell.At("b/plan.ics")))!);
        Assert.NotEmpty(a.Events);
        Assert.Empty(a.Events.Select(e => e.Uid).Intersect(b.Events.Select(e => e.Uid)));
    }

    [Fact]
    public void A_level_too_hard_for_the_class_says_who_and_what()
    {
        File.WriteAllText(_shell.At("hard.csv"), "alias,low,high,sustainedSeconds,experience\nRobin,C4,A4,6,beginner\n");
        string[] args = ["plan", "--singers", _shell.At("hard.csv"), "--scales", "mohanam", "--start", "2026-12-01", "--level", "advanced", "--out", _shell.At("x")];
        var run = Shell.Run(args);
        Assert.Equal(2, run.Code);
        Assert.Contains("Robin", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_shell.At("x")));
    }

    [Fact]
    public void The_plan_keeps_its_published_schema()
    {
        Make("a", "--formats", "none", "--tonic", "262.5Hz", "--level", "intermediate", "--no-repeat", "0");
        var text = File.ReadAllText(_shell.At("a/plan.json"));
        Assert.True(IsValid(text));
        Assert.False(IsValid(text.Replace("\"minutes\": 8", "\"minutes\": 0", StringComparison.Ordinal)));
        Assert.False(IsValid(text.Replace("\"minutes\"", "\"teacher\"", StringComparison.Ordinal)));
        Assert.False(IsValid(text.Replace("\"opening\"", "\"break\"", StringComparison.Ordinal)));
        Assert.False(IsValid(text.Replace("urn:warmup:plan:1", "urn:warmup:plan:2", StringComparison.Ordinal)));

        bool IsValid(string json)
        {
            using var document = JsonDocument.Parse(json);
            return Schema.Evaluate(document.RootElement).IsValid;
        }
    }

    [Fact]
    public void What_was_sung_is_logged_and_a_broken_line_of_the_log_is_named()
    {
        Make("a", "--formats", "none");
        var log = _shell.At("log.tsv");
        var sung = Shell.Run("plan", "--plan", _shell.At("a/plan.json"), "--day", "2026-12-05", "--out", _shell.At("b"), "--sung", "--tick", "--log", log);
        Assert.Equal((0, string.Empty), (sung.Code, sung.Error));
        Assert.All(File.ReadAllLines(log), l => Assert.Matches("^2026-12-05\t.+\t.+-[0-9]+\t[0-9]+\tx$", l));
        File.AppendAllText(log, "2026-12-");
        var count = File.ReadAllLines(log).Length;
        var next = Shell.Run(New("c", "--start", "2026-12-07", "--log", log));
        Assert.Equal(0, next.Code);
        Assert.Contains($"line {count}, column 1: a line of the log must have 5 fields", next.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--days", "0", "--days must be a whole number between 1 and 20000, not '0'")]
    [InlineData("--minutes", "3", "--minutes must be a whole number between 5 and 20, not '3'")]
    [InlineData("--start", "tomorrow", "--start must be a date such as 2026-12-01, not 'tomorrow'")]
    [InlineData("--scales", "nosuch", "--scales, ")]
    [InlineData("--scales", "parents:0-3", "between 1 and 72")]
    [InlineData("--scales", ",", "names no scale")]
    [InlineData("--rest", "noday", "--rest must name weekdays such as sunday, not 'noday'")]
    [InlineData("--level", "master", "--level must be beginner or intermediate or advanced, not 'master'")]
    [InlineData("--seed", "-1", "--seed must be a whole number between 0 and 18446744073709551615, not '-1'")]
    [InlineData("--days", "many", "--days must be a whole number")]
    [InlineData("--time", "25:00", "--time must be a time such as 18:00")]
    [InlineData("--formats", "doc", "'.doc'")]
    [InlineData("--log", "nosuch.tsv", "does not exist")]
    [InlineData("--no-repeat", "400", "--no-repeat must be a whole number between 0 and 365, not '400'")]
    [InlineData("--day", "2026-12-01", "add --plan FILE")]
    public void Wrong_options_are_refused_by_name_before_anything_is_written(string option, string value, string message)
    {
        var run = Shell.Run(New("x", option, value));
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_shell.At("x")));
    }

    [Fact]
    public void The_first_day_the_class_and_the_scales_must_be_given()
    {
        Assert.Contains("--start 2026-12-01", Shell.Run("plan", "--singers", Singers, "--scales", "mohanam", "--out", _shell.At("x")).Error, StringComparison.Ordinal);
        Assert.Contains("--singers", Shell.Run("plan", "--start", "2026-12-01", "--scales", "mohanam", "--out", _shell.At("x")).Error, StringComparison.Ordinal);
        Assert.Contains("--scales", Shell.Run("plan", "--start", "2026-12-01", "--singers", Singers, "--out", _shell.At("x")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Rules_that_clash_are_named()
    {
        var run = Shell.Run(New("x", "--no-repeat", "100", "--days", "100"));
        Assert.Equal(2, run.Code);
        Assert.Contains("no drill again within 100 days of singing", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_shell.At("x")));
    }

    [Fact]
    public void An_old_plan_is_refused_where_it_cannot_be_used()
    {
        Make("a", "--formats", "none");
        var plan = _shell.At("a/plan.json");
        Refused("add --day", "--plan", plan);
        Refused("between 2026-12-01 and 2026-12-14, not 2026-12-15", "--plan", plan, "--day", "2026-12-15");
        Refused("day of rest", "--plan", plan, "--day", "2026-12-06");
        Refused("--seed belongs to a new plan", "--plan", plan, "--day", "2026-12-05", "--seed", "3");
        Refused("--singers belongs to a new plan", "--plan", plan, "--day", "2026-12-05", "--singers", Singers);
        Refused("add --log FILE", "--plan", plan, "--day", "2026-12-05", "--sung");
        Refused("there is no file", "--plan", _shell.At("nosuch.json"), "--day", "2026-12-05");
        File.WriteAllText(plan, File.ReadAllText(plan).Replace("\"tempo\": 60", "\"tempo\": 61", StringComparison.Ordinal));
        Refused("changed by hand", "--plan", plan, "--day", "2026-12-05");

        void Refused(string message, params string[] args)
        {
            var run = Shell.Run(["plan", .. args, "--out", _shell.At("y")]);
            Assert.Equal(2, run.Code);
            Assert.Contains(message, run.Error, StringComparison.Ordinal);
        }
    }
}

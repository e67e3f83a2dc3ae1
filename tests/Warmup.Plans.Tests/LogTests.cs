using System.Text;

namespace Warmup.Plans.Tests;

/// <summary>Source: the promises of docs/plans.md: nothing written is lost, a broken line is named and passed over, only a tick moves on.</summary>
public sealed class LogTests : IDisposable
{
    private static readonly LogEntry Entry = new() { Date = new DateOnly(2026, 11, 30), ScaleName = "Mohanam", ExerciseName = "sarali-1", Tempo = 64, IsTicked = true };

    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-").FullName;

    private string Log => Path.Combine(_folder, "log.tsv");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private LogReading Read() => PlanLog.Read(File.ReadAllBytes(Log));

    [Fact]
    public void What_is_added_is_read_back_in_order()
    {
        LogEntry[] entries = [Entry, Entry with { IsTicked = false, Tempo = 400 }, Entry with { ScaleName = "Māyāmāḷavagauḷa", Date = new DateOnly(2028, 2, 29) }];
        foreach (var entry in entries)
        {
            PlanLog.Append(Log, entry);
        }

        Assert.Equal(entries, Read().Entries);
        Assert.Empty(Read().Errors);
        Assert.Equal("2026-11-30\tMohanam\tsarali-1\t64\tx\n", File.ReadAllLines(Log)[0] + "\n");
    }

    [Fact]
    public void A_crash_at_any_byte_of_a_line_loses_that_line_at_most()
    {
        PlanLog.Append(Log, Entry);
        var first = File.ReadAllBytes(Log);
        PlanLog.Append(Log, Entry with { ExerciseName = "sarali-2" });
        var both = File.ReadAllBytes(Log);
        for (var length = first.Length; length <= both.Length; length++)
        {
            File.WriteAllBytes(Log, both[..length]);
            PlanLog.Append(Log, Entry with { ExerciseName = "sarali-3" });
            var read = Read();
            Assert.Equal("sarali-1", read.Entries[0].ExerciseName);
            Assert.Equal("sarali-3", read.Entries[^1].ExerciseName);
            Assert.True(read.Errors.Count <= 1 && read.Entries.Count + read.Errors.Count is 2 or 3);
        }
    }

    [Theory]
    [InlineData("2026-11-30\tMohanam\tsarali-1\t64", "5 fields with tabs between them, not 4")]
    [InlineData("2026-02-30\tMohanam\tsarali-1\t64\tx", "must be a day such as 2026-12-01, not '2026-02-30'")]
    [InlineData("2026-11-30\t\tsarali-1\t64\tx", "name of the scale must have 1 to 100 characters")]
    [InlineData("2026-11-30\tMohanam\tsarali-1\t9\tx", "between 10 and 400, not '9'")]
    [InlineData("2026-11-30\tMohanam\tsarali-1\t64\tyes", "x or -, not 'yes'")]
    [InlineData("\u0000\u0001", "5 fields with tabs between them, not 1")]
    public void A_broken_line_is_reported_with_its_number_and_the_rest_is_used(string line, string message)
    {
        PlanLog.Append(Log, Entry);
        File.AppendAllText(Log, "# a remark\r\n\n" + line + "\n");
        PlanLog.Append(Log, Entry with { ExerciseName = "sarali-2" });
        var read = Read();
        Assert.Equal(["sarali-1", "sarali-2"], read.Entries.ConvertAll(e => e.ExerciseName));
        var error = Assert.Single(read.Errors);
        Assert.Equal(4, error.Line);
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-11-30\tMohanam\tsarali-1\t64", 1)]
    [InlineData("30.11.2026\tMohanam\tsarali-1\t64\tx", 1)]
    [InlineData("2026-11-30\t\tsarali-1\t64\tx", 12)]
    [InlineData("2026-11-30\tMohanam\t\t64\tx", 20)]
    [InlineData("2026-11-30\tMohanam\tsarali-1\tfast\tx", 29)]
    [InlineData("2026-11-30\tMohanam\tsarali-1\t64\tX", 32)]
    public void A_refused_line_names_the_column_of_the_wrong_field(string line, int column)
    {
        Assert.False(LogEntry.TryParse(line, out var entry, out var error));
        Assert.Null(entry);
        Assert.Equal((1, column), (error.Line, error.Column));
        Assert.Equal(error, Assert.Throws<WarmupFormatException>(() => LogEntry.Parse(line)).Error);
    }

    [Fact]
    public void An_entry_is_read_back_from_its_text_by_every_reading_method()
    {
        static T Generic<T>(string text)
            where T : ISpanParsable<T> => T.TryParse(text, null, out var read) && T.Parse(text.AsSpan(), null).Equals(read) && T.Parse(text, null).Equals(read) ? read : throw new FormatException();

        Assert.Equal(Entry, LogEntry.Parse(Entry.ToString()));
        Assert.Equal(Entry, Generic<LogEntry>(Entry.ToString()));
    }

    [Fact]
    public void Bytes_that_are_no_text_spoil_only_their_line()
    {
        var good = Encoding.UTF8.GetBytes("2026-11-30\tMohanam\tsarali-1\t64\tx\n");
        var read = PlanLog.Read([.. good, 0xFF, 0xFE, 0x0A, .. good]);
        Assert.Equal(2, read.Entries.Count);
        Assert.Equal(2, Assert.Single(read.Errors).Line);
    }

    [Theory]
    [InlineData("a\tb", "sarali-1", 60)]
    [InlineData("a\nb", "sarali-1", 60)]
    [InlineData("", "sarali-1", 60)]
    [InlineData("a\u202Eb", "sarali-1", 60)]
    [InlineData("a", "sarali\r1", 60)]
    [InlineData("a", "sarali-1", 401)]
    public void What_would_break_a_line_is_refused_before_the_file_is_touched(string scale, string exercise, int tempo)
    {
        Assert.ThrowsAny<ArgumentException>(() => PlanLog.Append(Log, new LogEntry { Date = Requests.Start, ScaleName = scale, ExerciseName = exercise, Tempo = tempo }));
        Assert.False(File.Exists(Log));
    }

    [Fact]
    public void A_plan_goes_on_from_the_log()
    {
        var request = Requests.Usual with { Scales = Requests.Scales("mohanam"), Days = 5, Level = Level.Beginner };
        var first = WarmupPlan.Make(request with { Start = new DateOnly(2026, 11, 23) }).Plan;
        var sung = first.Days
            .SelectMany(d => d.Drills.ConvertAll(p => new LogEntry { Date = d.Date, ScaleName = "Mohanam", ExerciseName = p.Drill.ExerciseName, Tempo = p.Tempo }))
            .ToValueList();
        var next = WarmupPlan.Make(request with { Log = sung }).Plan;

        // No drill of the last three days of singing on the first day, of the last two on the second, of the last on the third.
        for (var d = 0; d < 3; d++)
        {
            var late = first.Days.Skip(2 + d).SelectMany(x => x.Drills.ConvertAll(p => p.Drill.ExerciseName)).ToHashSet();
            Assert.All(next.Days[d].Drills, p => Assert.DoesNotContain(p.Drill.ExerciseName, late));
        }
    }

    [Theory]
    [InlineData(60, false, 60)]
    [InlineData(72, false, 60)]
    [InlineData(60, true, 62)]
    [InlineData(63, true, 64)]
    [InlineData(400, true, 72)]
    public void Only_a_ticked_tempo_moves_the_ramp_on(int tempo, bool ticked, int expected)
    {
        var plan = WarmupPlan.Make(Requests.Usual with
        {
            Singers = [Requests.Singer("Heron", 48, 76, 30, Experience.Advanced)],
            Level = Level.Beginner,
            Days = 5,
            Log = [Entry with { Tempo = tempo, IsTicked = ticked }],
        }).Plan;
        Assert.Equal(expected, plan.Days.SelectMany(d => d.Drills.ConvertAll(p => p.Tempo)).Max());
    }

    [Theory]
    [InlineData(60, 60, 62)] // both reached 60
    [InlineData(66, 62, 64)] // the class reached 66, Otter only 62: the step above 62
    [InlineData(66, null, 60)] // Otter has never been there
    [InlineData(400, 72, 72)] // the ceiling
    public void The_level_moves_on_from_what_the_slowest_of_the_class_has_reached(int tempo, int? otter, int expected)
    {
        ValueList<Singer> singers = [Requests.Singer("Heron", 48, 76, 30, Experience.Advanced), Requests.Singer("Otter", 48, 76, 30, Experience.Advanced)];
        var made = WarmupPlan.Make(Requests.Usual with
        {
            Singers = singers,
            Level = Level.Beginner,
            Days = 5,
            Log = [Entry with { Tempo = tempo, Singers = [new SungBy("OTTER", otter), new SungBy("Somebody else", 10)] }],
        });
        Assert.Equal(expected, made.Plan.Days.SelectMany(d => d.Drills.ConvertAll(p => p.Tempo)).Max());
        Assert.Equal([tempo, otter], made.Reached);
    }

    [Fact]
    public void A_singer_who_was_absent_once_keeps_what_was_reached_on_other_days()
    {
        var request = Requests.Usual with { Singers = [Requests.Singer("Heron", 48, 76, 30, Experience.Advanced), Requests.Singer("Otter", 48, 76, 30, Experience.Advanced)], Level = Level.Beginner, Days = 5 };
        LogEntry early = Entry with { Date = new DateOnly(2026, 11, 27), Tempo = 62 }, late = Entry with { Tempo = 64, Singers = [new SungBy("Otter", null)] };
        Assert.Equal([64, 62], WarmupPlan.Make(request with { Log = [early, late] }).Reached);
        Assert.Equal([64, 62], WarmupPlan.Make(request with { Log = [late, early, late with { IsTicked = false, Tempo = 90, Singers = [] }] }).Reached);
        Assert.Equal([null, null], WarmupPlan.Make(request).Reached);
    }

    [Fact]
    public void Who_was_absent_and_who_was_slower_stands_in_the_line_and_is_read_back()
    {
        var entry = Entry with { Singers = [new SungBy("Wren", 56), new SungBy("a=b", null), new SungBy("மீரா", 64)] };
        Assert.Equal("2026-11-30\tMohanam\tsarali-1\t64\tx\tWren=56\ta=b=absent\tமீரா=64", entry.ToString());
        Assert.Equal(entry, LogEntry.Parse(entry.ToString()));
        Assert.Equal([56, null, 64, 64], ((string[])["wren", "A=B", "மீரா", "Robin"]).Select(entry.TempoOf));
        PlanLog.Append(Log, entry);
        PlanLog.Append(Log, Entry);
        Assert.Equal([entry, Entry], Read().Entries);
    }

    [Theory]
    [InlineData("Wren", 34)]
    [InlineData("Wren=", 34)]
    [InlineData("Wren=9", 34)]
    [InlineData("Wren=fast", 34)]
    [InlineData("=60", 34)]
    [InlineData("", 34)]
    [InlineData("Wren=60\twren=absent", 42)]
    [InlineData("Wren=60\t", 42)]
    public void A_singer_in_a_line_that_cannot_be_read_is_refused_by_its_column(string singers, int column)
    {
        Assert.False(LogEntry.TryParse("2026-11-30\tMohanam\tsarali-1\t64\tx\t" + singers, out _, out var error));
        Assert.Equal((1, column), (error.Line, error.Column));
    }

    [Fact]
    public void A_singer_twice_or_out_of_bounds_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Entry with { Singers = [new SungBy("Wren", 60), new SungBy("WREN", null)] });
        Assert.Throws<ArgumentOutOfRangeException>(() => new SungBy("Wren", 9));
        Assert.Throws<ArgumentException>(() => new SungBy("a\tb", 60));
    }

    [Fact]
    public void Entries_of_days_to_come_are_no_past()
    {
        var request = Requests.Usual with { Days = 5 };
        Assert.Equal(WarmupPlan.Make(request).Plan, WarmupPlan.Make(request with { Log = [Entry with { Date = new DateOnly(2027, 1, 1) }] }).Plan);
    }
}

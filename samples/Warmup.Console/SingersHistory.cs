using System.Globalization;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary>What was measured of each singer over time, a line for each measurement.</summary>
internal static class SingersHistory
{
    public static void Print(Terminal terminal, ValueList<Singer> singers, DateOnly? on)
    {
        var table = new Table().Border(TableBorder.Ascii2);
        var (lowest, highest) = (singers.Min(s => All(s).Min(m => Lowest(m).Midi)), singers.Max(s => All(s).Max(m => Highest(m).Midi)));
        table.AddColumns("singer", "measured", $"{NoteName.FromMidi(lowest)} to {NoteName.FromMidi(highest)}", "comfortable", "tone (s)", "change");
        table.Columns[2].NoWrap();
        foreach (var singer in singers)
        {
            Measurement? before = null;
            foreach (var measurement in All(singer))
            {
                table.AddRow(
                    before is null ? Terminal.Plain(singer.Alias) : string.Empty,
                    Day(measurement.Date),
                    Terminal.Plain(Bar(measurement, lowest)),
                    $"{measurement.Low} to {measurement.High}{(measurement.IsRangeAssumed ? " (assumed)" : string.Empty)}",
                    Number(measurement.SustainedSeconds),
                    before is null ? string.Empty : Change(before, measurement));
                before = measurement;
            }
        }

        terminal.Rich.Write(table);
        terminal.Out.WriteLine("A sign is a semitone: = comfortable, - full range. The last line of each singer counts.");
        if (on is { } day)
        {
            PrintDue(terminal, singers, day);
        }
    }

    /// <summary>Who is to be measured anew, and why.</summary>
    public static void PrintDue(Terminal terminal, ValueList<Singer> singers, DateOnly on)
    {
        foreach (var singer in singers.Where(s => s.IsMeasuringDue(on)))
        {
            var age = singer.Measurement.Date is { } date
                ? string.Create(CultureInfo.InvariantCulture, $"the last measurement is {on.DayNumber - date.DayNumber} days old on {Day(on)}")
                : "the measurement has no date";
            terminal.Out.WriteLine($"measure {singer.Alias} anew ({singer.Voice}): {age}; the project's own setting is {Singer.MeasureAnewDays} days for children's and changing voices");
        }
    }

    public static HistoryReport ToReport(ValueList<Singer> singers, DateOnly? on) => new(
        HistoryReport.Name,
        on is { } day ? Day(day) : null,
        [.. singers.Select(s => new HistoryRow(
            s.Alias,
            s.Voice,
            on is { } date ? s.IsMeasuringDue(date) : null,
            [.. All(s).Select(m => new MeasurementRow(
                m.Date is null ? null : Day(m.Date),
                m.Low.ToString(),
                m.High.ToString(),
                m.IsRangeAssumed,
                m.FullLow?.ToString(),
                m.FullHigh?.ToString(),
                m.SustainedSeconds.ToDouble()))]))],
        [.. Cautions.All.Select(c => c.Text)]);

    private static IEnumerable<Measurement> All(Singer singer) => singer.Older.Append(singer.Measurement);

    private static NoteName Lowest(Measurement measurement) => measurement.FullLow ?? measurement.Low;

    private static NoteName Highest(Measurement measurement) => measurement.FullHigh ?? measurement.High;

    private static string Bar(Measurement measurement, int lowest)
    {
        var (from, low, high, to) = (Lowest(measurement).Midi, measurement.Low.Midi, measurement.High.Midi, Highest(measurement).Midi);

        // A table drops blanks at the beginning of a cell, so that empty semitones have a sign too.
        return new string('.', from - lowest) + new string('-', low - from) + new string('=', high - low + 1) + new string('-', to - high);
    }

    private static string Change(Measurement before, Measurement now)
    {
        var parts = new List<string>();
        Add(now.Low.Midi - before.Low.Midi, "low");
        Add(now.High.Midi - before.High.Midi, "high");
        var tone = (now.SustainedSeconds - before.SustainedSeconds).ToDouble();
        if (Math.Abs(tone) >= 0.005)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"tone {tone:+0.##;-0.##}"));
        }

        return parts.Count == 0 ? "the same" : string.Join(", ", parts);

        void Add(int semitones, string what)
        {
            if (semitones != 0)
            {
                parts.Add(string.Create(CultureInfo.InvariantCulture, $"{what} {semitones:+0;-0}"));
            }
        }
    }

    public static string Day(DateOnly? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "no date";

    private static string Number(Rational seconds) => seconds.ToDouble().ToString("0.##", CultureInfo.InvariantCulture);
}

/// <summary>The measurements of a class as JSON.</summary>
internal sealed record HistoryReport(string Schema, string? On, List<HistoryRow> Singers, List<string> Cautions)
{
    public const string Name = "urn:warmup:history:1";
}

/// <summary>A singer's measurements, the oldest first; the last counts.</summary>
internal sealed record HistoryRow(string Alias, string? Voice, bool? MeasureAnew, List<MeasurementRow> Measurements);

/// <summary>A measurement; it has no date where none was noted.</summary>
internal sealed record MeasurementRow(string? Date, string Low, string High, bool RangeAssumed, string? FullLow, string? FullHigh, double SustainedSeconds);

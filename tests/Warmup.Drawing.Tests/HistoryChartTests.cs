using System.Globalization;
using System.Text;

namespace Warmup.Drawing.Tests;

/// <summary>Source: the calendar for the distances between days, the keyboard's semitones for heights, the measurements for all texts.</summary>
public class HistoryChartTests
{
    private static MeasuredPoint Point(string date, string low, string high, double seconds) => new(
        DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture), NoteName.Parse(low), NoteName.Parse(high), new Rational((long)(seconds * 100), 100));

    private static readonly HistoryChart Chart = new(
    [
        new MeasuredVoice("Robin", [Point("2026-03-01", "C4", "A4", 8), Point("2026-06-09", "B3", "C5", 9.5) with { FullHigh = NoteName.Parse("D5") }, Point("2026-09-17", "A3", "C5", 12)]),
        new MeasuredVoice("Wren", [Point("2026-06-09", "G3", "E5", 18) with { IsAssumed = true }]),
    ]);

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        Assert.True(stream.CanWrite, "the stream is not closed");
        return stream.ToArray();
    }

    private static Drawn Draw(HistoryChart chart) => new(Bytes(s => chart.WriteSvg(s)));

    [Fact]
    public void Days_stand_as_far_apart_as_in_the_calendar_and_alike_for_all_voices()
    {
        // From 1 March to 9 June and from 9 June to 17 September there are 100 days each: 30 + 30 + 31 + 9, and 21 + 31 + 31 + 17.
        var low = Draw(Chart).Of("low-dot").Select(d => Drawn.Number(d, "cx")).ToList();
        Assert.Equal(4, low.Count);
        Assert.Equal(low[1] - low[0], low[2] - low[1], 0.02);
        Assert.True(low[1] > low[0] + 50);
        Assert.Equal(low[1], low[3], 0.02);
    }

    [Fact]
    public void Notes_stand_as_high_as_their_semitones_and_tones_as_their_seconds()
    {
        var drawn = Draw(Chart);
        var (low, high) = (drawn.Of("low-dot").Select(d => Drawn.Number(d, "cy")).ToList(), drawn.Of("high-dot").Select(d => Drawn.Number(d, "cy")).ToList());

        // C4 to A4 are 9 semitones, B3 and A3 lie 1 and 3 below C4, C5 lies 3 above A4.
        var semitone = (low[0] - high[0]) / 9;
        Assert.Equal(1, (low[1] - low[0]) / semitone, 0.02);
        Assert.Equal(3, (low[2] - low[0]) / semitone, 0.02);
        Assert.Equal(3, (high[0] - high[1]) / semitone, 0.02);
        Assert.Equal(high[1], high[2], 0.02);
        var (tone, zero) = (drawn.Of("tone-dot").Select(d => Drawn.Number(d, "cy")).ToList(), Drawn.Number(drawn.Of("zero")[0], "y1"));
        Assert.Equal(8 / 12.0, (zero - tone[0]) / (zero - tone[2]), 0.01);
        Assert.Equal(9.5 / 12, (zero - tone[1]) / (zero - tone[2]), 0.01);
    }

    [Fact]
    public void Lines_join_the_points_of_each_voice_and_of_no_two()
    {
        var drawn = Draw(Chart);
        foreach (var kind in (string[])["low", "high", "tone"])
        {
            var (lines, dots) = (drawn.Of(kind), drawn.Of($"{kind}-dot"));
            Assert.Equal((2, 4), (lines.Count, dots.Count));
            for (var i = 0; i < lines.Count; i++)
            {
                Assert.Equal(Drawn.Number(dots[i], "cx"), Drawn.Number(lines[i], "x1"), 0.02);
                Assert.Equal(Drawn.Number(dots[i], "cy"), Drawn.Number(lines[i], "y1"), 0.02);
                Assert.Equal(Drawn.Number(dots[i + 1], "cx"), Drawn.Number(lines[i], "x2"), 0.02);
                Assert.Equal(Drawn.Number(dots[i + 1], "cy"), Drawn.Number(lines[i], "y2"), 0.02);
            }
        }

        Assert.Single(drawn.Of("full"));
        Assert.Single(drawn.Of("range"), r => r.Attribute("stroke-dasharray") is not null);
    }

    [Fact]
    public void Each_point_has_its_numbers_and_the_sheet_the_cautions()
    {
        var drawn = Draw(Chart);
        Assert.Equal(["Robin", "Wren"], drawn.Texts("voice"));
        Assert.Equal(["C4", "B3", "A3", "G3"], drawn.Texts("low-name"));
        Assert.Equal(["A4", "C5", "C5", "E5"], drawn.Texts("high-name"));
        Assert.Equal(["8 s", "9.5 s", "12 s", "18 s"], drawn.Texts("tone-seconds"));
        Assert.Equal(["2026-03-01", "2026-06-09", "2026-09-17", "2026-06-09"], drawn.Texts("date"));
        Assert.Equal(string.Join(' ', Cautions.All.Select(c => $"{c.Text} ({c.Source})")), string.Join(' ', drawn.Texts("caution")));
    }

    [Fact]
    public void Of_days_that_stand_close_the_last_has_its_numbers_and_nothing_runs_over_the_edge()
    {
        var days = Enumerable.Range(0, 60).Select(i => Point(new DateOnly(2026, 1, 1).AddDays(i).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), "C4", "C5", 10 + i));
        var drawn = Draw(new HistoryChart(Enumerable.Repeat(new MeasuredVoice("Otter", days.ToValueList()), 9).ToValueList()));
        Assert.Equal(9 * 60, drawn.Of("tone-dot").Count);
        Assert.Equal(9, drawn.Texts("date").Count(d => d == "2026-03-01"));
        Assert.True(drawn.Pages.Count > 1);
        foreach (var text in drawn.Pages.SelectMany(p => p.Elements()).Where(e => e.Elements().Any(u => u.Name.LocalName == "use")))
        {
            var (left, right) = drawn.Ink(text);
            Assert.InRange(left, 40, 210 / 25.4 * 72);
            Assert.InRange(right, 40, (210 / 25.4 * 72) - 40);
        }

        // Dates that are written do not touch each other.
        var dates = drawn.Of("date").Take(drawn.Of("date").Count / 9).Select(drawn.Ink).ToList();
        Assert.All(dates.Zip(dates.Skip(1)), d => Assert.True(d.First.Right < d.Second.Left));
    }

    [Fact]
    public void Equal_charts_give_equal_bytes_of_the_kind_that_was_asked_for()
    {
        Assert.Equal(Bytes(s => Chart.WritePdf(s)), Bytes(s => (Chart with { }).WritePdf(s)));
        Assert.StartsWith("%PDF", Encoding.ASCII.GetString(Bytes(s => Chart.WritePdf(s)), 0, 4), StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_drawn_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new HistoryChart([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new MeasuredVoice("a", []));
        Assert.Throws<ArgumentException>(() => new MeasuredVoice("a", [Point("2026-03-02", "C4", "C5", 8), Point("2026-03-02", "C4", "C5", 8)]));
        Assert.Throws<ArgumentException>(() => Point("2026-03-02", "C5", "C4", 8));
        Assert.Throws<ArgumentException>(() => Point("2026-03-02", "C4", "C5", 8) with { FullLow = NoteName.Parse("D4") });
        Assert.Throws<ArgumentException>(() => Chart with { Title = "a\tb" });
    }
}

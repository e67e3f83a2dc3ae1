using System.Globalization;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: the documented file of a class; the project's own setting of 90 days; the calendar's own arithmetic for days.</summary>
public class MeasurementTests
{
    private static readonly Gen<Measurement> Any =
        from day in Gen.Choose(700_000, 800_000)
        from low in Gen.Choose(24, 96)
        from span in Gen.Choose(0, 12)
        from below in Gen.Choose(-1, 6)
        from tenths in Gen.ArrayOf(Gen.Choose(10, 1200), 3)
        from rule in Gen.Elements(TrialRule.Best, TrialRule.Median)
        select new Measurement(DateOnly.FromDayNumber(day), NoteName.FromMidi(low), NoteName.FromMidi(low + span), tenths.Select(t => new Rational(t, 10)).ToValueList(), rule)
        {
            FullLow = below < 0 ? null : NoteName.FromMidi(Math.Max(24, low - below)),
        };

    private static readonly Gen<Measurement[]> OfDifferentDays = Gen.Choose(1, 8)
        .SelectMany(count => Gen.ArrayOf(Any, count))
        .Select(all => all.DistinctBy(m => m.Date).ToArray());

    private static Measurement Of(string date, string low, string high, int seconds) =>
        new(DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture), NoteName.Parse(low), NoteName.Parse(high), seconds);

    private static Singer Read(string members) =>
        SingersFile.Read(Encoding.UTF8.GetBytes($$"""{"schema":"urn:warmup:singers:1","singers":[{"alias":"Robin",{{members}}}]}""")).Single();

    private static string Refused(string members) => Assert.Throws<WarmupFormatException>(() => Read(members)).Error.Message;

    private static Singer AgainOf(Singer singer)
    {
        using var stream = new MemoryStream();
        SingersFile.Write([singer], stream);
        return SingersFile.Read(stream.ToArray()).Single();
    }

    [Property]
    public Property In_whatever_order_measurements_come_the_newest_counts_and_the_older_stand_by_date() => Prop.ForAll(
        OfDifferentDays.ToArbitrary(),
        measurements =>
        {
            var singer = measurements.Skip(1).Aggregate(new Singer("Robin", measurements[0], Experience.Beginner), (s, m) => s.With(m));
            var sorted = measurements.OrderBy(m => m.Date).ToList();
            Assert.Equal(sorted[^1], singer.Measurement);
            Assert.Equal(sorted[..^1], singer.Older);
            Assert.Equal(
                (sorted[^1].Low, sorted[^1].High, sorted[^1].SustainedSeconds, sorted[^1].FullLow),
                (singer.Low, singer.High, singer.SustainedSeconds, singer.FullLow));
            Assert.Equal(singer, Enumerable.Reverse(measurements).Skip(1).Aggregate(new Singer("Robin", measurements[^1], Experience.Beginner), (s, m) => s.With(m)));
            Assert.Equal(singer, AgainOf(singer));
        });

    [Property]
    public Property Numbers_without_a_date_are_older_than_all_others_and_kept() => Prop.ForAll(
        OfDifferentDays.ToArbitrary(),
        measurements =>
        {
            var first = new Singer("Robin", NoteName.Parse("C4"), NoteName.Parse("A4"), 9);
            var singer = measurements.Aggregate(first, (s, m) => s.With(m));
            Assert.Equal(first.Measurement, singer.Older[0]);
            Assert.Equal(measurements.Length, singer.Older.Count);
            Assert.Equal(singer, AgainOf(singer));
        });

    [Fact]
    public void A_second_measurement_of_a_day_is_refused()
    {
        var singer = new Singer("Robin", Of("2026-03-01", "C4", "A4", 8), Experience.Beginner);
        Assert.Contains("2026-03-01", Assert.Throws<ArgumentException>(() => singer.With(Of("2026-03-01", "B3", "C5", 9))).Message, StringComparison.Ordinal);
        var one = "{\"date\":\"2026-03-01\",\"low\":\"C4\",\"high\":\"A4\",\"sustainedSeconds\":8}";
        Assert.Contains("two measurements of 2026-03-01", Refused($"\"measurements\":[{one},{one}]"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_dates_is_read_as_before()
    {
        var singer = Read("\"low\":\"C4\",\"high\":\"A4\",\"sustainedSeconds\":8");
        Assert.Equal(new Singer("Robin", NoteName.Parse("C4"), NoteName.Parse("A4"), 8), singer);
        Assert.Equal((null, 0), (singer.Measurement.Date, singer.Older.Count));
    }

    [Fact]
    public void Dated_measurements_stand_beside_the_singers_own_numbers_or_in_their_place()
    {
        const string Dated = "\"measurements\":[{\"date\":\"2026-06-02\",\"low\":\"B3\",\"high\":\"C5\",\"trials\":[9,9.5,8]},{\"date\":\"2026-03-01\",\"low\":\"C4\",\"high\":\"A4\",\"sustainedSeconds\":8}]";
        var alone = Read(Dated);
        Assert.Equal(("B3", "C5", new Rational(19, 2)), (alone.Low.ToString(), alone.High.ToString(), alone.SustainedSeconds));
        Assert.Equal([Of("2026-03-01", "C4", "A4", 8)], alone.Older);
        var beside = Read($"\"low\":\"D4\",\"high\":\"G4\",\"sustainedSeconds\":7,{Dated}");
        Assert.Equal((alone.Measurement, 2), (beside.Measurement, beside.Older.Count));
        Assert.Equal("D4", beside.Older[0].Low.ToString());
    }

    [Fact]
    public void A_measured_range_takes_the_place_of_an_assumed_one()
    {
        var robin = Singer.FromVoice("Robin", VoiceTypes.Find("child 8-9")!, 9).With(Of("2026-03-01", "C4", "A4", 8));
        Assert.False(robin.IsRangeAssumed);
        Assert.True(robin.Older[0].IsRangeAssumed);
        Assert.Equal(robin, AgainOf(robin));
        var tone = Read("\"voice\":\"child 8-9\",\"measurements\":[{\"date\":\"2026-03-01\",\"sustainedSeconds\":8}]");
        Assert.True(tone.IsRangeAssumed);
        Assert.Equal(tone, AgainOf(tone));
    }

    [Theory]
    [InlineData("\"measurements\":[]", "between 1 and 1000")]
    [InlineData("\"measurements\":[null]", "measurement 1 is empty")]
    [InlineData("\"measurements\":[{\"low\":\"C4\",\"high\":\"A4\",\"sustainedSeconds\":8}]", "\"date\"")]
    [InlineData("\"measurements\":[{\"date\":\"2026-02-30\",\"low\":\"C4\",\"high\":\"A4\",\"sustainedSeconds\":8}]", "2026-02-30")]
    [InlineData("\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"A4\",\"high\":\"C4\",\"sustainedSeconds\":8}]", "swap")]
    [InlineData("\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"C4\",\"high\":\"A4\"}]", "sustainedSeconds")]
    [InlineData("\"measurements\":[{\"date\":\"2026-03-01\",\"sustainedSeconds\":8}]", "\"low\"")]
    [InlineData("\"measurements\":[{\"date\":\"2026-03-01\",\"low\":\"C4\",\"high\":\"A4\",\"sustainedSeconds\":8,\"by\":\"ear\"}]", "'by'")]
    public void What_is_wrong_with_a_measurement_is_named_with_the_singer(string members, string expected)
    {
        var message = Refused(members);
        Assert.Contains(expected, message, StringComparison.Ordinal);
        Assert.True(expected == "'by'" || message.Contains("Robin", StringComparison.Ordinal), message);
    }

    [Theory]
    [InlineData("child 8-9", "2026-03-01", "2026-05-29", false)] // 89 days: 30 of March, 30 of April, 29 of May
    [InlineData("child 8-9", "2026-03-01", "2026-05-30", true)] // 90 days
    [InlineData("changing male voice 12-15", "2026-03-01", "2027-03-01", true)]
    [InlineData("changing male voice 12-15", "2026-03-01", "2026-02-01", false)]
    [InlineData("soprano", "2026-03-01", "2036-03-01", false)]
    [InlineData(null, "2026-03-01", "2036-03-01", false)]
    public void Only_a_childs_or_a_changing_voice_is_measured_anew_after_90_days(string? voice, string measured, string on, bool due)
    {
        var singer = new Singer("Robin", Of(measured, "C4", "A4", 8), Experience.Beginner) { Voice = voice };
        Assert.Equal(due, singer.IsMeasuringDue(DateOnly.ParseExact(on, "yyyy-MM-dd", CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void A_childs_measurement_without_a_date_is_always_due() =>
        Assert.True(Singer.FromVoice("Robin", VoiceTypes.Find("child 8-9")!, 9).IsMeasuringDue(new DateOnly(2026, 12, 1)));

    [Fact]
    public void The_childrens_and_the_changing_voice_types_are_those_that_change() => Assert.All(
        VoiceTypes.All,
        t => Assert.Equal(t.Name.Contains("child", StringComparison.Ordinal) || t.Name.StartsWith("girl", StringComparison.Ordinal) || t.Name.Contains("changing", StringComparison.Ordinal), t.IsStillChanging));
}

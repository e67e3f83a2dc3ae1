using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Plans.Tests;

/// <summary>Source: what is read back must equal what was written, and give the same scores; what is no plan must be refused by name.</summary>
public class PlanFileTests
{
    private static readonly WarmupPlan Usual = WarmupPlan.Make(Requests.Usual with { Days = 9 }).Plan;

    private static string Text(WarmupPlan plan)
    {
        using var stream = new MemoryStream();
        PlanFile.Write(plan, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static WarmupPlan Read(string text) => PlanFile.Read(Encoding.UTF8.GetBytes(text));

    [Property(MaxTest = 6)]
    public Property A_plan_that_is_read_back_is_equal_and_gives_equal_scores() => Prop.ForAll(Requests.Random.ToArbitrary(), request =>
    {
        WarmupPlan plan;
        try
        {
            plan = WarmupPlan.Make(request with { Days = Math.Min(request.Days, 5) }).Plan;
        }
        catch (PlanImpossibleException)
        {
            return;
        }

        var again = Read(Text(plan));
        Assert.Equal(plan, again);
        Assert.Equal(Text(plan), Text(again));
        foreach (var day in again.Days)
        {
            if (!day.IsRest)
            {
                Assert.Equal(plan.ToScore(plan.DayOf(day.Date)), again.ToScore(day));
            }
        }
    });

    [Theory]
    [InlineData("A3")]
    [InlineData("Bb3")]
    [InlineData("A#3")]
    [InlineData("5.5")]
    [InlineData("214.7Hz")]
    public void Every_way_of_naming_a_tonic_is_kept(string tonic)
    {
        var plan = WarmupPlan.Make(Requests.Usual with { Singers = [Requests.Singer("Heron", 48, 84, 60, Experience.Advanced)], Tonic = Tonic.Parse(tonic), Tuning = Tuning.Just, Days = 1 }).Plan;
        var again = Read(Text(plan));
        Assert.Equal(plan, again);
        Assert.Equal(plan.ToScore(plan.Days[0]), again.ToScore(again.Days[0]));
        Assert.Equal(Tonic.Parse(tonic).Hz, plan.Tonic.Hz, 1e-9);
    }

    [Theory]
    [InlineData(FillBy.Room)]
    [InlineData(FillBy.Hold)]
    [InlineData(FillBy.Rest)]
    public void A_level_of_ones_own_is_kept_to_the_last_setting(FillBy by)
    {
        var own = Level.Beginner with { Name = "own", Delivery = Delivery.LineByLine with { Fill = Fill.Anga, FillBy = by, BreathSeconds = new Rational(3, 2), BreathGrid = 12, LeastHold = 2 } };
        var plan = WarmupPlan.Make(Requests.Usual with { Level = own, Days = 2 }).Plan;
        Assert.Contains(plan.Drills, d => d.Delivery == own.Delivery);
        Assert.Equal(plan, Read(Text(plan)));
    }

    [Property(MaxTest = 50)]
    public void A_frequency_written_by_hand_reads_back_equal(PositiveInt thousandths)
    {
        var hz = 40 + (thousandths.Get % 1_900_000 / 1_000.0);
        var text = Text(Usual).Replace("\"midi\": 60", $"\"hz\": {hz.ToString("R", System.Globalization.CultureInfo.InvariantCulture)}", StringComparison.Ordinal);
        Assert.Contains("\"hz\"", text, StringComparison.Ordinal);
        Assert.Equal(Read(text), Read(Text(Read(text))));
    }

    [Fact]
    public void A_plan_holds_no_singer() => Assert.All(Requests.Class, s => Assert.DoesNotContain(s.Alias, Text(Usual), StringComparison.Ordinal));

    [Theory]
    [InlineData("\"urn:warmup:plan:1\"", "\"urn:warmup:plan:2\"", "urn:warmup:plan:2")]
    [InlineData("\"schema\"", "\"scheme\"", "not the JSON of a plan")]
    [InlineData("splitmix64/1", "splitmix64/2", "splitmix64/2")]
    [InlineData("\"minutes\": 8", "\"minutes\": 0", "minutes must be between 5 and 20, not 0")]
    [InlineData("\"minutes\": 8", "\"teacher\": 8", "not the JSON of a plan")]
    [InlineData("\"role\": \"opening\"", "\"role\": \"break\"", "'break'")]
    [InlineData("\"date\": \"2026-12-02\"", "\"date\": \"2026-12-03\"", "must follow each other")]
    [InlineData("\"date\": \"2026-12-02\"", "\"date\": \"2026-02-30\"", "must be a day such as 2026-12-01, not '2026-02-30'")]
    [InlineData("\"kalam\": 1", "\"kalam\": 5", "kalam must be 1 to 4 and gati 3, 4, 5, 7 or 9, not 5 and 4")]
    [InlineData("\"breathSeconds\": \"4/5\"", "\"breathSeconds\": \"11\"", "breathSeconds must be between 1/5 and 10")]
    [InlineData("\"title\": \"", "\"title\": \"\\u0007", "title must have at most 1000 characters without control characters")]
    [InlineData("\"name\": \"Mohanam\"", "\"name\": \" \"", "the name of a scale must have 1 to 100 characters")]
    [InlineData("\"tempo\": 60", "\"tempo\": 9", "tempo must be between 10 and 400, not 9")]
    [InlineData("\"times\": 1", "\"times\": 13", "times must be between 1 and 12, not 13")]
    [InlineData("\"seed\": 7,", "", "\"seed\" is missing")]
    public void What_is_no_plan_is_refused_by_name(string good, string bad, string message)
    {
        var text = Text(Usual);
        var at = text.IndexOf(good, StringComparison.Ordinal);
        Assert.True(at >= 0);
        var refused = Assert.Throws<WarmupFormatException>(() => Read(text[..at] + bad + text[(at + good.Length)..]));
        Assert.Contains(message, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_cut_anywhere_is_refused_and_nothing_else_happens()
    {
        var text = Text(Usual).TrimEnd();
        for (var length = 0; length < text.Length; length += 997)
        {
            Assert.Throws<WarmupFormatException>(() => Read(text[..length]));
        }
    }

    [Fact]
    public void Only_days_of_the_plan_can_be_made()
    {
        var beyond = Assert.Throws<ArgumentOutOfRangeException>(() => Usual.DayOf(new DateOnly(2027, 1, 1)));
        Assert.Contains("between 2026-12-01 and 2026-12-09, not 2027-01-01", beyond.Message, StringComparison.Ordinal);
        var rest = Assert.Throws<ArgumentException>(() => Usual.ToScore(Usual.DayOf(new DateOnly(2026, 12, 6))));
        Assert.Contains("day of rest", rest.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_has_every_day_and_no_script_and_escapes_names()
    {
        var scale = new Scale("<b>\"Own\" & scale</b>", Catalogue.Default.Read("mohanam").Ascent);
        var plan = WarmupPlan.Make(Requests.Usual with { Scales = [scale], Days = 35 }).Plan;
        using var stream = new MemoryStream();
        Assert.Single(MonthPage.Of(plan, link: d => $"{d.Date.Day}.txt\"")).Write(stream);
        var page = Encoding.UTF8.GetString(stream.ToArray());
        Assert.DoesNotContain("<b>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;&quot;Own&quot; &amp; scale&lt;/b&gt;", page, StringComparison.Ordinal);
        Assert.Equal(30, page.Split("<a href=\"").Length - 1);

        // Well-formed as XML but for the doctype and the one void element with no end.
        var body = System.Xml.Linq.XElement.Parse(page[page.IndexOf("<body>", StringComparison.Ordinal)..page.IndexOf("</html>", StringComparison.Ordinal)]);
        var months = body.Element("main")!.Elements("table").ToList();
        Assert.Equal(["December 2026", "January 2027"], months.Select(m => m.Element("caption")!.Value));
        Assert.Equal([31, 31], months.Select(m => m.Descendants("td").Count(c => c.Value.Length > 0)));

        // 1 December 2026 is a Tuesday, 1 January 2027 a Friday (common knowledge of the calendar).
        Assert.Equal([1, 4], months.Select(m => m.Elements("tr").ElementAt(1).Elements("td").TakeWhile(c => c.Value.Length == 0).Count()));
        Assert.All(Cautions.All, c => Assert.Contains(c.Text, body.Value, StringComparison.Ordinal));

        // The table names the drills in words; the short names of the log are explained once.
        var sung = months.SelectMany(m => m.Descendants("li")).Select(i => i.Value).ToList();
        Assert.Equal(plan.Days.Sum(d => d.Drills.Count), sung.Count);
        Assert.All(plan.Days.SelectMany(d => d.Drills).Zip(sung), pair => Assert.StartsWith($"{pair.First.Drill.Title.Split(':')[0]} at {pair.First.Tempo}", pair.Second, StringComparison.Ordinal));
        var named = plan.Days.SelectMany(d => d.Drills).Select(d => d.Drill).Select(d => (d.ExerciseName, ": " + d.Title)).ToHashSet();
        var explained = body.Descendants("dt").Select(t => (t.Value, ((System.Xml.Linq.XElement)t.NextNode!).Value)).ToList();
        Assert.Equal(named.Count, explained.Count);
        Assert.Equal(named, explained.ToHashSet());
    }
}

using System.Globalization;
using System.Net;
using System.Text;

namespace Warmup.Plans;

/// <summary>
/// A plan as HTML pages without scripts or network: a table for each month, with links to the days' pages. On a screen narrower than 700 px the table
/// becomes a list of days. A plan over many months has several pages, with links from one to the next, so that none is too heavy for a telephone.
/// </summary>
public sealed class MonthPage
{
    private const int DaysAWeek = 7;

    // What comes before and after the tables, except for the drills' titles.
    private const int FrameBytes = 8_000;

    private readonly string _text;

    private MonthPage(string fileName, string text) => (FileName, _text) = (fileName, text);

    /// <summary>The most bytes of a page: 300,000 (the project's own setting). Only a single month that is longer by itself exceeds it.</summary>
    public static int MostBytes => 300_000;

    /// <summary>The name of its file: <c>plan.html</c> for the first, and <c>plan-2027-08.html</c> for one that begins in August 2027.</summary>
    public string FileName { get; }

    /// <summary>The pages of a plan. Equal plans give equal pages.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="days">The days where the plan does not hold them, as <see cref="PlanDraw.DrawDays"/> gives them; the plan's own by default.</param>
    /// <param name="link">Gives the address of a day's page or sheet, or <see langword="null"/> for none; no links by default.</param>
    /// <returns>The pages in order, each made when it is asked for.</returns>
    public static IEnumerable<MonthPage> Of(WarmupPlan plan, IEnumerable<PlanDay>? days = null, Func<PlanDay, string?>? link = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Each(plan, days ?? plan.Days, link);
    }

    /// <summary>Writes the page.</summary>
    /// <param name="destination">Where the bytes go, in UTF-8; it is not closed.</param>
    public void Write(Stream destination)
    {
        ArgumentNullException.ThrowIfNull(destination);
        destination.Write(Encoding.UTF8.GetBytes(_text));
    }

    /// <summary>The name of the file.</summary>
    public override string ToString() => FileName;

    private static IEnumerable<MonthPage> Each(WarmupPlan plan, IEnumerable<PlanDay> days, Func<PlanDay, string?>? link)
    {
        var (name, before) = (NameOf(null), (string?)null);
        var body = new StringBuilder();
        var titles = new Dictionary<string, (DrillRole Role, string Html)>();
        var (bytes, first) = (FrameBytes, (DateOnly?)null);
        foreach (var month in Months(days))
        {
            var table = new StringBuilder();
            Month(table, month, link);
            var more = TitlesOf(month).Where(t => !titles.ContainsKey(t.Key)).ToList();
            var size = Encoding.UTF8.GetByteCount(table.ToString()) + more.Sum(t => Encoding.UTF8.GetByteCount(t.Value.Html));
            if (first is not null && bytes + size > MostBytes)
            {
                var next = NameOf(month[0].Date);
                yield return Make(plan, name, body, titles.Values, before, next);
                (name, before, bytes) = (next, name, FrameBytes);
                body.Clear();
                titles.Clear();
                more = [.. TitlesOf(month)];
                size = Encoding.UTF8.GetByteCount(table.ToString()) + more.Sum(t => Encoding.UTF8.GetByteCount(t.Value.Html));
            }

            first ??= month[0].Date;
            body.Append(table);
            bytes += size;
            foreach (var (key, value) in more)
            {
                titles.Add(key, value);
            }
        }

        yield return Make(plan, name, body, titles.Values, before, null);
    }

    private static string NameOf(DateOnly? begin) => begin is { } date ? string.Create(CultureInfo.InvariantCulture, $"plan-{date:yyyy-MM}.html") : "plan.html";

    private static IEnumerable<List<PlanDay>> Months(IEnumerable<PlanDay> days)
    {
        var month = new List<PlanDay>();
        foreach (var day in days)
        {
            if (month.Count > 0 && day.Date.Month != month[0].Date.Month)
            {
                yield return month;
                month = [];
            }

            month.Add(day);
        }

        if (month.Count > 0)
        {
            yield return month;
        }
    }

    private static MonthPage Make(WarmupPlan plan, string name, StringBuilder body, IEnumerable<(DrillRole Role, string Html)> titles, string? before, string? next)
    {
        var page = new StringBuilder(Head.ReplaceLineEndings("\n"));
        Links(page, before, next);
        page.Append(body);
        Links(page, before, next);
        page.Append(CultureInfo.InvariantCulture, $"<p>Level {Text(plan.LevelName)}, at most {plan.Minutes} minutes a day, seed {plan.Seed}. The number after \"at\" is the tempo in aksharas a minute; the days' pages have the notes. {Text(WarmupPlan.ShortCaution)}</p>\n");
        page.Append("<h2>The drills</h2>\n<dl>\n").AppendJoin(string.Empty, titles.OrderBy(t => t.Role).Select(t => t.Html)).Append("</dl>\n<h2>Cautions</h2>\n<ul>\n");
        foreach (var caution in FramingExercises.Cautions)
        {
            page.Append("<li>").Append(Text(caution.Text)).Append("</li>\n");
        }

        return new MonthPage(name, page.Append("</ul>\n</main>\n</body>\n</html>\n").ToString());
    }

    private static void Links(StringBuilder page, string? before, string? next)
    {
        if (before is null && next is null)
        {
            return;
        }

        page.Append("<nav>");
        page.Append(before is null ? string.Empty : $"<a href=\"{before}\" rel=\"prev\">earlier months</a> ");
        page.Append(next is null ? string.Empty : $"<a href=\"{next}\" rel=\"next\">later months</a>").Append("</nav>\n");
    }

    /// <summary>The drills' names in the log and on the command line, and their whole titles.</summary>
    private static IEnumerable<KeyValuePair<string, (DrillRole Role, string Html)>> TitlesOf(List<PlanDay> month) => month
        .SelectMany(d => d.Drills)
        .Select(d => d.Drill)
        .DistinctBy(d => (d.ExerciseName, d.Title))
        .Select(d => KeyValuePair.Create($"{d.ExerciseName}\n{d.Title}", (d.Role, $"<div><dt>{Text(d.ExerciseName)}</dt><dd>: {Text(d.Title)}</dd></div>\n")));

    private static void Month(StringBuilder page, List<PlanDay> days, Func<PlanDay, string?>? link)
    {
        var first = days[0].Date;
        page.Append(CultureInfo.InvariantCulture, $"<table>\n<caption>{first.ToString("MMMM yyyy", CultureInfo.InvariantCulture)}</caption>\n<tr>");
        foreach (var name in (string[])["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"])
        {
            page.Append("<th scope=\"col\">").Append(name).Append("</th>");
        }

        page.Append("</tr>\n");
        var begin = new DateOnly(first.Year, first.Month, 1);
        var length = DateTime.DaysInMonth(first.Year, first.Month);
        var before = ((int)begin.DayOfWeek + DaysAWeek - 1) % DaysAWeek;
        for (var cell = 0; cell < before + length; cell++)
        {
            page.Append(cell % DaysAWeek == 0 ? "<tr>" : string.Empty);
            var number = cell - before + 1;
            page.Append(number < 1 ? "<td></td>" : Cell(number, days.Find(d => d.Date.Day == number), link));
            page.Append(cell % DaysAWeek == DaysAWeek - 1 ? "</tr>\n" : string.Empty);
        }

        page.Append((before + length) % DaysAWeek == 0 ? "</table>\n" : "</tr>\n</table>\n");
    }

    private static string Cell(int number, PlanDay? day, Func<PlanDay, string?>? link)
    {
        if (day is null)
        {
            return string.Create(CultureInfo.InvariantCulture, $"<td>{number}</td>");
        }

        if (day.IsRest)
        {
            return string.Create(CultureInfo.InvariantCulture, $"<td>{number}: rest</td>");
        }

        var cell = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"<td>{number}: "));
        var scale = Text(day.Scale!.Name);
        cell.Append(link?.Invoke(day) is { } address ? $"<a href=\"{Text(address)}\">{scale}</a>" : scale);
        cell.Append(", ").Append(DayTime.Of(day.Seconds)).Append("<ol>");
        foreach (var planned in day.Drills)
        {
            cell.Append("<li>").Append(Text(planned.InWords)).Append("</li>");
        }

        cell.Append("</ol>");
        return (day.Shortfall is { } shortfall ? cell.Append("<p>Short: ").Append(Text(shortfall.ToString())).Append("</p>") : cell).Append("</td>").ToString();
    }

    private static string Text(string text) => WebUtility.HtmlEncode(text);

    private const string Head =
        """
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="color-scheme" content="light dark">
        <title>Warm-ups</title>
        <style>
        :root { color-scheme: light dark; --paper: #fcfaf5; --ink: #1f1c17; --soft: #5d574c; --rule: #a59c8b; --accent: #0a5c63; }
        @media screen and (prefers-color-scheme: dark) { :root { --paper: #15171a; --ink: #ece8df; --soft: #b3aea2; --rule: #6d6a63; --accent: #7fd6cd; } }
        body { font: 1rem/1.4 system-ui, "Noto Sans", sans-serif; margin: 1.5em; background: var(--paper); color: var(--ink); }
        table { border-collapse: collapse; width: 100%; table-layout: fixed; margin-bottom: 2em; }
        caption { font-weight: bold; text-align: left; padding: 0.3em 0; }
        th, td { border: 1px solid var(--rule); padding: 0.3em; vertical-align: top; text-align: left; font-size: 0.85em; }
        a { color: var(--accent); font-weight: bold; }
        p { margin: 0.3em 0 0; font-style: italic; }
        ol { margin: 0.2em 0 0 1.2em; padding: 0; }
        ul { padding-left: 1.2em; }
        dl { columns: 20em; font-size: 0.85em; }
        dl div { break-inside: avoid; }
        dt, dd { display: inline; margin: 0; }
        dt { font-weight: bold; }
        td { overflow-wrap: anywhere; }
        @media screen and (max-width: 699.98px) {
          body { margin: 0.9em; }
          table, tbody, tr, td { display: block; }
          caption { display: block; font-size: 1.2em; }
          tr:first-child, td:empty { display: none; }
          td { border: 0; border-top: 1px solid var(--rule); padding: 0.6em 0; font-size: 1em; }
          td::before { color: var(--soft); }
          td:nth-child(1)::before { content: "Mon "; }
          td:nth-child(2)::before { content: "Tue "; }
          td:nth-child(3)::before { content: "Wed "; }
          td:nth-child(4)::before { content: "Thu "; }
          td:nth-child(5)::before { content: "Fri "; }
          td:nth-child(6)::before { content: "Sat "; }
          td:nth-child(7)::before { content: "Sun "; }
          a { display: inline-block; padding: 0.25em 0.1em; }
          ol { margin-left: 1.6em; }
        }
        @page { size: landscape; margin: 10mm; }
        @media print {
          :root { --paper: #fff; --ink: #000; --soft: #333; --rule: #888; --accent: #000; }
          body { margin: 0; font-size: 0.75em; line-height: 1.2; }
          h1 { font-size: 1.4em; margin: 0; }
          table { margin-bottom: 0.5em; }
          td { font-size: 0.78em; padding: 0.2em; }
          tr, li { break-inside: avoid; }
          caption, h2 { break-after: avoid; }
        }
        </style>
        </head>
        <body>
        <main>
        <h1>Warm-ups</h1>
        """;
}

using System.Globalization;
using System.Net;
using System.Text;

namespace Warmup.Plans;

/// <summary>A plan as one HTML page without scripts or network: a table for each month, with links to the days' sheets.</summary>
public static class MonthPage
{
    private const int DaysAWeek = 7;

    /// <summary>Writes the page. Equal plans give equal bytes.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="destination">Where the bytes go, in UTF-8; it is not closed.</param>
    /// <param name="link">Gives the address of a day's sheet, or <see langword="null"/> for none; no links by default.</param>
    public static void Write(WarmupPlan plan, Stream destination, Func<PlanDay, string?>? link = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(destination);
        var page = new StringBuilder(
            """
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
            <title>Warm-ups</title>
            <style>
            body { font-family: sans-serif; margin: 1.5em; }
            table { border-collapse: collapse; width: 100%; table-layout: fixed; margin-bottom: 2em; }
            caption { font-weight: bold; text-align: left; padding: 0.3em 0; }
            th, td { border: 1px solid #888; padding: 0.3em; vertical-align: top; text-align: left; font-size: 0.85em; }
            p { margin: 0.3em 0 0; font-style: italic; }
            ol { margin: 0.2em 0 0 1.2em; padding: 0; }
            ul { padding-left: 1.2em; }
            dl { columns: 20em; font-size: 0.85em; }
            dl div { break-inside: avoid; }
            dt, dd { display: inline; margin: 0; }
            dt { font-weight: bold; }
            td { overflow-wrap: anywhere; }
            @page { size: landscape; margin: 10mm; }
            @media print { body { margin: 0; font-size: 0.75em; } tr, li { break-inside: avoid; } caption, h2 { break-after: avoid; } }
            </style>
            </head>
            <body>
            <h1>Warm-ups</h1>

            """);
        var months = plan.Days.GroupBy(d => (d.Date.Year, d.Date.Month));
        foreach (var month in months)
        {
            Month(page, month.ToList(), link);
        }

        page.Append(CultureInfo.InvariantCulture, $"<p>Level {Text(plan.LevelName)}, at most {plan.Minutes} minutes a day, seed {plan.Seed}. The number after \"at\" is the tempo in aksharas a minute; the days' sheets have the notes. {Text(WarmupPlan.ShortCaution)}</p>\n");
        Titles(page, plan);
        page.Append("<h2>Cautions</h2>\n<ul>\n");
        foreach (var caution in Cautions.All)
        {
            page.Append("<li>").Append(Text(caution.Text)).Append("</li>\n");
        }

        page.Append("</ul>\n</body>\n</html>\n");
        destination.Write(Encoding.UTF8.GetBytes(page.ToString().ReplaceLineEndings("\n")));
    }

    /// <summary>What the short names in the table stand for: each exercise that is sung, once, in the order of the roles.</summary>
    private static void Titles(StringBuilder page, WarmupPlan plan)
    {
        var sung = plan.Days.SelectMany(d => d.Drills).Select(d => d.Drill).ToHashSet();
        page.Append("<h2>The drills</h2>\n<dl>\n");
        foreach (var drill in plan.Drills.Where(sung.Contains).DistinctBy(d => d.ExerciseName).OrderBy(d => d.Role))
        {
            page.Append("<div><dt>").Append(Text(drill.ExerciseName)).Append("</dt><dd>: ").Append(Text(drill.Title)).Append("</dd></div>\n");
        }

        page.Append("</dl>\n");
    }

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
            cell.Append("<li>").Append(Text(planned.ToString())).Append("</li>");
        }

        cell.Append("</ol>");
        return (day.Shortfall is { } shortfall ? cell.Append("<p>Short: ").Append(Text(shortfall.ToString())).Append("</p>") : cell).Append("</td>").ToString();
    }

    private static string Text(string text) => WebUtility.HtmlEncode(text);
}

using System.Globalization;
using Warmup.Plans;

namespace Warmup.Web;

/// <summary>The months of a plan as tables, with a link to open each day of singing; on a narrow screen a list of days.</summary>
/// <param name="Model">What the page shows.</param>
/// <param name="Made">The plan.</param>
/// <param name="Texts">The page's words.</param>
internal sealed record PlanMonths(PlanModel Model, PlanResult Made, Texts Texts)
{
    private const int DaysAWeek = 7;

    private PageState State => Model.State;

    public Html Write() => Html.Of(
        $"""
        <p class="about">{Texts.PlanOf(Made.Plan.Tonic.ToString(), Made.Plan.LevelName, Made.Plan.Minutes)}</p>
        {Made.Plan.Days.GroupBy(d => (d.Date.Year, d.Date.Month)).Select(m => Month([.. m]))}
        <p class="row" data-needs-script hidden><span id="sung-count" data-count="{Texts.SungCount}"></span> <button type="button" id="sung-file">{Texts.SungFile}</button> <span class="help">{Texts.SungKept}</span></p>
        <p class="row"><button form="choices" formaction="/plan.html" formmethod="post">{Texts.PlanPage}</button> <button form="choices" formaction="/plan.json" formmethod="post">{Texts.PlanFile}</button></p>
        """);

    /// <summary>What the plan leaves out, and the cautions.</summary>
    public Html About() => Html.Of(
        $"""
        {LeftOut()}
        <h3>{Texts.Cautions}</h3><ul class="cautions">{Made.Cautions.Select(c => Html.Of($"<li>{c.Text} <small>({c.Source})</small></li>"))}</ul>
        """);

    private Html Month(List<PlanDay> days)
    {
        var first = new DateOnly(days[0].Date.Year, days[0].Date.Month, 1);
        var before = ((int)first.DayOfWeek + DaysAWeek - 1) % DaysAWeek;
        var cells = Enumerable.Repeat(Html.Of($"<td></td>"), before)
            .Concat(Enumerable.Range(0, DateTime.DaysInMonth(first.Year, first.Month)).Select(n => first.AddDays(n)).Select(date => Cell(date, days.Find(d => d.Date == date))));
        return Html.Of(
            $"""
            <table class="month" data-mark="{Texts.SungMark}" data-ticked="{Texts.TickedMark}" data-other="{Texts.OtherMark}"><caption>{Texts.MonthOf(first)}</caption>
            <thead><tr>{Texts.Weekdays.Select(name => Html.Of($"""<th scope="col">{name}</th>"""))}</tr></thead>
            <tbody>{cells.Chunk(DaysAWeek).Select(week => Html.Of($"<tr>{week.Concat(Enumerable.Repeat(Html.Of($"<td></td>"), DaysAWeek - week.Length))}</tr>"))}</tbody></table>
            """);
    }

    private Html Cell(DateOnly date, PlanDay? day)
    {
        var number = date.Day;
        var weekday = Html.Of($"""<span class="weekday">{Texts.Weekdays[((int)date.DayOfWeek + DaysAWeek - 1) % DaysAWeek]} </span>""");
        if (day is null)
        {
            return Html.Of($"""<td class="outside">{number}</td>""");
        }

        if (day.IsRest)
        {
            return Html.Of($"<td>{weekday}<b>{number}</b> <span>{Texts.RestDay}</span></td>");
        }

        var opened = day.Date == Model.Day?.Date ? Html.Of($""" aria-current="date" """) : default;
        return Html.Of(
            $"""
            <td class="singing" data-date="{PlanQuery.ToText(date)}" data-log="{PlanDayPart.Log(day)}">{weekday}<a class="apply"{opened} href="{PlanDayPart.Address(State, date)}"><b>{number}</b> {day.Scale!.Name}</a> <span class="time">{PlanDayPart.Time(day)}{(day.Shortfall is null ? string.Empty : $" ({Texts.Short})")}</span>
            <ol class="drills">{day.Drills.Select(d => Html.Of($"<li>{Texts.PlannedOf(d.Drill.Title.Split(':')[0], d.Tempo, d.Times)}</li>"))}</ol></td>
            """);
    }

    private Html LeftOut()
    {
        var octaves = Enumerable.Range(0, Model.Singers.Count).GroupBy(s => Made.Octaves[s]).Where(g => g.Key != 0).OrderBy(g => g.Key)
            .Select(g => $"{Texts.OctavesOf(g.Key)}: {string.Join(", ", g.Select(s => Model.Singers[s].Alias))}");
        var reached = Enumerable.Range(0, Model.Singers.Count).Where(s => Made.Reached[s] is not null)
            .Select(s => string.Create(CultureInfo.InvariantCulture, $"{Model.Singers[s].Alias}: {Texts.TickedMark}, {Made.Reached[s]}"));
        var retried = Made.Again.Select(e => Texts.RetryOf(e.ScaleName, e.ExerciseName, LineNumbers.ToText(e.OffLines)));
        var lines = retried.Concat(octaves).Concat(reached).Concat(Made.Limits).Concat(Made.LeftOut).ToList();
        return lines.Count == 0 ? default : Html.Of($"<details><summary>{Texts.PlanAbout}</summary><ul>{lines.Select(l => Html.Of($"<li>{l}</li>"))}</ul></details>");
    }
}

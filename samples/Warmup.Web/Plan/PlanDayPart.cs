using System.Globalization;
using Warmup.Plans;

namespace Warmup.Web;

/// <summary>A day of a plan, opened: its drills, its files, and whether it was sung.</summary>
/// <param name="State">What was chosen.</param>
/// <param name="Made">The plan.</param>
/// <param name="Day">The day.</param>
/// <param name="Texts">The page's words.</param>
internal sealed record PlanDayPart(PageState State, PlanResult Made, PlanDay Day, Texts Texts)
{
    private const int MostLines = 12;

    private WarmupPlan Plan => Made.Plan;

    /// <summary>What the log says once the day was sung, without the tick: a line for each drill.</summary>
    public static string Log(PlanDay day) => string.Join('\n', day.Drills.Select(d => new LogEntry
    {
        Date = day.Date, ScaleName = d.Drill.Scale.Name, ExerciseName = d.Drill.ExerciseName, Tempo = d.Tempo,
    }).Select(e => e.ToString()[..^2]));

    /// <summary>How long the warm-up lasts, in minutes and seconds.</summary>
    public static string Time(PlanDay day) => day.Duration.ToString("m\\:ss", CultureInfo.InvariantCulture);

    /// <summary>The page's address with a day opened, at that day.</summary>
    public static string Address(PageState state, DateOnly date) => state.Address(("day", PlanQuery.ToText(date))) + "#day";

    public Html Write() => Html.Of(
        $"""
        <h3 id="day-heading" tabindex="-1">{Texts.DateOf(Day.Date)}{(Day.IsRest ? string.Empty : $": {Day.Scale!.Name}")}</h3>
        <p class="row around">{Around(Plan.Days.LastOrDefault(d => d.Date < Day.Date && !d.IsRest), Texts.EarlierDay)} {Around(Plan.Days.FirstOrDefault(d => d.Date > Day.Date && !d.IsRest), Texts.LaterDay)}</p>
        {(Day.IsRest ? Html.Of($"<p>{Texts.NothingThatDay}</p>") : Singing())}
        """);

    private Html Singing() => Html.Of(
        $"""
        <p>{Texts.LengthOf(Time(Day), Plan.Minutes)}</p>
        {(Day.Shortfall is { } shortfall ? Html.Of($"<p>{Texts.Short}: {shortfall.ToString()}</p>") : default)}
        <p class="row" data-needs-script hidden><label class="radio"><input type="checkbox" id="sung" data-date="{PlanQuery.ToText(Day.Date)}" data-log="{Log(Day)}" autocomplete="off"> {Texts.Sung}</label>
        <label class="radio"><input type="checkbox" id="ticked" autocomplete="off"> {Texts.Ticked}</label></p>
        <noscript><p class="help">{Texts.SungNeedsScript}</p></noscript>
        <h4>{Texts.DayFiles}</h4>
        <p class="row files">{File("html", Texts.Practise, isOpened: true)}{File("pdf", Texts.Pdf)}{File("musicxml", Texts.MusicXml)}{File("mid", Texts.Midi)}{File("zip", Texts.Zip)}</p>
        <ol class="planned">{Day.Drills.Select(Drill)}</ol>
        {(Day.LeftOut.IsEmpty ? default : Html.Of($"""<p class="help">{Texts.LeftOutForTime}: {string.Join("; ", Day.LeftOut.Select(d => d.Title))}</p>"""))}
        """);

    private Html Drill(DayDrill planned)
    {
        var lines = planned.Drill.ToDrill(Plan.Tonic, Plan.Tuning, planned.Tempo, planned.Times).Expand().Lines;
        var address = DayDrillAddress.Of(Plan, Day, planned);
        return Html.Of(
            $"""
            <li><h4>{Texts.PlannedOf(planned.Drill.Title, planned.Tempo, planned.Times)}</h4>
            <ul class="lines">{lines.Take(MostLines).Select(l => Html.Of($"<li>{l.ToNotation()}</li>"))}{(lines.Count > MostLines ? Html.Of($"<li>…</li>") : default)}</ul>
            <p><a class="open" href="{address.Address()}">{Texts.OpenDrill}</a></p>
            <details><summary>{Texts.Sheet}</summary><img loading="lazy" src="{address.FileAddress("/drill.svg")}" alt="{Texts.SheetOf(planned.Drill.Title)}"></details></li>
            """);
    }

    private Html Around(PlanDay? day, string text) => day is null ? default : Html.Of($"""<a class="apply" href="{Address(State, day.Date)}">{text}</a>""");

    private static Html File(string ending, string text, bool isOpened = false) =>
        Html.Of($"""<button form="choices" formaction="/plan-day.{ending}" formmethod="post"{(isOpened ? Html.Of($""" formtarget="_blank" """) : default)}>{text}</button> """);
}

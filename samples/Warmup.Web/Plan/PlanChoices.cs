using Warmup.Plans;

namespace Warmup.Web;

/// <summary>The part of a plan's page in which it is chosen.</summary>
/// <param name="Model">What the page shows.</param>
/// <param name="Texts">The page's words.</param>
internal sealed record PlanChoices(PlanModel Model, Texts Texts)
{
    private Fields Fields => new(Model.State, Model.Errors);

    public Html Write() => Html.Of(
        $"""
        <fieldset><legend>{Texts.PlanFields}</legend>
        {Fields.Text("scales", Texts.Scales)}
        {Fields.Text("start", Texts.Start, type: "date")}
        {Fields.Text("days", Texts.Days)}
        {Fields.Text("minutes", Texts.Minutes)}
        {Fields.Choice("level", Texts.Level, [(string.Empty, Texts.LevelOfClass), .. Level.All.Select(l => (l.Name, l.Name))])}
        {Fields.More(Texts.PlanMore, ["tonic", "tuning", "tempo", "climb", "rest", "no-repeat", "least", "seed", "retry"], Html.Of($"""
        {Fields.Text("tonic", Texts.PlanTonic)}
        {Fields.Choice("tuning", Texts.Tuning, Fields.Words("equal", "just", "pythagorean"))}
        {Fields.Text("tempo", Texts.PlanTempo)}
        {Fields.Text("climb", Texts.PlanClimb)}
        {Fields.Text("rest", Texts.Rest)}
        {Fields.Text("no-repeat", Texts.Wait)}
        {Fields.Text("least", Texts.Least)}
        {Fields.Text("seed", Texts.Seed)}
        {Fields.Choice("retry", Texts.Retry, ("yes", Texts.RetryFirst), ("no", Texts.RetryInTurn))}
        """))}
        <p class="row" data-needs-script hidden><label class="radio"><input type="checkbox" id="go-on" autocomplete="off"> {Texts.GoOn}</label></p>
        <p class="field" data-needs-script hidden><label for="log-from">{Texts.LogFrom}</label><input id="log-from" type="file" accept=".log,.txt,.tsv,text/plain" autocomplete="off"></p>
        <input type="hidden" name="day" value="{Model.State["day"]}"><input type="hidden" name="log" value="">
        </fieldset>
        """);
}

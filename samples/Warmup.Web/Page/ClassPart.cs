namespace Warmup.Web;

/// <summary>The part of a page in which the class is given.</summary>
/// <param name="State">What was chosen.</param>
/// <param name="Errors">What is wrong with it.</param>
/// <param name="Texts">The page's words.</param>
internal sealed record ClassPart(PageState State, List<QueryError> Errors, Texts Texts)
{
    private Fields Fields => new(State, Errors);

    public Html Write() => Html.Of(
        $"""
        <fieldset><legend>{Texts.Class}</legend>
        {Fields.Area("class", Texts.ClassTable, 7, Html.Of($"""<span class="help" id="class-help">{Texts.ClassHelp}</span>"""))}
        <p class="help">{Texts.ClassKept}</p>
        <details class="add"><summary>{Texts.AddSinger}</summary>
        <p class="field"><label for="add-alias">{Texts.Name}</label><input id="add-alias" name="add-alias" autocomplete="off"></p>
        <p class="field"><label for="add-low">{Texts.Lowest}</label><input id="add-low" name="add-low" size="5" autocomplete="off"></p>
        <p class="field"><label for="add-high">{Texts.Highest}</label><input id="add-high" name="add-high" size="5" autocomplete="off"></p>
        <p class="field"><label for="add-seconds">{Texts.Seconds}</label><input id="add-seconds" name="add-seconds" size="5" inputmode="decimal" autocomplete="off"></p>
        <p class="field"><label for="add-experience">{Texts.Experience}</label><select id="add-experience" name="add-experience">{Enum.GetValues<Experience>().Select(e => Html.Of($"<option>{e.ToWord()}</option>"))}</select></p>
        <p><button name="add" value="1">{Texts.Add}</button></p></details>
        <p class="field" id="import" hidden><label for="file">{Texts.ClassImport}</label><input id="file" type="file" accept=".json,.csv"></p>
        <p class="row"><button formaction="/class.csv" formmethod="post">{Texts.ClassAsCsv}</button> <button formaction="/class.json" formmethod="post">{Texts.ClassAsJson}</button>
        <span id="invented" class="part"><a class="apply" href="{State.With(("class", ClassText.Invented)).WithClassInAddress().Address()}">{Texts.ClassInvented}</a></span></p>
        </fieldset>
        """);
}

using System.Globalization;

namespace Warmup.Web;

/// <summary>The parts of the page in which the drill is chosen.</summary>
internal sealed record ChoiceParts(PageModel Model, Texts Texts)
{
    private const int MostShown = 24;

    private Fields Fields => new(Model);

    private PageState State => Model.State;

    public Html Class() => Html.Of(
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
        <p class="row"><button formaction="/class.csv">{Texts.ClassAsCsv}</button> <button formaction="/class.json">{Texts.ClassAsJson}</button>
        <a class="apply" href="{State.With(("class", ClassText.Invented)).WithClassInAddress().Address()}">{Texts.ClassInvented}</a></p>
        </fieldset>
        """);

    public Html Scale() => Html.Of(
        $"""
        <fieldset><legend>{Texts.Scale}</legend>
        {Fields.Text("scale", Texts.ScaleText)}
        <div id="scale-now" class="part">{ScaleNow()}</div>
        <p class="field"><label for="find">{Texts.Find}</label><input id="find" name="find" type="search" value="{State["find"]}" autocomplete="off" spellcheck="false" placeholder="{Texts.FindHelp}"></p>
        <p class="row"><label class="radio"><input type="checkbox" name="without-p" value="1"{(State["without-p"].Length > 0 ? Html.Of($" checked") : default)}> {Texts.WithoutP}</label> <button>{Texts.Search}</button></p>
        <div id="scales" class="part">{Found()}</div>
        </fieldset>
        """);

    public Html Drill() => Html.Of(
        $"""
        <fieldset><legend>{Texts.Drill}</legend>
        <p class="row">{Fields.Radio("from", "exercise", Texts.FromExercise)} {Fields.Radio("from", "written", Texts.FromWritten)} {Fields.Radio("from", "words", Texts.FromWords)}</p>
        <p class="field"><label for="exercise">{Texts.Exercise}</label><select id="exercise" name="exercise">{Exercises()}</select></p>
        {Fields.Area("written", Texts.Written, 3)}
        {Fields.Text("pattern", Texts.Words)}
        <details><summary>{Texts.WordList}</summary><dl>{PatternLanguage.Standard.Words.Select(w => Html.Of($"<dt><code>{w.Form}</code></dt><dd>{w.Meaning}</dd>"))}</dl></details>
        {Fields.Text("lines", Texts.Lines)}
        </fieldset>
        """);

    public Html Voice() => Html.Of(
        $"""
        <fieldset><legend>{Texts.Voice}</legend>
        {Fields.Text("tonic", Texts.Tonic)}
        <div id="tonics" class="part">{Tonics()}</div>
        {Fields.Choice("syllables", Texts.Syllables, [(string.Empty, Texts.Usual), .. Syllables.All.Select(s => (s.Name, s.Name))])}
        {Fields.Choice("tuning", Texts.Tuning, ("equal", "equal"), ("just", "just"), ("pythagorean", "pythagorean"))}
        </fieldset>
        """);

    public Html Time() => Html.Of(
        $"""
        <fieldset><legend>{Texts.Time}</legend>
        {Fields.Text("tempo", Texts.Tempo)}
        {Fields.Text("tala", Texts.Tala, "talas")}
        <datalist id="talas">{Meter.Talas.Concat(Meter.Chapus).Select(m => Html.Of($"""<option value="{m.Name}">"""))}<option value="4/4"><option value="3/4"><option value="6/8"><option value="free"></datalist>
        {Fields.Text("speeds", Texts.Speeds)}
        {Fields.Choice("gati", Texts.Gati, [(string.Empty, Texts.Usual), .. Enum.GetValues<Jati>().Select(j => (Anga.Laghu(j).Aksharas.ToString(CultureInfo.InvariantCulture), j.ToString().ToLowerInvariant()))])}
        {Fields.Choice("delivery", Texts.Delivery, ("continuous", Texts.Continuous), ("line-by-line", Texts.LineByLine))}
        {Fields.Choice("fill", Texts.Fill, (string.Empty, Texts.Usual), ("none", "none"), ("anga", "anga"), ("avartana", "avartana"))}
        {Fields.Choice("fill-by", Texts.FillBy, (string.Empty, Texts.Usual), ("room", "room"), ("hold", "hold"), ("rest", "rest"))}
        {Fields.Text("breath", Texts.Breath)}
        {Fields.Text("breaths", Texts.Breaths)}
        </fieldset>
        """);

    private Html ScaleNow()
    {
        if (Model.Scale is not { } scale)
        {
            return default;
        }

        var shifts = Catalogue.Default.ShiftsOf(scale).Where(s => !s.Matches.IsEmpty).ToList();
        return Html.Of(
            $"""
            <p class="notes">{scale.Name}: {Texts.Ascent} {string.Join(' ', scale.Ascent)}; {Texts.Descent} {string.Join(' ', scale.Descent)}</p>
            <details><summary>{Texts.Neighbours}</summary>{List(ScaleSearch.Neighbours(scale))}</details>
            {(shifts.Count == 0 ? default : Html.Of($"<details><summary>{Texts.Shifts}</summary><ul>{shifts.Select(s => Html.Of($"<li>{s.Home.ToString()}: {s.Matches.Take(4).Select(Row)}</li>"))}</ul></details>"))}
            """);
    }

    private Html Found() => State["find"].Length == 0 && State["without-p"].Length == 0 ? default : List(ScaleSearch.Of(State));

    private Html List(ValueList<CatalogueEntry> entries) => entries.IsEmpty
        ? Html.Of($"<p>{Texts.NothingFound}</p>")
        : Html.Of($"""<ul class="choices">{entries.Take(MostShown).Select(e => Html.Of($"<li>{Row(e)}</li>"))}</ul>{(entries.Count > MostShown ? Html.Of($"""<p class="help">{Texts.More(MostShown, entries.Count)}</p>""") : default)}""");

    private Html Row(CatalogueEntry entry) => Html.Of($"{Fields.Link(entry.Scale.Name, ("scale", entry.Scale.Name))} <span>{string.Join(' ', entry.Scale.Ascent)}</span> ");

    private Html Exercises()
    {
        var groups = Repertoire.Traditional.Concat(Repertoire.Choir).Concat(Repertoire.Voice).GroupBy(e => e.Group);
        var known = Repertoire.Traditional.Select(e => e.Title).ToHashSet();
        return Html.Of(
            $"""{groups.Select(g => Group(Texts.Groups.GetValueOrDefault(g.Key, g.Key), g))}{Group(Texts.OtherTalas, Repertoire.Alankaras.Where(e => !known.Contains(e.Title)))}""");
    }

    private Html Group(string label, IEnumerable<Exercise> exercises) =>
        Html.Of($"""<optgroup label="{label}">{exercises.Select(e => Fields.Option("exercise", e.Name, e.Title))}</optgroup>""");

    private Html Tonics() => Model.Tonics.IsEmpty
        ? Html.Of($"""<p class="help">{Texts.TonicsNeedClass}</p>""")
        : Html.Of($"""<p class="help">{Texts.Tonics}</p><ol>{Model.Tonics.Take(4).Select(Tonic)}</ol>""");

    private Html Tonic(TonicFit fit)
    {
        var written = WrittenTonic.Of(fit.Octaves.ConvertAll(o => o.Midi)).Midi;
        var name = fit.Octaves.FirstOrDefault(o => o.Midi == written, fit.Tonic).ToString();
        return Html.Of($"<li>{Fields.Link(name, ("tonic", name))} {fit.Explain()}</li>");
    }
}

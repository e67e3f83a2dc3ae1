using System.Globalization;

namespace Warmup.Web;

/// <summary>The parts of the page in which the drill is chosen.</summary>
internal sealed record ChoiceParts(PageModel Model, Texts Texts)
{
    private const int MostShown = 24;

    private Fields Fields => new(Model.State, Model.Errors);

    private PageState State => Model.State;

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
        <p class="field"><label for="music">{Texts.ReadFrom}</label><input id="music" name="music" type="file" accept=".musicxml,.xml,.mxl,.mid,.midi,.txt" data-most="{Guard.MostFileBytes}" data-large="{Texts.FileTooLarge}"></p>
        <details><summary>{Texts.ReadKnown}</summary>
        <p class="field"><label for="read-scale">{Texts.ReadScale}</label><input id="read-scale" name="read-scale" autocomplete="off" spellcheck="false"></p>
        <p class="field"><label for="read-tonic">{Texts.ReadTonic}</label><input id="read-tonic" name="read-tonic" autocomplete="off" spellcheck="false"></p></details>
        <p class="row"><button id="read-file" formaction="/read" formmethod="post" formenctype="multipart/form-data">{Texts.ReadFile}</button></p>
        {Fields.Text("lines", Texts.Lines)}
        {Fields.Text("title", Texts.DrillTitle)}
        </fieldset>
        """);

    public Html Voice() => Html.Of(
        $"""
        <fieldset><legend>{Texts.Voice}</legend>
        {Fields.Text("tonic", Texts.Tonic)}
        <div id="tonics" class="part">{Tonics()}</div>
        {Fields.Choice("syllables", Texts.Syllables, [(string.Empty, Texts.Usual), .. Syllables.All.Select(s => (s.Name, s.Name))])}
        {Fields.Choice("tuning", Texts.Tuning, Fields.Words("equal", "just", "pythagorean"))}
        {Fields.More(Texts.DroneAndClimb, ["drone", "drone-string", "climb", "cue"], Html.Of($"""
        {Fields.Choice("drone", Texts.Drone, [(string.Empty, Texts.Usual), .. DroneQuery.Styles.Select(s => (s.Word, s.Word))])}
        {Fields.Text("drone-string", Texts.DroneString)}
        {Fields.Text("climb", Texts.Climb)}
        {Fields.Choice("cue", Texts.Cue, [(string.Empty, Texts.Usual), .. ClimbQuery.Cues.Select(c => (c.Word, Texts.CueOf(c.Word)))])}
        """))}
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
        {Fields.More(Texts.FillAndRepeats, ["fill", "fill-by", "breath", "breaths", "repeat", "count-in", "eduppu"], Html.Of($"""
        {Fields.Choice("fill", Texts.Fill, [(string.Empty, Texts.Usual), .. Fields.Words("none", "anga", "avartana")])}
        {Fields.Choice("fill-by", Texts.FillBy, [(string.Empty, Texts.Usual), .. Fields.Words("room", "hold", "rest")])}
        {Fields.Text("breath", Texts.Breath)}
        {Fields.Text("breaths", Texts.Breaths)}
        {Fields.Text("repeat", Texts.Repeat)}
        {Fields.Text("count-in", Texts.CountIn)}
        {Fields.Choice("eduppu", Texts.Eduppu, [(string.Empty, Texts.OnTheBeat), .. TimeQuery.EduppuWords.Skip(1).Select(e => (e.Word, e.Word))])}
        """))}
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

namespace Warmup.Web;

/// <summary>Fields of the page's form.</summary>
/// <param name="State">What was chosen.</param>
/// <param name="Errors">What is wrong with it.</param>
internal sealed record Fields(PageState State, List<QueryError> Errors)
{
    public Html Text(string name, string label, string? list = null, string type = "text") => Html.Of(
        $"""<p class="field"><label for="{name}">{label}</label><input id="{name}" name="{name}" type="{type}" value="{State[name]}" autocomplete="off" spellcheck="false"{List(list)}{Wrong(name)}></p>""");

    public Html Area(string name, string label, int rows, Html? help = null) => Html.Of(
        $"""<p class="field"><label for="{name}">{label}</label>{help ?? default}<textarea id="{name}" name="{name}" rows="{rows}" autocomplete="off" spellcheck="false"{Wrong(name)}>{"\n" + State[name]}</textarea></p>""");

    public Html Choice(string name, string label, params IEnumerable<(string Value, string Text)> choices) =>
        Html.Of($"""<p class="field"><label for="{name}">{label}</label><select id="{name}" name="{name}"{Wrong(name)}>{choices.Select(c => Option(name, c.Value, c.Text))}</select></p>""");

    /// <summary>Fields that are seldom needed, open where one of them says something or is wrong.</summary>
    public Html More(string summary, ValueList<string> names, Html fields)
    {
        var isOpen = names.Any(n => !State.IsUsual(n) || Errors.Exists(e => e.Parameter == n));
        return Html.Of($"""<details class="more"{(isOpen ? Html.Of($" open") : default)}><summary>{summary}</summary>{fields}</details>""");
    }

    /// <summary>Choices that are called as they are written.</summary>
    public static IEnumerable<(string Value, string Text)> Words(params IEnumerable<string> words) => words.Select(w => (w, w));

    public Html Option(string name, string value, string text) => State[name] == value
        ? Html.Of($"""<option value="{value}" selected>{text}</option>""")
        : Html.Of($"""<option value="{value}">{text}</option>""");

    public Html Radio(string name, string value, string label) => Html.Of(
        $"""<label class="radio"><input type="radio" name="{name}" value="{value}"{(State[name] == value ? Html.Of($" checked") : default)}> {label}</label>""");

    /// <summary>A link that changes the page's state.</summary>
    public Html Link(string text, params IEnumerable<(string Name, string Value)> changes) =>
        Html.Of($"""<a class="apply" href="{State.Address(changes)}">{text}</a>""");

    private static Html List(string? list) => list is null ? default : Html.Of($""" list="{list}" """);

    private Html Wrong(string name) => Errors.Exists(e => e.Parameter == name) ? Html.Of($""" aria-invalid="true" aria-describedby="wrong" """) : default;
}

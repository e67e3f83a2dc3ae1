namespace Warmup.Web;

/// <summary>What all pages have: the head, the way from one to the next, what is chosen on one side and what comes of it on the other.</summary>
/// <param name="Texts">The words.</param>
/// <param name="Form">The page's form.</param>
/// <param name="Heading">What the page is for, in a few words.</param>
/// <param name="Intro">The same in a sentence.</param>
internal sealed record PageFrame(Texts Texts, PageForm Form, string Heading, string Intro)
{
    /// <summary>The page's own script beside the common one, and its own style, if it has them.</summary>
    public ValueList<string> Scripts { get; init; } = [];

    /// <summary>Styles beside the common one.</summary>
    public ValueList<string> Styles { get; init; } = [];

    /// <summary>Whether a quick answer comes first and what is searched for after it.</summary>
    public bool HasQuickAnswer { get; init; }

    /// <summary>The whole page.</summary>
    /// <param name="choices">The fields.</param>
    /// <param name="show">What the button says.</param>
    /// <param name="result">What comes of the choices is called.</param>
    /// <param name="address">The page's address.</param>
    /// <param name="preview">What comes of them.</param>
    public Html Write(Html choices, string show, string result, string address, Html preview) => Html.Of(
        $"""
        <!doctype html>
        <html lang="{Texts.Language}"><head><meta charset="utf-8"><title>Warmup: {Heading}</title>
        <meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">
        <link rel="icon" href="/icon.svg"><link rel="stylesheet" href="/page.css">{Styles.Select(s => Html.Of($"""<link rel="stylesheet" href="{s}">"""))}<script src="/page.js" defer></script>{Scripts.Select(s => Html.Of($"""<script src="{s}" defer></script>"""))}</head>
        <body>
        <a class="skip" href="#preview">{Texts.ToPreview}</a>
        <header><nav aria-label="{Texts.Pages}"><ul>{Link(PageForm.Drill, Texts.Heading)}{Link(PageForm.Plan, Texts.PlanHeading)}</ul></nav><h1>{Heading}</h1><p>{Intro}</p></header>
        <main>
        <form method="get" action="{Form.Path}" id="choices" autocomplete="off"{(HasQuickAnswer ? Html.Of($" data-quick=\"1\"") : default)}>
        {choices}
        <p class="row"><button class="main">{show}</button></p>
        </form>
        <section id="preview-side" aria-labelledby="preview-heading"><h2 id="preview-heading">{result}</h2>
        <p id="status" role="status" data-problem="{Texts.NoAnswer}"></p><div id="preview" tabindex="-1" data-address="{address}">{preview}</div></section>
        </main>
        </body></html>
        """);

    private Html Link(PageForm page, string name) => Html.Of($"""<li><a href="{page.Path}"{(page == Form ? Html.Of($" aria-current=\"page\"") : default)}>{name}</a></li>""");
}

namespace Warmup.Web;

/// <summary>The whole page.</summary>
internal static class PageView
{
    public static Html Write(PageModel model, Texts texts)
    {
        var parts = new ChoiceParts(model, texts);
        return Html.Of(
            $"""
            <!doctype html>
            <html lang="{texts.Language}"><head><meta charset="utf-8"><title>{texts.Title}</title>
            <meta name="viewport" content="width=device-width, initial-scale=1"><meta name="referrer" content="no-referrer"><meta name="color-scheme" content="light dark">
            <link rel="icon" href="/icon.svg"><link rel="stylesheet" href="/page.css"><script src="/page.js" defer></script></head>
            <body>
            <a class="skip" href="#preview">{texts.ToPreview}</a>
            <header><h1>{texts.Heading}</h1><p>{texts.Intro}</p></header>
            <main>
            <form method="get" action="/" id="choices" autocomplete="off">
            {parts.Class()}{parts.Scale()}{parts.Drill()}{parts.Voice()}{parts.Time()}
            <p class="row"><button class="main">{texts.Show}</button></p>
            </form>
            <section id="preview-side" aria-labelledby="preview-heading"><h2 id="preview-heading">{texts.Preview}</h2>
            <p id="status" role="status" data-problem="{texts.NoAnswer}"></p><div id="preview" tabindex="-1" data-address="{model.State.Address()}">{new PreviewPart(model, texts).Write()}</div></section>
            </main>
            </body></html>
            """);
    }
}

namespace Warmup.Web;

/// <summary>The whole page on which drills are made.</summary>
internal static class PageView
{
    public static Html Write(PageModel model, Texts texts, Html read = default)
    {
        var parts = new ChoiceParts(model, texts);
        return new PageFrame(texts, PageForm.Drill, texts.Heading, texts.Intro) { HasQuickAnswer = true, Scripts = ["/read.js", "/recorder.js", "/listen.js"], Styles = ["/take.css"] }.Write(
            Html.Of($"{new ClassPart(model.State, model.Errors, texts).Write()}{parts.Scale()}{parts.Drill()}{parts.Voice()}{parts.Time()}"),
            texts.Show,
            texts.Preview,
            model.State.Address(),
            Html.Of($"""<div id="read">{read}</div>{new PreviewPart(model, texts).Write()}"""));
    }
}

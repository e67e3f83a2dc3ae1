namespace Warmup.Web;

/// <summary>The whole page on which drills are made.</summary>
internal static class PageView
{
    public static Html Write(PageModel model, Texts texts)
    {
        var parts = new ChoiceParts(model, texts);
        return new PageFrame(texts, PageForm.Drill, texts.Heading, texts.Intro) { HasQuickAnswer = true }.Write(
            Html.Of($"{new ClassPart(model.State, model.Errors, texts).Write()}{parts.Scale()}{parts.Drill()}{parts.Voice()}{parts.Time()}"),
            texts.Show,
            texts.Preview,
            model.State.Address(),
            new PreviewPart(model, texts).Write());
    }
}

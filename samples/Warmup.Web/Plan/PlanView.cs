namespace Warmup.Web;

/// <summary>The whole page of a plan.</summary>
internal static class PlanView
{
    public static Html Write(PlanModel model, Texts texts) =>
        new PageFrame(texts, PageForm.Plan, texts.PlanHeading, texts.PlanIntro) { Scripts = ["/plan.js"] }.Write(
            Html.Of($"{new ClassPart(model.State, model.Errors, texts).Write()}{new PlanChoices(model, texts).Write()}"),
            texts.PlanShow,
            texts.PlanResult,
            model.State.Address(),
            Html.Of(
                $"""
                <div id="said" class="part">{new PlanSaid(model, texts).Write()}</div>
                <div id="plan" class="part">{(model.Made is { } made ? new PlanMonths(model, made, texts).Write() : default)}</div>
                <div id="day" class="part">{(model is { Made: { } plan, Day: { } day } ? new PlanDayPart(model.State, plan, day, texts).Write() : default)}</div>
                <div id="about" class="part">{(model.Made is { } about ? new PlanMonths(model, about, texts).About() : default)}</div>
                """));
}

namespace Warmup.Web;

/// <summary>What is wrong with a plan that was asked for, or missing.</summary>
/// <param name="Model">What the page shows.</param>
/// <param name="Texts">The page's words.</param>
internal sealed record PlanSaid(PlanModel Model, Texts Texts)
{
    public Html Write() => Model.Errors.Count > 0
        ? Html.Of($"""<div id="wrong" role="alert" class="wrong"><p>{Texts.NoPlanYet}</p><ul>{Model.Errors.Select(e => Html.Of($"<li><strong>{Texts.FieldOf(e.Parameter)}</strong>: {e.Message}</li>"))}</ul></div>""")
        : Model is { Impossible: { } impossible, Request: { } request }
        ? Html.Of(
            $"""
            <div role="alert" class="wrong"><p>{Texts.NoPlanPossible}</p><p>{impossible.Message}</p></div>
            {(impossible.Change is { } change && PlanQuery.Changes(request, change.Request) is { } changes
                ? Html.Of($"""<p class="row">{Texts.PlanWith} {new Fields(Model.State, Model.Errors).Link(change.Text, changes)}</p>""")
                : default)}
            """)
        : Model.Request is null ? Html.Of($"""<p class="help">{Texts.PlanNeeds}</p>""") : default;
}

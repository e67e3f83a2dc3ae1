using Warmup.Plans;

namespace Warmup.Web;

/// <summary>All that the page of a plan shows, made from what was chosen.</summary>
/// <param name="State">What was chosen.</param>
/// <param name="Errors">What is wrong with it.</param>
/// <param name="Singers">The class.</param>
/// <param name="Request">What the plan must be like; nothing where something is wrong or missing.</param>
/// <param name="Made">The plan; nothing where there is none.</param>
/// <param name="Impossible">Why there is no plan, and one change with which there is one.</param>
internal sealed record PlanModel(PageState State, List<QueryError> Errors, ValueList<Singer> Singers, PlanRequest? Request, PlanResult? Made, PlanImpossibleException? Impossible)
{
    /// <summary>The day that is opened; nothing where none is, or the plan does not reach it.</summary>
    public PlanDay? Day => Made is { } made && PlanQuery.OpenedDay(State) is { } date ? made.Plan.Days.FirstOrDefault(d => d.Date == date) : null;

    /// <summary>Makes everything.</summary>
    /// <param name="state">What was chosen.</param>
    /// <param name="limits">What is allowed.</param>
    /// <param name="errors">What is wrong already.</param>
    /// <param name="stop">Stops the work.</param>
    public static PlanModel Of(PageState state, Limits limits, List<QueryError> errors, CancellationToken stop)
    {
        var singers = ClassText.Read(state["class"], limits, errors);
        if (state["class"].TrimStart().StartsWith('{') && !singers.IsEmpty)
        {
            state = state.With(("class", ClassText.ToTable(singers)));
        }

        var plain = new PlanModel(state, errors, singers, PlanQuery.Read(state, singers, limits, errors), null, null);
        if (plain.Request is null)
        {
            return plain;
        }

        try
        {
            return plain with { Made = WarmupPlan.Make(plain.Request, stop) };
        }
        catch (PlanImpossibleException impossible)
        {
            return plain with { Impossible = impossible };
        }
    }
}

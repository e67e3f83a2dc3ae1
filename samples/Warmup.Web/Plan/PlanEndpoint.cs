using System.Text;
using Microsoft.Extensions.Primitives;
using Warmup.Plans;

namespace Warmup.Web;

/// <summary>Answers with the page of a plan, and with its files. A plan is made anew for each answer: nothing of it is kept.</summary>
internal static class PlanEndpoint
{
    // Sound of a whole warm-up is longer than an answer may be, and a picture of all its sheets is the PDF's.
    private static readonly ValueList<string> DayEndings = DrillFormats.All.Offers.Select(o => o.Ending).Where(e => e is not ("svg" or "wav")).ToValueList();

    /// <summary>The page of an address.</summary>
    public static IResult Get(HttpContext context, Limits limits) => Answer(context, context.Request.Query, isInAddress: true, limits);

    /// <summary>The page of a form, which is how the script sends it, so that the class is in no address.</summary>
    public static async Task<IResult> Post(HttpContext context, Limits limits) =>
        await PageEndpoint.Form(context) is { } form ? Answer(context, form, isInAddress: false, limits) : PageEndpoint.NoForm();

    /// <summary>The plan as a file: for the program, or the months as a page of its own.</summary>
    public static async Task<IResult> File(string ending, HttpContext context, Limits limits)
    {
        if (await PageEndpoint.Form(context) is not { } form)
        {
            return PageEndpoint.NoForm();
        }

        if (!TryMake(context, form, limits, out var model, out var problem))
        {
            return problem;
        }

        using var bytes = new MemoryStream();
        if (ending == "json")
        {
            PlanFile.Write(model.Made!.Plan, bytes);
            return Results.Bytes(bytes.ToArray(), "application/json", "plan.json");
        }

        MonthPage.Of(model.Made!.Plan).First().Write(bytes);
        return Results.Bytes(bytes.ToArray(), "text/html; charset=utf-8", "plan.html");
    }

    /// <summary>The warm-up of the opened day as a file.</summary>
    public static async Task<IResult> Day(string ending, HttpContext context, DrillFormats formats, Limits limits)
    {
        if (await PageEndpoint.Form(context) is not { } form)
        {
            return PageEndpoint.NoForm();
        }

        if (!DayEndings.Contains(ending) || formats.ByEnding(ending) is not { } offer)
        {
            return DrillEndpoint.Problem(404, "There is no such format", $"the endings are {string.Join(", ", DayEndings)}");
        }

        if (!TryMake(context, form, limits, out var model, out var problem))
        {
            return problem;
        }

        if (model.Day is not { IsRest: false } day)
        {
            return DrillEndpoint.Problem(400, "Nothing is sung on that day", "open a day of the plan that is no day of rest");
        }

        using var bytes = new MemoryStream();
        try
        {
            offer.Format.Write(model.Made!.Plan.ToScore(day, cancellationToken: context.RequestAborted), bytes, context.RequestAborted);
        }
        catch (ExportException refused)
        {
            return DrillEndpoint.Problem(400, "There is no such file", refused.Message);
        }

        return Results.Bytes(bytes.ToArray(), offer.ContentType, ending == "html" ? null : $"warm-up-{PlanQuery.ToText(day.Date)}.{ending}");
    }

    private static bool TryMake(HttpContext context, IFormCollection form, Limits limits, out PlanModel model, out IResult problem)
    {
        context.Response.Headers.CacheControl = "no-store";
        model = Model(context, form, isInAddress: false, limits);
        problem = DrillEndpoint.Problem(
            400,
            "There is no such plan",
            model.Errors.Count > 0 ? $"{model.Errors[0].Parameter}: {model.Errors[0].Message}" : model.Impossible?.Message ?? Texts.English.PlanNeeds);
        return model.Made is not null;
    }

    private static PlanModel Model(HttpContext context, IEnumerable<KeyValuePair<string, StringValues>> values, bool isInAddress, Limits limits)
    {
        var errors = new List<QueryError>();
        var typed = values.ToList();
        var state = PageState.Read(PageForm.Plan, typed, isInAddress, limits, errors);
        if (PageEndpoint.Added(typed) is { } cells)
        {
            state = state.With(("class", ClassText.WithRow(state["class"], cells)));
        }

        return PlanModel.Of(state, limits, errors, context.RequestAborted);
    }

    private static IResult Answer(HttpContext context, IEnumerable<KeyValuePair<string, StringValues>> values, bool isInAddress, Limits limits)
    {
        Guard.AddPagePolicy(context.Response);
        var model = Model(context, values, isInAddress, limits);
        return Results.Content(PlanView.Write(model, Texts.English).ToString(), "text/html; charset=utf-8", Encoding.UTF8, model.Errors.Count > 0 && isInAddress ? 400 : 200);
    }
}

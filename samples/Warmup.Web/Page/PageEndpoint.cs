using System.Reflection;
using System.Text;
using Microsoft.Extensions.Primitives;

namespace Warmup.Web;

/// <summary>Answers with the page. Nothing of what was typed is kept.</summary>
internal static class PageEndpoint
{
    /// <summary>The address's values: what was chosen, and the class where there is no script.</summary>
    public static IResult Get(HttpContext context, Limits limits) => Answer(context, context.Request.Query, isInAddress: true, limits);

    /// <summary>The same values as a form, which is how the script sends them, so that the class is in no address.</summary>
    public static async Task<IResult> Post(HttpContext context, Limits limits) =>
        await Form(context) is { } form
            ? Answer(context, form, isInAddress: false, limits)
            : NoForm();

    /// <summary>What is said of content that is no form.</summary>
    public static IResult NoForm() => DrillEndpoint.Problem(415, "The content is no form", "send application/x-www-form-urlencoded");

    /// <summary>The class as a file.</summary>
    public static async Task<IResult> Class(string ending, HttpContext context, Limits limits)
    {
        var errors = new List<QueryError>();
        IEnumerable<KeyValuePair<string, StringValues>>? values = HttpMethods.IsPost(context.Request.Method) ? await Form(context) : context.Request.Query;
        if (values is null)
        {
            return NoForm();
        }

        var state = PageState.Read(PageForm.Drill, values, isClassInAddress: true, limits, errors);
        var singers = ClassText.Read(state["class"], limits, errors);
        if (errors.Count > 0)
        {
            return DrillEndpoint.Problem(400, "The class cannot be read", errors[0].Message, ("errors", errors));
        }

        using var bytes = new MemoryStream();
        if (ending == "json")
        {
            SingersFile.Write(singers, bytes);
        }
        else
        {
            bytes.Write(Encoding.UTF8.GetBytes(ClassText.ToTable(singers)));
        }

        context.Response.Headers.CacheControl = "no-store";
        return Results.Bytes(bytes.ToArray(), ending == "json" ? "application/json" : "text/csv; charset=utf-8", $"class.{ending}");
    }

    /// <summary>A file of the page.</summary>
    public static IResult Resource(string name, string contentType)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return Results.Bytes(bytes.ToArray(), contentType);
    }

    // A form's fields are in the body, within the limit of the connection; a multipart form could be put on the disk on its way and is not taken.
    internal static async Task<IFormCollection?> Form(HttpContext context)
    {
        if (context.Request.ContentType?.StartsWith("application/x-www-form-urlencoded", StringComparison.OrdinalIgnoreCase) != true)
        {
            return null;
        }

        try
        {
            return await context.Request.ReadFormAsync(context.RequestAborted);
        }
        catch (InvalidDataException)
        {
            return null; // letters that no text has
        }
    }

    private static IResult Answer(HttpContext context, IEnumerable<KeyValuePair<string, StringValues>> values, bool isInAddress, Limits limits)
    {
        Guard.AddPagePolicy(context.Response);
        var errors = new List<QueryError>();
        var typed = values.ToList();
        var state = PageState.Read(PageForm.Drill, typed, isInAddress, limits, errors);
        if (Added(typed) is { } cells)
        {
            state = state.With(("class", ClassText.WithRow(state["class"], cells)));
        }

        // To the script the page is the answer, also where it says what is wrong.
        var model = PageModel.Of(state, limits, errors, isQuick: !isInAddress && typed.Exists(v => v.Key == "quick"), context.RequestAborted);
        return Results.Content(PageView.Write(model, Texts.English).ToString(), "text/html; charset=utf-8", Encoding.UTF8, errors.Count > 0 && isInAddress ? 400 : 200);
    }

    // The cells of a singer to add; nothing where no name was typed.
    internal static List<string>? Added(List<KeyValuePair<string, StringValues>> typed)
    {
        string Of(string name) => typed.Find(v => v.Key == name).Value is { Count: 1 } one ? one.ToString().Trim() : string.Empty;
        return Of("add-alias").Length == 0 ? null : [Of("add-alias"), Of("add-low"), Of("add-high"), Of("add-seconds"), Of("add-experience")];
    }
}

using System.Text;
using Warmup.Reading;

namespace Warmup.Web;

/// <summary>Reads a file of notation, MIDI or text that was dropped or chosen, and answers with the page and what was read. Nothing of it is kept.</summary>
internal static class ReadEndpoint
{
    public static async Task<IResult> Post(HttpContext context, Limits limits)
    {
        var stop = context.RequestAborted;
        if (await MultipartForm.Of(context.Request, stop) is not { } form)
        {
            return DrillEndpoint.Problem(415, "The content is no form with a file", "send multipart/form-data");
        }

        Guard.AddPagePolicy(context.Response);
        var errors = new List<QueryError>();
        var state = PageState.Read(PageForm.Drill, form.Values, isClassInAddress: false, limits, errors);
        var model = PageModel.Of(state, limits, errors, isQuick: true, stop);
        return Results.Content(PageView.Write(model, Texts.English, new ReadPart(model.State, Read(form, stop), limits, Texts.English).Write(stop)).ToString(), "text/html; charset=utf-8", Encoding.UTF8);
    }

    // What was read, or why nothing was.
    private static (ReadMusic? Music, string? Refusal) Read(MultipartForm form, CancellationToken stop)
    {
        if (form.File.IsEmpty)
        {
            return (null, Texts.English.NoFile);
        }

        var (scale, tonic, wrong) = ((Scale?)null, (Tonic?)null, (TextError?)null);
        if ((form["read-scale"].Trim() is { Length: > 0 } named && !Catalogue.Default.TryRead(named, out scale, out wrong))
            || (form["read-tonic"].Trim() is { Length: > 0 } sung && !Tonic.TryParse(sung, out tonic, out wrong)))
        {
            return (null, wrong!.Message);
        }

        try
        {
            return (MusicReader.Read(form.File, new ReadingOptions { Scale = scale, Tonic = tonic }, stop), null);
        }
        catch (ReadingException refused)
        {
            return (null, refused.Message);
        }
    }
}

using System.Text;
using Warmup.Takes;

namespace Warmup.Web;

/// <summary>Holds a recording against the drill of the query, and answers with the report. The recording stays in memory and is forgotten.</summary>
internal static class ListenEndpoint
{
    public static async Task<IResult> Post(HttpContext context, Limits limits)
    {
        var stop = context.RequestAborted;
        var request = context.Request;
        if (request.ContentType?.StartsWith("audio/", StringComparison.OrdinalIgnoreCase) != true)
        {
            return DrillEndpoint.Problem(415, "The content is no recording", "send audio/wav");
        }

        var errors = new List<QueryError>();
        if (DrillQuery.Read(request.Query, limits, errors) is not { } wanted)
        {
            return DrillEndpoint.Problem(400, "The query does not describe a drill", $"{errors[0].Parameter}: {errors[0].Message}", ("errors", errors));
        }

        if (!wanted.TryMake(limits, stop, out _, out var score, out var refusal))
        {
            return DrillEndpoint.Problem(400, "There is no such drill", refusal.Message, ("code", refusal.Code), ("fix", refusal.Fix));
        }

        var bytes = new MemoryStream((int)(request.ContentLength ?? 0));
        await request.Body.CopyToAsync(bytes, stop);
        bytes.Position = 0;
        try
        {
            using var sound = SoundFile.Open(bytes);
            var report = Listener.Hear(score, sound, stop);
            Guard.AddPagePolicy(context.Response);
            return Results.Content(new TakePart(score, report, Texts.English).Write().ToString(), "text/html; charset=utf-8", Encoding.UTF8);
        }
        catch (SoundException broken)
        {
            return DrillEndpoint.Problem(400, "The recording cannot be heard", broken.Message);
        }
    }
}

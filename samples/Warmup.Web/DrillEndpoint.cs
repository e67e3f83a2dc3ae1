using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;
using Warmup.Drawing;

namespace Warmup.Web;

/// <summary>Answers with a drill: reads the query, makes the drill, writes it, and keeps nothing.</summary>
internal static class DrillEndpoint
{
    /// <summary>By the path's ending: <c>/drill.mid</c>.</summary>
    public static IResult ByEnding(string ending, HttpContext context, DrillFormats formats, Limits limits) =>
        formats.ByEnding(ending) is { } offer
            ? Answer(context, offer, limits)
            : Problem(404, "There is no such format", $"the endings are {string.Join(", ", formats.Offers.Select(o => o.Ending))}");

    /// <summary>The contour of a drill over a range: <c>/contour.svg</c>, with the range's ends in <c>low</c> and <c>high</c>.</summary>
    public static IResult Contour(HttpContext context, Limits limits)
    {
        var query = context.Request.Query.ToDictionary(q => q.Key, q => q.Value);
        query.Remove("low", out var low);
        query.Remove("high", out var high);
        ContourOptions options;
        if (low.Count == 0 && high.Count == 0)
        {
            options = new ContourOptions();
        }
        else if (NoteName.TryParse(low.ToString(), out var from, out _) && NoteName.TryParse(high.ToString(), out var to, out _) && from.Midi <= to.Midi)
        {
            options = new ContourOptions { Band = new PitchBand("the range", from, to) };
        }
        else
        {
            return Problem(400, "The query does not describe a range", "low and high: must be two note names, the lower one in low");
        }

        context.Request.Query = new QueryCollection(query);
        return Answer(context, new Offer(new SvgFormat(options), "image/svg+xml", "image/svg+xml"), limits);
    }

    /// <summary>By the Accept header: <c>/drill</c>.</summary>
    public static IResult ByAccept(HttpContext context, DrillFormats formats, Limits limits)
    {
        context.Response.Headers.Vary = HeaderNames.Accept;
        return formats.ByAccept(context.Request.GetTypedHeaders().Accept) is { } offer
            ? Answer(context, offer, limits)
            : Problem(406, "None of the formats is accepted", $"the media types are {string.Join(", ", formats.Offers.Select(o => o.MediaType))}");
    }

    private static IResult Answer(HttpContext context, Offer offer, Limits limits)
    {
        using var answer = WebTelemetry.BeginDrill(offer.Ending);
        var errors = new List<QueryError>();
        if (DrillQuery.Read(context.Request.Query, limits, errors) is not { } request)
        {
            answer.Fail("query");
            return Problem(400, "The query does not describe a drill", $"{errors[0].Parameter}: {errors[0].Message}", ("errors", errors));
        }

        // The work ends with the client's connection, and with the time that a request may take.
        var stop = context.RequestAborted;
        if (!request.TryMake(limits, stop, out _, out var score, out var refusal))
        {
            return Refused(answer, refusal.Message, refusal.Fix, refusal.Code);
        }

        using var bytes = new MemoryStream();
        try
        {
            offer.Format.Write(score, bytes, stop);
        }
        catch (PatternException refused)
        {
            return Refused(answer, refused.Finding.Message, refused.Finding.Fix, refused.Finding.Code);
        }
        catch (ExportException refused)
        {
            return Refused(answer, refused.Message, "ask for another format", "format.refused");
        }

        // Equal queries give equal bytes, so the tag is made from the bytes; a cache asks again and mostly gets 304.
        var content = bytes.ToArray();
        context.Response.Headers.CacheControl = "no-cache";
        var tag = new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(content))}\"");
        return Results.Bytes(content, offer.ContentType, offer.Ending is "html" or "svg" ? null : $"drill.{offer.Ending}", entityTag: tag);
    }

    private static IResult Refused(WebTelemetry.DrillAnswer answer, string message, string fix, string code)
    {
        answer.Fail(code);
        return Problem(400, "There is no such drill", message, ("code", code), ("fix", fix));
    }

    // RFC 9457; the type is a name, not an address.
    internal static IResult Problem(int status, string title, string detail, params ReadOnlySpan<(string Name, object Value)> more)
    {
        var extensions = new Dictionary<string, object?>();
        foreach (var (name, value) in more)
        {
            extensions[name] = value;
        }

        return Results.Problem(detail, statusCode: status, title: title, extensions: extensions);
    }
}

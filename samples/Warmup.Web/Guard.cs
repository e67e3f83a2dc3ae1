using System.Net;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http.Features;

namespace Warmup.Web;

/// <summary>
/// Turns away what does not come from the page itself: names of this machine that are not its own (so that another site's name cannot be made to
/// point here), requests that another site makes, addresses without the token where one is asked for, and content where none belongs.
/// </summary>
internal static class Guard
{
    /// <summary>The largest form, in bytes; the project's own setting.</summary>
    public const int MostBytes = 200_000;

    /// <summary>The largest file that is read, in bytes: 4 MiB; the project's own setting.</summary>
    public const int MostFileBytes = 4 << 20;

    /// <summary>The longest recording, in bytes: half an hour of one channel at 48 kHz and 16 bits.</summary>
    public const int MostTakeBytes = (30 * 60 * 48_000 * 2) + 44;

    // What a form with a file has beside the file.
    private const int FormBytes = 65_536;

    /// <summary>The fewest characters of a token; the project's own setting.</summary>
    public const int ShortestToken = 16;

    private const string Cookie = "warmup-page";

    /// <summary>What is wrong with where the service is to listen, or nothing.</summary>
    public static string? Refusal(string addresses, string? token) =>
        token is { Length: < ShortestToken } ? $"--token must have at least {ShortestToken} characters"
        : token is null && addresses.Split(';').FirstOrDefault(a => !IsLoopback(BindingAddress.Parse(a).Host)) is { } other ? $"{other} can be reached from other machines: add --token with at least {ShortestToken} characters"
        : null;

    /// <summary>Answers in place of the service where a request is turned away.</summary>
    public static async Task Check(HttpContext context, RequestDelegate next, string? token)
    {
        AddHeaders(context.Response.Headers);
        var refused = token is null && !IsLoopback(context.Request.Host.Host) ? DrillEndpoint.Problem(421, "This is not that host", "ask for localhost or 127.0.0.1")
            : IsFromElsewhere(context.Request) ? DrillEndpoint.Problem(403, "Another site asked", "open the page in a window of its own")
            : HasWrongContent(context.Request) ? DrillEndpoint.Problem(413, "There is too much content, or content where none belongs", "only the page's own forms and recordings have content")
            : token is null ? null
            : Entrance(context, token);
        await (refused is null ? next(context) : refused.ExecuteAsync(context));
    }

    // The practice page is whole in one file and brings its own policy; here it only must not be framed.
    private static void AddHeaders(IHeaderDictionary headers)
    {
        headers.XContentTypeOptions = "nosniff";
        // A form that is posted says where it comes from only where the page itself may be named to itself.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.ContentSecurityPolicy = "frame-ancestors 'none'";
    }

    /// <summary>What the page itself may do: nothing from another host, no script but its own.</summary>
    public static void AddPagePolicy(HttpResponse response)
    {
        response.Headers.ContentSecurityPolicy =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; media-src blob:; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
        response.Headers.CacheControl = "no-store";
    }

    // A link that somebody follows to the page is the only thing that may come from elsewhere: it changes nothing.
    private static bool IsFromElsewhere(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var isLink = HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate" && request.Headers["Sec-Fetch-Dest"] == "document" && request.Path == "/";
        if (site is "cross-site" or "same-site" && !isLink)
        {
            return true;
        }

        var origin = request.Headers.Origin.ToString();
        return origin.Length > 0 && (!Uri.TryCreate(origin, UriKind.Absolute, out var from) || from.Authority != request.Host.Value);
    }

    private static bool HasWrongContent(HttpRequest request)
    {
        var most = request.Path.Value switch { "/read" => MostFileBytes + FormBytes, "/listen" => MostTakeBytes, _ => MostBytes };
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = most;
        }

        var hasContent = request.ContentLength is > 0 || request.Headers.TransferEncoding.Count > 0;
        return hasContent && (!HttpMethods.IsPost(request.Method) || request.ContentLength is not { } length || length > most);
    }

    // The token is in the first address only; a cookie that scripts cannot read takes its place. Programs send it as a header.
    private static IResult? Entrance(HttpContext context, string token)
    {
        var expected = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
        if (IsSame(context.Request.Cookies[Cookie] ?? string.Empty, expected) || IsSame(context.Request.Headers.Authorization.ToString(), "Bearer " + token))
        {
            return null;
        }

        if (!HttpMethods.IsGet(context.Request.Method) || !IsSame(context.Request.Query["token"].ToString(), token))
        {
            return DrillEndpoint.Problem(401, "The token is missing or wrong", "open the address that the program printed");
        }

        context.Response.Cookies.Append(Cookie, expected, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });
        var rest = QueryString.Create(context.Request.Query.Where(q => q.Key != "token").Select(q => KeyValuePair.Create(q.Key, (string?)q.Value.ToString())));
        return Results.LocalRedirect(context.Request.Path + rest);
    }

    private static bool IsSame(string given, string expected) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(expected));

    private static bool IsLoopback(string host) => host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
}

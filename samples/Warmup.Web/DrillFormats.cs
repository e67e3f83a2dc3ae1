using Microsoft.Net.Http.Headers;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;

namespace Warmup.Web;

/// <summary>A format the service answers in.</summary>
/// <param name="Format">The exporter.</param>
/// <param name="MediaType">The media type that requests name.</param>
/// <param name="ContentType">The content type of the answer.</param>
internal sealed record Offer(IScoreFormat Format, string MediaType, string ContentType)
{
    /// <summary>The ending of its files, without the dot.</summary>
    public string Ending => Format.Extensions[0][1..];
}

/// <summary>The formats, the default first.</summary>
internal sealed record DrillFormats(ValueList<Offer> Offers)
{
    public static DrillFormats All { get; } = new(
    [
        new(new HtmlFormat(), "text/html", "text/html; charset=utf-8"),
        new(new MidiFormat(), "audio/midi", "audio/midi"),
        new(new MusicXmlFormat(), "application/vnd.recordare.musicxml+xml", "application/vnd.recordare.musicxml+xml"),
        new(new PdfFormat(), "application/pdf", "application/pdf"),
        new(new SvgFormat(), "image/svg+xml", "image/svg+xml"),
        new(new SoundFormat(), "audio/wav", "audio/wav"),
        new(new TogetherFormat(), "application/zip", "application/zip"),
    ]);

    /// <summary>The format with an ending, or none.</summary>
    public Offer? ByEnding(string ending) => Offers.FirstOrDefault(o => o.Ending == ending);

    /// <summary>The format that an Accept header likes best, or none that it takes (RFC 9110, 12.5.1: the most specific range decides).</summary>
    public Offer? ByAccept(IList<MediaTypeHeaderValue> accept)
    {
        if (accept.Count == 0)
        {
            return Offers[0];
        }

        return Offers
            .Select(offer => (Offer: offer, Quality: Quality(offer, accept)))
            .Where(o => o.Quality > 0)
            .OrderByDescending(o => o.Quality) // stable: of equals the first
            .Select(o => o.Offer)
            .FirstOrDefault();
    }

    private static double Quality(Offer offer, IList<MediaTypeHeaderValue> accept)
    {
        var offered = MediaTypeHeaderValue.Parse(offer.MediaType);
        return accept
            .Where(range => range.MatchesAllTypes || (range.MatchesAllSubTypes ? range.Type == offered.Type : range.MediaType.Equals(offered.MediaType, StringComparison.OrdinalIgnoreCase)))
            .OrderByDescending(range => range.MatchesAllTypes ? 0 : range.MatchesAllSubTypes ? 1 : 2)
            .Select(range => range.Quality ?? 1)
            .FirstOrDefault();
    }
}

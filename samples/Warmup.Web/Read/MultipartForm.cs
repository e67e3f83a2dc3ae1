using System.Text;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace Warmup.Web;

/// <summary>
/// A form with a file, read in memory: the framework's own reader could put a larger file on the disk on its way, where it would lie for a while.
/// The guard has bounded the whole of it.
/// </summary>
/// <param name="Values">The fields.</param>
/// <param name="File">The file; empty where none was chosen.</param>
internal sealed record MultipartForm(IReadOnlyList<KeyValuePair<string, StringValues>> Values, ReadOnlyMemory<byte> File)
{
    private const int MostParts = 100;
    private const int LongestBoundary = 200;

    /// <summary>The form of a request, or nothing where its content is none.</summary>
    public static async Task<MultipartForm?> Of(HttpRequest request, CancellationToken stop)
    {
        if (!MediaTypeHeaderValue.TryParse(request.ContentType, out var type) || !type.MediaType.Equals("multipart/form-data", StringComparison.OrdinalIgnoreCase)
            || HeaderUtilities.RemoveQuotes(type.Boundary) is not { Length: > 0 and <= LongestBoundary } boundary)
        {
            return null;
        }

        var (values, file) = (new List<KeyValuePair<string, StringValues>>(), ReadOnlyMemory<byte>.Empty);
        try
        {
            var reader = new MultipartReader(boundary.ToString(), request.Body);
            for (var parts = 0; await reader.ReadNextSectionAsync(stop) is { } part; parts++)
            {
                if (parts == MostParts || !ContentDispositionHeaderValue.TryParse(part.ContentDisposition, out var said))
                {
                    return null;
                }

                using var bytes = new MemoryStream();
                await part.Body.CopyToAsync(bytes, stop);
                if (said.FileName.HasValue || said.FileNameStar.HasValue)
                {
                    file = bytes.ToArray();
                }
                else
                {
                    values.Add(new(HeaderUtilities.RemoveQuotes(said.Name).ToString(), Encoding.UTF8.GetString(bytes.ToArray())));
                }
            }
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException && broken is not BadHttpRequestException)
        {
            return null;
        }

        return new MultipartForm([.. values.GroupBy(v => v.Key).Select(g => KeyValuePair.Create(g.Key, new StringValues([.. g.Select(v => v.Value.ToString())])))], file);
    }

    /// <summary>A field that was given once; empty otherwise.</summary>
    public string this[string name] => Values.FirstOrDefault(v => v.Key == name).Value is { Count: 1 } one ? one.ToString() : string.Empty;
}

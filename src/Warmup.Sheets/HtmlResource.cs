using System.Security.Cryptography;
using System.Text;

namespace Warmup.Sheets;

/// <summary>The page's script or style: a file of the project that is copied into the page.</summary>
internal sealed class HtmlResource
{
    private HtmlResource(string text) => Text = text;

    /// <summary>The text, with line feeds only, as a browser counts it.</summary>
    public string Text { get; }

    /// <summary>The hash by which the page's content policy allows this text and no other.</summary>
    public string Hash => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Text)))}'";

    public static HtmlResource Script() => Read("js");

    public static HtmlResource Style() => Read("css");

    private static HtmlResource Read(string ending)
    {
        using var stream = typeof(HtmlResource).Assembly.GetManifestResourceStream($"Warmup.Sheets.HtmlPractice.{ending}")
            ?? throw new InvalidOperationException($"the library was built without HtmlPractice.{ending}");
        using var reader = new StreamReader(stream, Encoding.UTF8);

        // A checkout may have changed the line ends; the hash is that of the text that the browser reads.
        return new HtmlResource($"\n{reader.ReadToEnd().ReplaceLineEndings("\n")}");
    }
}

using System.Security.Cryptography;
using System.Text;

namespace Warmup.Sheets;

/// <summary>The page's script or style: files of the project that are copied into the page.</summary>
internal sealed class HtmlResource
{
    private static readonly ValueList<string> ScriptParts = ["score", "sound", "way", "player", "picture", "settings", "page", "recorder", "take"];

    private HtmlResource(string text) => Text = text;

    /// <summary>The text, with line feeds only, as a browser counts it.</summary>
    public string Text { get; }

    /// <summary>The hash by which the page's content policy allows this text and no other.</summary>
    public string Hash => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Text)))}'";

    /// <summary>The script: its parts in the order in which each uses those before, closed off from the rest of the page.</summary>
    public static HtmlResource Script()
    {
        var text = new StringBuilder("\"use strict\";\n(() => {\n");
        foreach (var part in ScriptParts)
        {
            text.Append(Read($"HtmlPractice.{part}.js")).Append('\n');
        }

        return new HtmlResource($"\n{text}}})();\n");
    }

    public static HtmlResource Style() => new($"\n{Read("HtmlPractice.css")}");

    private static string Read(string file)
    {
        using var stream = typeof(HtmlResource).Assembly.GetManifestResourceStream($"Warmup.Sheets.{file}")
            ?? throw new InvalidOperationException($"the library was built without {file}");
        using var reader = new StreamReader(stream, Encoding.UTF8);

        // A checkout may have changed the line ends; the hash is that of the text that the browser reads.
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}

using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace Warmup.Cli;

/// <summary>What the demo's pages have in common: they need only the files next to them, and end with the cautions.</summary>
internal static class DemoPage
{
    private const string Style =
        """

        :root { color-scheme: light dark; --paper: #fcfaf5; --raised: #f1ece1; --ink: #1f1c17; --soft: #5d574c; --rule: #a59c8b; --accent: #0a5c63; --on-accent: #ffffff; }
        @media (prefers-color-scheme: dark) {
          :root { --paper: #15171a; --raised: #22262b; --ink: #ece8df; --soft: #b3aea2; --rule: #6d6a63; --accent: #7fd6cd; --on-accent: #10201f; }
        }
        body { margin: 0 auto; padding: 1rem; max-width: 56rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, "Noto Sans", sans-serif; }
        h1 { font-size: 1.5rem; line-height: 1.2; }
        h2 { font-size: 1.15rem; margin: 0 0 .2rem; }
        p { margin: .2rem 0; }
        a { color: var(--accent); }
        section { display: grid; grid-template-columns: 15rem 1fr; gap: .2rem 1.2rem; padding: 1rem 0; border-top: 1px solid var(--rule); }
        section.plain { display: block; }
        svg { width: 100%; background: var(--raised); border-radius: .4rem; }
        .note { stroke: var(--accent); stroke-width: 4; fill: none; }
        .tonic { stroke: var(--rule); stroke-dasharray: 2 4; }
        .fits { color: var(--soft); }
        ul { display: flex; flex-wrap: wrap; gap: .2rem 1.1rem; margin: .3rem 0 0; padding: 0; list-style: none; align-items: center; }
        li a { display: inline-block; padding: .3rem 0; }
        a.first { padding: .3rem .9rem; border-radius: .4rem; background: var(--accent); color: var(--on-accent); font-weight: 700; text-decoration: none; }
        dl { margin: .2rem 0 0; }
        dt { font-weight: 600; margin-top: .4rem; }
        dd { margin: 0 0 0 1.2rem; }
        footer { margin-top: 1rem; padding-top: .5rem; border-top: 1px solid var(--rule); font-size: .85rem; }
        @media (max-width: 40rem) { section { grid-template-columns: 1fr; } svg { max-width: 18rem; } }
        @media print { a.first { background: none; color: inherit; padding: 0; } section { break-inside: avoid; } }

        """;

    /// <summary>Text of all scripts as it is, and whatever could be markup encoded.</summary>
    public static HtmlEncoder Encoder { get; } = HtmlEncoder.Create(UnicodeRanges.All);

    /// <summary>The address of a file next to the page.</summary>
    public static string Address(string file) => Encoder.Encode(Uri.EscapeDataString(file));

    /// <summary>A page.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="main">What stands between the title and the cautions, as HTML.</param>
    /// <param name="cautions">The cautions.</param>
    public static byte[] Of(string title, string main, IEnumerable<Caution> cautions)
    {
        var style = Style.ReplaceLineEndings("\n");
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append($"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-{hash}'; base-uri 'none'; form-action 'none'\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append($"<title>{Encoder.Encode(title)}</title>\n<style>{style}</style>\n</head>\n<body>\n<main>\n<h1>{Encoder.Encode(title)}</h1>\n")
            .Append(main)
            .Append("</main>\n<footer>\n");
        foreach (var caution in cautions)
        {
            page.Append($"<p>{Encoder.Encode(caution.Text)} ({Encoder.Encode(caution.Source)})</p>\n");
        }

        return Encoding.UTF8.GetBytes(page.Append("</footer>\n</body>\n</html>\n").ToString());
    }
}

using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace Warmup.Cli;

/// <summary>The page that links to all files of the demo. It needs only the files next to it.</summary>
internal static class DemoIndex
{
    public const string FileName = "index.html";

    private const string Style =
        """

        :root { color-scheme: light dark; --paper: #fcfaf5; --ink: #1f1c17; --rule: #a59c8b; --accent: #0a5c63; }
        @media (prefers-color-scheme: dark) { :root { --paper: #15171a; --ink: #ece8df; --rule: #6d6a63; --accent: #7fd6cd; } }
        body { margin: 0 auto; padding: 1rem; max-width: 46rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; }
        h1 { font-size: 1.5rem; line-height: 1.2; }
        h2 { font-size: 1.1rem; margin: 1.4rem 0 .2rem; }
        ul { display: flex; flex-wrap: wrap; gap: .1rem 1.2rem; margin: 0; padding: 0; list-style: none; }
        a { display: inline-block; padding: .3rem 0; color: var(--accent); }
        footer { margin-top: 1.5rem; border-top: 1px solid var(--rule); font-size: .85rem; }

        """;

    /// <summary>The page.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="groups">The files by what they hold: a title, and for each file its name and what it is.</param>
    public static byte[] Page(string title, IEnumerable<(string Title, IEnumerable<(string File, string What)> Files)> groups)
    {
        var encoder = HtmlEncoder.Create(UnicodeRanges.All);
        var style = Style.ReplaceLineEndings("\n");
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append($"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-{hash}'; base-uri 'none'; form-action 'none'\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append($"<title>{encoder.Encode(title)}</title>\n<style>{style}</style>\n</head>\n<body>\n<h1>{encoder.Encode(title)}</h1>\n");
        foreach (var (group, files) in groups)
        {
            page.Append($"<h2>{encoder.Encode(group)}</h2>\n<ul>\n");
            foreach (var (file, what) in files)
            {
                page.Append($"<li><a href=\"{encoder.Encode(Uri.EscapeDataString(file))}\">{encoder.Encode(what)}</a></li>\n");
            }

            page.Append("</ul>\n");
        }

        page.Append("<footer>\n");
        foreach (var caution in Cautions.All)
        {
            page.Append($"<p>{encoder.Encode(caution.Text)} ({encoder.Encode(caution.Source)})</p>\n");
        }

        return Encoding.UTF8.GetBytes(page.Append("</footer>\n</body>\n</html>\n").ToString());
    }
}

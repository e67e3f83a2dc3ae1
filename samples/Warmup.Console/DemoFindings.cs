using System.Text;

namespace Warmup.Cli;

/// <summary>How the demo's drills fit each singer, as text and as a page.</summary>
internal static class DemoFindings
{
    public const string TextName = "findings.txt";
    public const string PageName = "findings.html";

    public static byte[] Text(string title, IReadOnlyList<DemoDrill> drills)
    {
        var text = new StringBuilder();
        text.Append(title).Append('\n');
        foreach (var drill in drills)
        {
            text.Append('\n').Append(drill.Score.Title).Append('\n');
            foreach (var fit in drill.Fits)
            {
                text.Append("  ").Append(fit.Singer).Append(fit.IsFit ? ": fits\n" : ":\n");
                foreach (var (lines, what) in fit.Rows)
                {
                    text.Append("    - ").Append(lines).Append(": ").Append(what).Append('\n');
                }
            }
        }

        text.Append('\n');
        foreach (var caution in drills.SelectMany(d => d.Score.Cautions).Distinct())
        {
            text.Append("- ").Append(caution.Text).Append(" (").Append(caution.Source).Append(")\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    public static byte[] Page(string title, IReadOnlyList<DemoDrill> drills)
    {
        var main = new StringBuilder($"<p><a href=\"{DemoIndex.FileName}\">All drills</a></p>\n");
        foreach (var drill in drills)
        {
            main.Append($"<section class=\"plain\" id=\"{Encode(drill.FileName)}\">\n<h2>{Encode(drill.Score.Title)}</h2>\n<dl>\n");
            foreach (var fit in drill.Fits)
            {
                main.Append($"<dt>{Encode(fit.Singer.ToString())}</dt>\n");
                foreach (var row in fit.IsFit ? ["fits"] : fit.Rows.Select(r => $"{r.Lines}: {r.Text}"))
                {
                    main.Append($"<dd>{Encode(row)}</dd>\n");
                }
            }

            main.Append("</dl>\n</section>\n");
        }

        return DemoPage.Of(title, main.ToString(), drills.SelectMany(d => d.Score.Cautions).Distinct());
    }

    private static string Encode(string text) => DemoPage.Encoder.Encode(text);
}

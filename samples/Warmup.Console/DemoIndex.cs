using System.Text;

namespace Warmup.Cli;

/// <summary>The page that links to all files of the demo: each drill with a picture, what it trains, and whom it fits.</summary>
internal static class DemoIndex
{
    public const string FileName = "index.html";

    /// <summary>The page.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="drills">The drills.</param>
    /// <param name="more">The other files, with what each is.</param>
    public static byte[] Page(string title, IReadOnlyList<DemoDrill> drills, IEnumerable<(string File, string What)> more)
    {
        var main = new StringBuilder();
        foreach (var drill in drills)
        {
            main.Append("<section>\n").Append(DemoPicture.Of(drill.Score)).Append('\n')
                .Append($"<div><h2>{Text(drill.Score.Title)}</h2>\n<p>{Text(drill.Trains)}</p>\n<p class=\"fits\">{Fits(drill)}</p>\n<ul>\n")
                .Append($"<li><a class=\"first\" href=\"{DemoPage.Address(drill.File(".html"))}\">Practise</a></li>\n")
                .Append($"<li><a href=\"{DemoPage.Address(drill.File(".pdf"))}\">Sheet to print (PDF)</a></li>\n");
            foreach (var ending in DemoCommand.OtherEndings)
            {
                Link(main, drill.File(ending), $"{Formats.Of(ending).Name} ({ending})");
            }

            main.Append("</ul></div>\n</section>\n");
        }

        main.Append("<section class=\"plain\">\n<h2>The class</h2>\n<ul>\n");
        foreach (var (file, what) in more)
        {
            Link(main, file, what);
        }

        return DemoPage.Of(title, main.Append("</ul>\n</section>\n").ToString(), drills.SelectMany(d => d.Score.Cautions).Distinct());
    }

    private static string Fits(DemoDrill drill)
    {
        var fit = drill.Fits.Where(f => f.IsFit).Select(f => f.Singer.Alias).ToList();
        var others = drill.Fits.Where(f => !f.IsFit).Select(f => $"{f.Singer.Alias} ({f.Lines})").ToList();
        var who = fit.Count == 0 ? "Fits nobody as it stands." : $"Fits {string.Join(", ", fit)}.";
        return others.Count == 0 ? Text(who) : $"{Text($"{who} Not yet: {string.Join("; ", others)}.")} <a href=\"{DemoPage.Address(DemoFindings.PageName)}#{DemoPage.Address(drill.FileName)}\">Why</a>";
    }

    private static void Link(StringBuilder page, string file, string what) =>
        page.Append($"<li><a href=\"{DemoPage.Address(file)}\">{Text(what)}</a></li>\n");

    private static string Text(string text) => DemoPage.Encoder.Encode(text);
}

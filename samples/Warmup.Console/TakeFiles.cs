using System.Text;
using Warmup.Drawing;
using Warmup.Takes;

namespace Warmup.Cli;

/// <summary>The files in which a take's report can be written.</summary>
internal static class TakeFiles
{
    public const string Endings = ".txt .csv .html .svg .pdf .json";

    /// <summary>The file and what writes it, by its ending.</summary>
    public static (string Path, Action<Stream> Write) Of(string path, Score score, TakeReport report) => (path, Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".TXT" => Text(TakeTable.PlainText(score, report)),
        ".CSV" => Text(TakeTable.Csv(report)),
        ".HTML" => Text(TakeTable.Html(score, report)),
        ".SVG" => Text(TakePicture.Svg(score, report)),
        ".JSON" => Text(TakeJson.Write(report)),
        ".PDF" => stream => Form(score, report).WritePdf(stream),
        _ => throw new InputException($"--out: '{path}' must end in one of {Endings}"),
    });

    private static PrintedForm Form(Score score, TakeReport report) => new(OneLineOf(score.Title), TakeTable.Columns)
    {
        Parts = [new FormPart("What was heard", TakeSummary.Words(score, report)), new FormPart("Cautions", score.Cautions.ConvertAll(c => c.Text))],
        Rows = TakeTable.Rows(report),
    };

    private static string OneLineOf(string title) => title.Length <= 100 ? title : title[..97] + "...";

    private static Action<Stream> Text(string text) => stream => stream.Write(Encoding.UTF8.GetBytes(text));
}

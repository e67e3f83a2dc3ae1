using System.Text;
using Warmup.Drawing;
using Warmup.Takes;

namespace Warmup.Cli;

/// <summary>The files in which a take's report can be written.</summary>
internal static class TakeFiles
{
    private const int MostWords = 40;

    public const string Endings = ".txt .csv .html .svg .pdf .json";

    /// <summary>The file and what writes it, by its ending.</summary>
    public static (string Path, Action<Stream> Write) Of(string path, Score score, TakeReport report) => (path, Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".TXT" => Text(TakeTable.PlainText(score, report)),
        ".CSV" => Text(TakeTable.Csv(report)),
        ".HTML" => Text(TakeTable.Html(score, report)),
        ".SVG" => Text(TakePicture.Svg(score, report)),
        ".JSON" => Text(TakeJson.Write(report, score.Cautions)),
        ".PDF" => stream => Form(score, report).WritePdf(stream),
        _ => throw new InputException($"--out: '{path}' must end in one of {Endings}"),
    });

    private static PrintedForm Form(Score score, TakeReport report)
    {
        // A form says the usual cautions by itself.
        var own = score.Cautions.Where(c => !Cautions.All.Contains(c)).Select(c => c.Text).ToValueList();
        var heard = new FormPart("What was heard", Cut(TakeSummary.Words(score, report)));
        return new PrintedForm(OneLineOf(score.Title), TakeTable.Columns)
        {
            Parts = own.IsEmpty ? [heard] : [heard, new FormPart("What this drill asks for", own)],
            Rows = TakeTable.Rows(report),
        };
    }

    private static ValueList<string> Cut(ValueList<string> words) => words.Count <= MostWords ? words : [.. words.Take(MostWords - 2), "and more", words[^1]];

    private static string OneLineOf(string title) => title.Length <= 100 ? title : title[..97] + "...";

    private static Action<Stream> Text(string text) => stream => stream.Write(Encoding.UTF8.GetBytes(text));
}

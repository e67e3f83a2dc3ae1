using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace Warmup.Takes;

/// <summary>Writes a take as a table: plain text, CSV, or a page with the picture.</summary>
public static class TakeTable
{
    /// <summary>The names of the columns.</summary>
    public static ValueList<string> Columns => ["round", "line", "note", "from (s)", "to (s)", "cents", "spread", "late (ms)", "what was heard"];

    /// <summary>The cells of each note, in the order of the columns.</summary>
    /// <param name="report">What was heard.</param>
    public static ValueList<ValueList<string>> Rows(TakeReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Notes.ConvertAll(n => (ValueList<string>)
        [
            Text(n.Round), Text(n.Line), n.Tone.ToString(), n.Onset?.ToString("0.00", CultureInfo.InvariantCulture) ?? string.Empty,
            n.End?.ToString("0.00", CultureInfo.InvariantCulture) ?? string.Empty, n.Cents?.ToString("+0;-0;0", CultureInfo.InvariantCulture) ?? string.Empty,
            n.Spread is { } spread ? Text(spread) : string.Empty, n.Late?.ToString("+0;-0;0", CultureInfo.InvariantCulture) ?? string.Empty, TakeMarks.Words(n),
        ]);
    }

    /// <summary>The summary in sentences, the table and the cautions, as plain text.</summary>
    /// <param name="score">The drill.</param>
    /// <param name="report">What was heard of it.</param>
    public static string PlainText(Score score, TakeReport report)
    {
        var text = new StringBuilder();
        text.Append(OneLine.Of(Require.NotNull(score).Title)).Append("\n\n");
        foreach (var words in TakeSummary.Words(score, report))
        {
            text.Append(words).Append('\n');
        }

        var rows = Rows(report);
        if (!rows.IsEmpty)
        {
            ValueList<ValueList<string>> all = [Columns, .. rows];
            var widths = Enumerable.Range(0, Columns.Count).Select(c => all.Max(r => r[c].Length)).ToArray();
            text.Append('\n');
            foreach (var row in all)
            {
                text.Append(string.Join("  ", row.Select((cell, c) => cell.PadRight(widths[c]))).TrimEnd()).Append('\n');
            }
        }

        text.Append('\n');
        foreach (var caution in score.Cautions)
        {
            text.Append(caution.Text).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The table as CSV (RFC 4180), with a line of column names.</summary>
    /// <param name="report">What was heard.</param>
    public static string Csv(TakeReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        static string Cell(string text) => text.AsSpan().IndexOfAny(",\"\r\n") >= 0 ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
        var lines = ((ValueList<ValueList<string>>)[Columns, .. Rows(report)]).Select(r => string.Join(",", r.Select(Cell)));
        return string.Join("\r\n", lines) + "\r\n";
    }

    /// <summary>A page with the summary, the picture, the table and the cautions. It loads nothing and runs nothing.</summary>
    /// <param name="score">The drill.</param>
    /// <param name="report">What was heard of it.</param>
    public static string Html(Score score, TakeReport report)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(report);
        static string Safe(string text) => WebUtility.HtmlEncode(text);
        var style = "body{font:16px/1.5 sans-serif;margin:2rem auto;max-width:54rem;padding:0 1rem;color:#111;background:#fff}table{border-collapse:collapse}th,td{padding:.15rem .7rem;text-align:left;border-bottom:1px solid #ddd}svg{max-width:100%;height:auto}" + TakePicture.Style;
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        var page = new StringBuilder();
        page.Append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n")
            .Append(CultureInfo.InvariantCulture, $"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-{hash}'; base-uri 'none'; form-action 'none'\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title>{Safe(OneLine.Of(score.Title))}</title>\n<style>{style}</style>\n</head>\n<body>\n<main>\n<h1>{Safe(OneLine.Of(score.Title))}</h1>\n");
        foreach (var words in TakeSummary.Words(score, report))
        {
            page.Append(CultureInfo.InvariantCulture, $"<p>{Safe(words)}</p>\n");
        }

        if (report.IsDrill)
        {
            page.Append(TakePicture.Svg(score, report, isAlone: false))
                .Append(CultureInfo.InvariantCulture, $"<table>\n<thead><tr>{string.Concat(Columns.Select(c => $"<th scope=\"col\">{Safe(c)}</th>"))}</tr></thead>\n<tbody>\n");
            foreach (var row in Rows(report))
            {
                page.Append(CultureInfo.InvariantCulture, $"<tr>{string.Concat(row.Select(c => $"<td>{Safe(c)}</td>"))}</tr>\n");
            }

            page.Append("</tbody>\n</table>\n");
        }

        page.Append("<h2>Cautions</h2>\n<ul>\n");
        foreach (var caution in score.Cautions)
        {
            page.Append(CultureInfo.InvariantCulture, $"<li>{Safe(caution.Text)}</li>\n");
        }

        return page.Append("</ul>\n</main>\n</body>\n</html>\n").ToString();
    }

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}

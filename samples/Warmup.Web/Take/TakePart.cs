using Warmup.Takes;

namespace Warmup.Web;

/// <summary>The report of a take: in sentences, as a picture, note by note.</summary>
/// <param name="Score">The drill.</param>
/// <param name="Report">What was heard of it.</param>
/// <param name="Texts">The page's words.</param>
internal sealed record TakePart(Score Score, TakeReport Report, Texts Texts)
{
    public Html Write() => Html.Of(
        $"""
        <!doctype html>
        <html lang="{Texts.Language}"><head><meta charset="utf-8"><title>{Texts.Report}</title><link rel="stylesheet" href="/page.css"><link rel="stylesheet" href="/take.css"></head>
        <body><main><section id="report"><h4 id="report-heading" tabindex="-1">{Texts.Report}: {Score.Title}</h4>
        {TakeSummary.Words(Score, Report).Select(w => Html.Of($"<p>{w}</p>"))}
        {(Report.IsDrill ? Notes() : default)}
        </section></main></body></html>
        """);

    private Html Notes() => Html.Of(
        $"""
        <div class="picture" tabindex="0" role="group" aria-label="{Texts.ReportPicture}">{Html.OfPicture(TakePicture.Svg(Score, Report, isAlone: false))}</div>
        <details><summary>{Texts.NoteByNote}</summary><div class="wide" tabindex="0" role="group" aria-label="{Texts.NoteByNote}"><table class="notes-heard"><thead><tr>{TakeTable.Columns.Select(c => Html.Of($"""<th scope="col">{c}</th>"""))}</tr></thead>
        <tbody>{TakeTable.Rows(Report).Select(r => Html.Of($"<tr>{r.Select(c => Html.Of($"<td>{c}</td>"))}</tr>"))}</tbody></table></div></details>
        """);
}

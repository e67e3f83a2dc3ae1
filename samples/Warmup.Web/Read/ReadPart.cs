using System.Globalization;
using System.Text.Json;
using Warmup.Reading;

namespace Warmup.Web;

/// <summary>The part of the page that shows what was read from a file, and takes it as the drill.</summary>
/// <param name="State">What was chosen.</param>
/// <param name="Answer">What was read, or why nothing was.</param>
/// <param name="Limits">What is allowed.</param>
/// <param name="Texts">The page's words.</param>
internal sealed record ReadPart(PageState State, (ReadMusic? Music, string? Refusal) Answer, Limits Limits, Texts Texts)
{
    private const int MostLines = 24;
    private const int MostSections = 8;
    private const int MostRemarks = 20;

    // Rules are searched for among so many notes.
    private const int MostSearched = 500;

    private Fields Fields => new(State, []);

    public Html Write(CancellationToken stop) => Answer.Music is not { } music
        ? Html.Of($"""<div role="alert" class="wrong"><p>{Texts.NotRead}</p><p>{Answer.Refusal}</p></div>""")
        : Html.Of(
            $"""
            <h3 id="read-heading" tabindex="-1">{Texts.WasRead}: {music.Format}{(music.Title.Length == 0 ? string.Empty : $", {music.Title}")}</h3>
            {music.Sections.Take(MostSections).Select(s => Section(s, music.Sections.Count > 1, stop))}
            {(music.Sections.Count > MostSections ? Html.Of($"<p>{Texts.More(MostSections, music.Sections.Count)}</p>") : default)}
            {(music.Remarks.IsEmpty ? Html.Of($"<p>{Texts.NoRemarks}</p>") : Html.Of($"<h4>{Texts.Remarks}</h4><ul>{music.Remarks.Take(MostRemarks).Select(r => Html.Of($"<li>{r.ToString()}</li>"))}</ul>"))}
            {(music.Remarks.Count > MostRemarks ? Html.Of($"<p>{Texts.More(MostRemarks, music.Remarks.Count)}</p>") : default)}
            """);

    private Html Section(ReadSection section, bool isOneOfSeveral, CancellationToken stop) => Html.Of(
        $"""
        <section class="read"><h4>{(isOneOfSeveral ? $"{section.Number}. " : string.Empty)}{(section.Title.Length > 0 ? section.Title : section.Scale.Name)}</h4>
        <p>{Texts.ReadOf(section.Scale.Name, section.Tonic.ToString(), section.Meter.ToString(), section.Tempo.ToString())}; {Texts.FoundBy(JsonNamingPolicy.KebabCaseLower.ConvertName(section.LinesFoundBy.ToString()).Replace('-', ' '))}</p>
        <ol class="lines">{section.Lines.Take(MostLines).Select(l => Html.Of($"<li>{l.ToNotation()}</li>"))}</ol>
        {(section.Lines.Count > MostLines ? Html.Of($"<p>{Texts.More(MostLines, section.Lines.Count)}</p>") : default)}
        <p class="row">{Use(section)} {Rules(section, stop)}</p>
        {(section.Proposals.Count < 2 ? default : Html.Of($"<details><summary>{Texts.Proposals}</summary><ol>{section.Proposals.Select(p => Html.Of($"<li>{p.Scale.Name}, S = {p.Tonic.ToString()}: {string.Join("; ", p.Reasons)}</li>"))}</ol></details>"))}
        </section>
        """);

    private Html Use(ReadSection section)
    {
        if (ReadDrill.Of(section, Limits) is not { } drill)
        {
            return Html.Of($"<span>{Texts.NotWritable}</span>");
        }

        var text = drill.Lines == section.Lines.Count ? Texts.UseRead : string.Create(CultureInfo.InvariantCulture, $"{Texts.UseRead} ({Texts.More(drill.Lines, section.Lines.Count)})");
        return Fields.Link(text, drill.Changes);
    }

    // A rule that gives all lines, in the scale, on the tonic and in the time of the file.
    private Html Rules(ReadSection section, CancellationToken stop)
    {
        if (section.NoteCount > MostSearched || ReadDrill.Of(section, Limits) is not { } drill)
        {
            return default;
        }

        using var soon = CancellationTokenSource.CreateLinkedTokenSource(stop);
        soon.CancelAfter(TimeSpan.FromSeconds(Limits.RuleSeconds));
        FoundRule? rule = null;
        try
        {
            rule = RuleFinder.FindWhole(section, soon.Token);
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            // The lines are shown all the same.
        }

        return rule is null
            ? default
            : Fields.Link(Texts.UseRule(rule.Exercise ?? rule.Rule.ToString()!), drill.Changes.Where(c => c.Name is not ("from" or "written" or "pattern")).Concat(ReadDrill.Of(rule)));
    }
}

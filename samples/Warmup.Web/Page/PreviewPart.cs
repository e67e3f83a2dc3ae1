using System.Globalization;

namespace Warmup.Web;

/// <summary>The part of the page that shows the drill, whom it fits, what would help, and the files.</summary>
internal sealed record PreviewPart(PageModel Model, Texts Texts)
{
    private Fields Fields => new(Model.State, Model.Errors);

    private PageState State => Model.State;

    public Html Write() => Html.Of(
        $"""
        <div id="said" class="part">{Wrong()}{Refused()}</div>
        <div id="lines-sung" class="part">{(Model.Made is { } made ? Lines(made.Drill, made.Score) : default)}</div>
        <div id="fits" class="part">{(Model.Made is { } fit ? Fit(fit.Drill) : default)}</div>
        <div id="tempi" class="part">{(Model.Made is { } timed ? Tempi(timed.Drill) : default)}</div>
        {Take()}
        <div id="sheet" class="part">{(Model.Made is { } drawn ? Sheet(drawn.Drill, drawn.Score) : default)}</div>
        """);

    // No part that is renewed: a take outlives changes of the drill.
    private Html Take() => Html.Of(
        $"""
        <section id="take" aria-labelledby="take-heading" data-needs-script hidden data-record="{Texts.Record}" data-stop="{Texts.StopRecording}" data-none="{Texts.NoMicrophone}" data-refused="{Texts.MicrophoneRefused}" data-silent="{Texts.NothingHeard}"
        data-listening="{Texts.Listening}" data-nodrill="{Texts.Wrong}" data-large="{Texts.TakeTooLong}" data-unknown="{Texts.TakeUnknown}" data-most="{Guard.MostTakeBytes}">
        <h3 id="take-heading">{Texts.SingIt}</h3><p class="help">{Texts.TakeConsent}</p>
        <p class="row"><button type="button" id="record">{Texts.Record}</button> <output id="recorded"></output> <meter id="level" aria-label="{Texts.MicrophoneLevel}" min="0" max="1" value="0"></meter></p>
        <p class="row" id="taken" hidden><audio id="take-sound" controls></audio> <button type="button" id="hear">{Texts.Hear}</button> <a id="save" download="take.wav">{Texts.SaveTake}</a></p>
        <p class="field"><label for="take-from">{Texts.TakeFrom}</label><input id="take-from" type="file" accept="audio/*"></p>
        <div id="report"></div></section>
        """);

    private Html Wrong() => Model.Errors.Count == 0
        ? default
        : Html.Of($"""<div id="wrong" role="alert" class="wrong"><p>{Texts.Wrong}</p><ul>{Model.Errors.Select(e => Html.Of($"<li><strong>{Texts.FieldOf(e.Parameter)}</strong>: {e.Message}</li>"))}</ul></div>""");

    private Html Refused() => Model.Refusal is { } finding
        ? Html.Of($"""<div role="alert" class="wrong"><p>{Texts.Wrong}</p><p>{finding.Message}. {finding.Fix}</p></div>""")
        : default;

    private Html Lines(Drill drill, Score score) => Html.Of(
        $"""
        <h3>{score.Title}</h3>
        <p>{Texts.Notes(score.NoteCount)}; {drill.Pattern.Describe(drill.Scale)}</p>
        <ol class="lines">{drill.Expand().Lines.Select(l => Html.Of($"<li>{l.ToNotation()}</li>"))}</ol>
        {Files()}
        """);

    private Html Sheet(Drill drill, Score score) => Html.Of(
        $"""
        <h3>{Texts.Sheet}</h3>
        <p><img class="sheet" src="{State.FileAddress("/drill.svg")}" alt="{Texts.SheetOf(score.Title)}"></p>
        {score.Findings.Select(f => Html.Of($"<p>{f.Describe()}</p>"))}
        {Levels(drill)}
        <h3>{Texts.Cautions}</h3><ul class="cautions">{score.Cautions.Select(c => Html.Of($"<li>{c.Text} <small>({c.Source})</small></li>"))}</ul>
        """);

    private Html Files() => Html.Of(
        $"""
        <h3>{Texts.Files}</h3>
        <ul class="files">
        <li><a href="{State.FileAddress("/drill.html")}">{Texts.Practise}</a></li>
        <li><a href="{State.FileAddress("/drill.pdf")}">{Texts.Pdf}</a></li>
        <li><a href="{State.FileAddress("/drill.musicxml")}">{Texts.MusicXml}</a></li>
        <li><a href="{State.FileAddress("/drill.mid")}">{Texts.Midi}</a></li>
        <li><a href="{State.FileAddress("/drill.wav")}">{Texts.Wav}</a></li>
        <li><a href="{State.FileAddress("/drill.zip")}">{Texts.Zip}</a></li>
        </ul>
        """);

    private Html Fit(Drill drill) => Model.Singers.IsEmpty
        ? Html.Of($"""<h3>{Texts.Fits}</h3><p class="help">{Texts.NoClass}</p>""")
        : Html.Of(
            $"""
            <h3>{Texts.Fits}</h3>
            {(Model.Findings.IsEmpty ? Html.Of($"<p>{Texts.FitsAll}</p>") : Model.IsQuick ? Html.Of($"""<p class="help">{Texts.HelpComes}</p>""") : ClimbHelp())}
            <ul class="singers">{Model.Singers.Select(s => Singer(drill, s))}</ul>
            """);

    private Html ClimbHelp() => Model.Request?.Climb is null ? default
        : Model.ShorterClimb is { } semitones ? Html.Of($"""<p class="help">{Texts.WhatHelps}</p><p class="row">{Fields.Link(Texts.ClimbOf(semitones), ("climb", semitones.ToString(CultureInfo.InvariantCulture)))} {Fields.Link(Texts.WithoutClimb, ("climb", string.Empty), ("cue", string.Empty))}</p>""")
        : Html.Of($"""<p class="help">{Texts.NoClimb}</p><p class="row">{Fields.Link(Texts.WithoutClimb, ("climb", string.Empty), ("cue", string.Empty))}</p>""");

    private Html Singer(Drill drill, Singer singer)
    {
        var fits = !Model.Findings.Any(f => f.Singer == singer);
        return Html.Of(
            $"""
            <li><strong>{singer.Alias}</strong> <span class="{(fits ? "yes" : "no")}">{(fits ? Texts.FitsYes : Texts.FitsNo)}</span>
            {(Model.Help is { } help ? Advised(drill, help.Where(a => a.Singer == singer)) : Found(singer))}
            <details><summary>{Texts.Contour}</summary><img loading="lazy" src="{State.FileAddress("/contour.svg", ("low", singer.Low.ToString()), ("high", singer.High.ToString()))}" alt="{Texts.ContourOf(singer.Alias, singer.Low.ToString(), singer.High.ToString())}"></details></li>
            """);
    }

    // Findings of a kind stand together, as their worst one; with advice, those that the same changes clear.
    private Html Found(Singer singer) => Html.Of($"{Model.Findings.Where(f => f.Singer == singer).Select(f => f.Finding).GroupBy(f => f.Code).Select(g => Html.Of($"""<div class="finding">{Message(g, Worst(g, f => f))}</div>"""))}");

    private Html Advised(Drill drill, IEnumerable<Advice> advice) => Html.Of(
        $"{advice.GroupBy(a => (a.Finding.Code, a.Remedies, a.Alone, a.Otherwise)).Select(g => Finding(drill, g.Select(a => a.Finding), Worst(g, a => a.Finding)))}");

    private static T Worst<T>(IEnumerable<T> group, Func<T, Finding> of) => group.MaxBy(g => Math.Abs((of(g).Measured ?? 0) - (of(g).Limit ?? 0)))!;

    private Html Message(IEnumerable<Finding> group, Finding worst)
    {
        var lines = LineNumbers.ToText(group.Select(f => f.Place?.Line ?? 0).Where(l => l > 0));
        return Html.Of($"<p>{(lines.Length == 0 ? string.Empty : Texts.OnLines(lines))}{worst.Message}</p>");
    }

    private Html Finding(Drill drill, IEnumerable<Finding> group, Advice advice) => Html.Of(
        $"""
        <div class="finding">{Message(group, advice.Finding)}
        {(advice.Remedies.IsEmpty ? Html.Of($"<p>{advice.Otherwise}</p>") : Html.Of($"""<p class="help">{Texts.WhatHelps}</p>"""))}
        <p class="row">{advice.Remedies.Select(r => Fields.Link(r.Describe(drill), RemedyChanges.Of(r, Model.Request!, State)))}
        {advice.Alone.Select(r => Fields.Link($"{Texts.Alone}: {r.Describe(drill)}", RemedyChanges.Of(r, Model.Request!, State)))}</p></div>
        """);

    // A bar for each speed: the tempi that fit, from the slowest to the fastest that there is.
    private Html Tempi(Drill drill)
    {
        if (Model.Windows.IsEmpty)
        {
            return default;
        }

        var now = (int)drill.Tempo.Start.Floor();
        return Html.Of(
            $"""
            <h3>{Texts.Tempi}</h3>
            {Model.Windows.Select(w => Html.Of(
                $"""
                <p>{w.Speed.ToString()}: {(w.IsEmpty ? Texts.NoTempo : string.Join(", ", w.Intervals.Select(i => $"{i.Slowest.ToString(CultureInfo.InvariantCulture)} to {i.Fastest.ToString(CultureInfo.InvariantCulture)}")))}; {Texts.Now} {now}</p>
                {w.ClosedBy.Select(c => Html.Of($"""<p class="help">{c}</p>"""))}{(w.OpenedBy.IsEmpty ? default : Html.Of($"""<details><summary>{Texts.TempoHelp}</summary>{w.OpenedBy.Select(o => Html.Of($"<p>{o}</p>"))}</details>"""))}
                <svg class="tempi" viewBox="{Tempo.Slowest} 0 {Tempo.Fastest - Tempo.Slowest} 12" preserveAspectRatio="none" aria-hidden="true"><rect class="all" x="{Tempo.Slowest}" y="3" width="{Tempo.Fastest - Tempo.Slowest}" height="6"/>{w.Intervals.Select(i => Html.Of($"""<rect class="fit" x="{i.Slowest}" y="1" width="{Math.Max(2, i.Fastest - i.Slowest)}" height="10"/>"""))}<rect class="now" x="{now - 1}" y="0" width="2" height="12"/></svg>
                """))}
            """);
    }

    private Html Levels(Drill drill)
    {
        var idea = drill.Pattern;
        (string Name, Pattern Pattern)[] levels = [(Texts.LevelOne, idea), (Texts.LevelTwo, idea.Reversed()), (Texts.LevelThree, idea.Ends())];
        return Html.Of(
            $"""
            <h3>{Texts.Levels}</h3>
            <div class="levels">{levels.Select(l => Level(l.Name, l.Pattern, drill.Scale))}</div>
            """);
    }

    private Html Level(string name, Pattern pattern, Scale scale)
    {
        var text = pattern.ToString()!;
        return pattern.TryExpand(scale, out var lines, out _)
            ? Html.Of($"""<section><h4>{name}</h4><ul>{lines!.Lines.Take(6).Select(l => Html.Of($"<li>{l.ToLetters()}</li>"))}{(lines.Lines.Count > 6 ? Html.Of($"<li>…</li>") : default)}</ul><p>{Fields.Link(Texts.Take, ("from", "words"), ("pattern", text), ("lines", string.Empty))}</p></section>""")
            : Html.Of($"<section><h4>{name}</h4><p>{Texts.LevelNone}</p></section>");
    }
}

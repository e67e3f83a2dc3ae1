using System.CommandLine;
using System.Text.Json;
using Warmup.Reading;

namespace Warmup.Cli;

/// <summary><c>warmup read</c>: reads a drill back from a file, finds its rule, checks it and writes it anew.</summary>
internal static class ReadCommand
{
    private const int MostShown = 20;

    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var options = new ReadOptions();
        var explain = new Option<bool>("--explain") { Description = "Find the rule that gives the lines." };
        var breaths = new BreathOption();
        var singers = new SingerOptions(required: false);
        var outputs = new Option<string[]>("--out")
        {
            Description = $"A file to write; its ending names the format: {string.Join(" ", Formats.All.SelectMany(f => f.Extensions))}. Repeat it for more files.",
            AllowMultipleArgumentsPerToken = false,
        };
        var force = new Option<bool>("--force") { Description = "Replace files that exist." };
        var json = new Option<bool>("--json") { Description = "Print what was read as JSON." };
        var command = new Command("read", "Reads a drill back from MusicXML, MIDI or text.");
        options.AddTo(command);
        command.Add(explain);
        singers.AddTo(command);
        breaths.AddTo(command);
        command.Add(outputs);
        command.Add(force);
        command.Add(json);
        command.Add(CautionOption.Create());
        command.SetAction(parsed =>
        {
            var (music, sections) = options.Read(parsed, cancellation);
            var people = singers.Read(parsed);
            var need = breaths.Read(parsed, people);
            var said = new List<string>();
            (Drill Drill, Score Score) Changed(ReadSection section)
            {
                var (drill, score) = options.Change(section, parsed, cancellation);
                if (need is not null)
                {
                    score = BreathOption.Plan(score, need, out var words, cancellation);
                    said.Add(words);
                }

                return (drill, score);
            }

            var drills = sections.ConvertAll(Changed);
            var written = new List<WrittenFile>();
            if (parsed.GetValue(outputs) is { Length: > 0 } paths)
            {
                var score = drills.Count == 1 ? drills[0].Score : Score.Join(music.Title, drills.Select(d => d.Score));
                Formats.WriteTogether(paths.Select(p => Formats.File(p, Formats.Of(p), score, cancellation)).ToList(), parsed.GetValue(force));
                written.AddRange(paths.Select(p => new WrittenFile(p, Formats.Of(p).Name)));
            }

            var reports = drills.Select((d, i) => Report.Of(
                d.Drill, d.Score, people, need, r => options.ToOptions(r, sections[i], music.Sections.Count == 1, parsed), cancellation)).ToList();
            if (parsed.GetValue(json))
            {
                terminal.Json(ToReport(music, sections, reports, !people.IsEmpty, parsed.GetValue(explain), written, cancellation), ConsoleJson.Default.ReadReport);
            }
            else
            {
                Print(terminal, music, sections, parsed.GetValue(explain), cancellation);
                said.ForEach(terminal.Out.WriteLine);
                written.ForEach(w => terminal.Out.WriteLine($"wrote {w.Path} ({w.Format})"));
                reports.ForEach(r => r.Print(terminal));
            }

            return reports.TrueForAll(r => r.Fits) ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    private static void Print(Terminal terminal, ReadMusic music, ValueList<ReadSection> sections, bool explains, CancellationToken cancellation)
    {
        var parts = music.Parts.Count > 1 ? $", part {TextError.Quote(music.Part)} of {music.Parts.Count}" : string.Empty;
        terminal.Out.WriteLine(Line($"{music.Format}{parts}{(music.Title.Length == 0 ? string.Empty : $": {music.Title}")}"));
        foreach (var section in sections)
        {
            terminal.Out.WriteLine(Line(
                $"{(music.Sections.Count > 1 ? $"section {section.Number}: " : string.Empty)}{section.Scale.Name}, S = {section.Tonic}, {section.Meter}, {OptionValue.ToText(section.Tempo)} a minute, {section.Lines.Count} {(section.Lines.Count == 1 ? "line" : "lines")} of {section.NoteCount} notes{Time(section)}"));
            if (section.LinesFoundBy is not (LinesFoundBy.LineNumbers or LinesFoundBy.TextLines))
            {
                terminal.Out.WriteLine($"lines were found by: {Word(section.LinesFoundBy)}");
            }

            for (var l = 0; l < section.Lines.Count; l++)
            {
                terminal.Out.WriteLine(Line($"  {l + 1}. {section.ToNotation(l)}"));
            }

            for (var p = 0; p < section.Proposals.Count; p++)
            {
                var proposal = section.Proposals[p];
                terminal.Out.WriteLine(Line($"{(p == 0 ? "taken" : "or   ")}: {proposal.Scale.Name}, S = {proposal.Tonic} ({string.Join("; ", proposal.Reasons)})"));
            }

            if (explains)
            {
                var rules = RuleFinder.Find(section, cancellation);
                foreach (var rule in rules)
                {
                    terminal.Out.WriteLine(Line($"rule of {rule}{(rule.IsByTonesAlone ? ", without the holds and silences at line ends" : string.Empty)}"));
                }

                terminal.Out.Write(rules.IsEmpty ? "no rule was found\n" : string.Empty);
            }
        }

        foreach (var remark in music.Remarks.Take(MostShown))
        {
            terminal.Out.WriteLine(Line($"note: {remark}"));
        }

        terminal.Out.Write(music.Remarks.Count > MostShown ? $"and {music.Remarks.Count - MostShown} more notes; --json prints all\n" : string.Empty);
    }

    private static ReadReport ToReport(
        ReadMusic music, ValueList<ReadSection> sections, List<Report> reports, bool hasSingers, bool explains, List<WrittenFile> files, CancellationToken cancellation) => new(
        ReadReport.Name,
        music.Format,
        music.Title,
        music.Part,
        [.. music.Parts],
        [
            .. sections.Select((s, i) => new ReadSectionRow(
                s.Number,
                s.Title,
                s.Scale.Name,
                s.Scale.ToNotesText(),
                s.Tonic.ToString(),
                s.Meter.ToText(),
                s.Tempo.ToString(),
                Word(s.LinesFoundBy),
                [.. Enumerable.Range(0, s.Lines.Count).Select(s.ToNotation)],
                s.LetterLength.ToString(),
                s.Repetitions,
                s.ToPattern()?.ToString(),
                [.. s.Proposals.Select(p => new ProposalRow(p.Tonic.ToString(), p.Scale.Name, p.Points, [.. p.Reasons]))],
                explains ? [.. RuleFinder.Find(s, cancellation).Select(r => new RuleRow(r.FirstLine, r.LastLine, r.Rule.ToString(), r.Exercise, r.IsByTonesAlone))] : null,
                hasSingers ? reports[i].SungRows() : null)),
        ],
        [.. music.Remarks.Select(r => new RemarkRow(Word(r.Kind), r.Place.ToString(), r.Message))],
        files);

    private static string Time(ReadSection section) =>
        (section.LetterLength == Rational.One ? string.Empty : $", a letter is {section.LetterLength} {(section.Meter.Gestures.IsEmpty ? "beat" : "akshara")}")
        + (section.Repetitions == 1 ? string.Empty : $", sung {section.Repetitions} times");

    private static string Word<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()).Replace('-', ' ');

    private static string Line(string text) => Terminal.Plain(text).Replace("[[", "[", StringComparison.Ordinal).Replace("]]", "]", StringComparison.Ordinal);
}

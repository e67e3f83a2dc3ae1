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
        var file = new Option<string>("--file") { Description = "The file: MusicXML (.musicxml .xml .mxl), MIDI (.mid), or text in svaras, solfa or scale numbers.", Required = true };
        var part = new Option<string?>("--part") { Description = "The part to read, by name or number; by default the pitched part with the most syllables." };
        var scale = new Option<string?>("--scale") { Description = "The scale of the music: a name, the number of a parent or the notes; proposed where the file does not say it." };
        var tonic = new Option<string?>(TonicOption.Name) { Description = $"The tonic of the music: {TonicOption.Forms}; proposed where the file does not say it." };
        var toScale = new Option<string?>("--to-scale") { Description = "Carry the lines to this scale." };
        var toTonic = new Option<string?>("--to-tonic") { Description = $"Carry the lines to this tonic: {TonicOption.Forms}." };
        var tempo = new Option<string?>("--tempo") { Description = $"Another tempo, in aksharas or beats a minute, {Tempo.Slowest} to {Tempo.Fastest}." };
        var explain = new Option<bool>("--explain") { Description = "Find the rule that gives the lines." };
        var singers = new SingerOptions(required: false);
        var outputs = new Option<string[]>("--out")
        {
            Description = $"A file to write; its ending names the format: {string.Join(" ", Formats.All.SelectMany(f => f.Extensions))}. Repeat it for more files.",
            AllowMultipleArgumentsPerToken = false,
        };
        var force = new Option<bool>("--force") { Description = "Replace files that exist." };
        var json = new Option<bool>("--json") { Description = "Print what was read as JSON." };
        var command = new Command("read", "Reads a drill back from MusicXML, MIDI or text.") { file, part, scale, tonic, toScale, toTonic, tempo, explain };
        singers.AddTo(command);
        command.Add(outputs);
        command.Add(force);
        command.Add(json);
        command.SetAction(parsed =>
        {
            Scale? ScaleOf(Option<string?> option) => parsed.GetValue(option) is { } text ? OptionValue.Parsed<Scale>(option.Name, text, Catalogue.Default.TryRead) : null;
            var path = parsed.GetValue(file)!;
            var music = DrillFile.Read(
                "--file",
                path,
                new ReadingOptions { Scale = ScaleOf(scale), Tonic = parsed.GetValue(tonic) is { } t ? TonicOption.Read(t) : null, Part = parsed.GetValue(part) },
                cancellation);
            var change = new ReadChange(
                ScaleOf(toScale),
                parsed.GetValue(toTonic) is { } other ? OptionValue.Parsed("--to-tonic", other, (string typed, out Tonic? read, out TextError? error) => Tonic.TryParse(typed, out read, out error)) : null,
                parsed.GetValue(tempo) is { } wanted ? OptionValue.Parsed<TempoRamp>("--tempo", wanted, TempoRamp.TryParse) : null);
            var people = singers.Read(parsed);
            var drills = music.Sections.Select(s => change.Of(s, path, cancellation)).ToList();
            var written = new List<WrittenFile>();
            if (parsed.GetValue(outputs) is { Length: > 0 } paths)
            {
                var score = drills.Count == 1 ? drills[0].Score : Score.Join(music.Title, drills.ConvertAll(d => d.Score));
                Formats.WriteTogether(paths.Select(p => Formats.File(p, Formats.Of(p), score, cancellation)).ToList(), parsed.GetValue(force));
                written.AddRange(paths.Select(p => new WrittenFile(p, Formats.Of(p).Name)));
            }

            var reports = people.IsEmpty ? [] : drills.ConvertAll(d => Report.Of(d.Drill, d.Score, people, null, ToOptions, cancellation));
            if (parsed.GetValue(json))
            {
                terminal.Json(ToReport(music, drills, people, parsed.GetValue(explain), written, cancellation), ConsoleJson.Default.ReadReport);
            }
            else
            {
                Print(terminal, music, parsed.GetValue(explain), cancellation);
                written.ForEach(w => terminal.Out.WriteLine($"wrote {w.Path} ({w.Format})"));
                reports.ForEach(r => r.Print(terminal));
            }

            return reports.TrueForAll(r => r.Fits) ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    private static IReadOnlyList<string> ToOptions(Remedy remedy) => remedy switch
    {
        OtherTonic tonic => ["--to-tonic", tonic.Text],
        OtherTempo tempo => ["--tempo", tempo.Tempo.ToString()],
        OtherScale scale => ["--to-scale", scale.Scale.Name],
        _ => [],
    };

    private static void Print(Terminal terminal, ReadMusic music, bool explains, CancellationToken cancellation)
    {
        var parts = music.Parts.Count > 1 ? $", part {TextError.Quote(music.Part)} of {music.Parts.Count}" : string.Empty;
        terminal.Out.WriteLine(Line($"{music.Format}{parts}{(music.Title.Length == 0 ? string.Empty : $": {music.Title}")}"));
        foreach (var section in music.Sections)
        {
            terminal.Out.WriteLine(Line(
                $"{(music.Sections.Count > 1 ? $"section {section.Number}: " : string.Empty)}{section.Scale.Name}, S = {section.Tonic}, {section.Meter}, {OptionValue.ToText(section.Tempo)} a minute, {section.Lines.Count} {(section.Lines.Count == 1 ? "line" : "lines")} of {section.NoteCount} notes"));
            if (section.LinesFoundBy is not (LinesFoundBy.LineNumbers or LinesFoundBy.TextLines))
            {
                terminal.Out.WriteLine($"lines were found by: {Word(section.LinesFoundBy)}");
            }

            for (var l = 0; l < section.Lines.Count; l++)
            {
                terminal.Out.WriteLine(Line($"  {l + 1}. {section.Lines[l].ToNotation()}"));
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
        ReadMusic music, List<(Drill Drill, Score Score)> drills, ValueList<Singer> people, bool explains, List<WrittenFile> files, CancellationToken cancellation) => new(
        ReadReport.Name,
        music.Format,
        music.Title,
        music.Part,
        [.. music.Parts],
        [
            .. music.Sections.Select((s, i) => new ReadSectionRow(
                s.Number,
                s.Title,
                s.Scale.Name,
                s.Scale.ToNotesText(),
                s.Tonic.ToString(),
                s.Meter.ToText(),
                s.Tempo.ToString(),
                Word(s.LinesFoundBy),
                [.. s.Lines.Select(l => l.ToNotation())],
                s.ToPattern()?.ToString(),
                [.. s.Proposals.Select(p => new ProposalRow(p.Tonic.ToString(), p.Scale.Name, p.Points, [.. p.Reasons]))],
                explains ? [.. RuleFinder.Find(s, cancellation).Select(r => new RuleRow(r.FirstLine, r.LastLine, r.Rule.ToString(), r.Exercise, r.IsByTonesAlone))] : null,
                people.IsEmpty ? null : [.. drills[i].Drill.Advise(people, cancellationToken: cancellation).Select(a => new SungFindingRow(a.Singer.Alias, a.Finding.Code, a.Finding.Place?.Line, a.Finding.Message))])),
        ],
        [.. music.Remarks.Select(r => new RemarkRow(Word(r.Kind), r.Place.ToString(), r.Message))],
        files);

    private static string Word<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString()).Replace('-', ' ');

    private static string Line(string text) => Terminal.Plain(text).Replace("[[", "[", StringComparison.Ordinal).Replace("]]", "]", StringComparison.Ordinal);
}

/// <summary>What is to differ from the file.</summary>
internal sealed record ReadChange(Scale? Scale, Tonic? Tonic, TempoRamp? Tempo)
{
    /// <summary>The drill of a section with what is to differ, and its score; the breaths of the file as long as its time is kept.</summary>
    public (Drill Drill, Score Score) Of(ReadSection section, string path, CancellationToken cancellation)
    {
        var drill = section.ToDrill();
        drill = drill with { Tonic = Tonic ?? drill.Tonic, Tempo = Tempo ?? drill.Tempo };
        drill = Scale is null ? drill : drill with { Scale = Scale, Expansion = null, Pattern = DrillFile.PatternOf("--to-scale", path, section, cancellation), Title = $"{Scale.Name}: {section.Title}" };
        var score = drill.ToScore(cancellation);
        return (drill, Scale is null && !section.Breaths.IsEmpty ? score.WithBreaths(0, section.Breaths) : score);
    }
}

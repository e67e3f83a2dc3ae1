using System.CommandLine;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;

namespace Warmup.Cli;

/// <summary><c>warmup drill</c>: makes a drill and writes it to files.</summary>
internal static class DrillCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var drill = new DrillOptions();
        var climb = new ClimbOptions();
        var singers = new SingerOptions(required: false);
        var outputs = new Option<string[]>("--out")
        {
            Description = $"The file to write; its ending names the format: {string.Join(" ", Formats.All.SelectMany(f => f.Extensions))}. Repeat it for more files.",
            Required = true,
            Arity = ArgumentArity.OneOrMore,
            AllowMultipleArgumentsPerToken = false,
        };
        var breaths = new BreathOption();
        var force = new Option<bool>("--force") { Description = "Replace files that exist." };
        var answers = new Option<bool>("--call-and-response") { Description = "In the files, leave a silence as long as each line after it, for the singer's answer." };
        var midi = new MidiFileOptions();
        var notation = new NotationOptions();
        var contour = new Option<string?>("--contour") { Description = "Draw pitch over time: an .svg, .pdf or .png file. With one singer, the comfortable range is drawn too." };
        var json = new Option<bool>("--json") { Description = "Print what was written and the findings as JSON." };
        var command = new Command("drill", "Makes a drill and writes it to files.");
        drill.AddTo(command);
        climb.AddTo(command);
        singers.AddTo(command);
        command.Add(outputs);
        breaths.AddTo(command);
        command.Add(force);
        command.Add(json);
        command.Add(CautionOption.Create());
        command.Add(answers);
        command.Add(contour);
        midi.AddTo(command);
        notation.AddTo(command);
        command.SetAction(parsed =>
        {
            void Say(string line) => (parsed.GetValue(json) ? TextWriter.Null : terminal.Out).WriteLine(line);
            var wanted = drill.Read(parsed);
            var people = singers.Read(parsed);
            var score = climb.ToScore(parsed, drill, wanted, cancellation);
            var need = breaths.Read(parsed, people);
            if (need is not null)
            {
                score = BreathOption.Plan(score, need, out var said, cancellation);
                Say(said);
            }

            var paths = parsed.GetValue(outputs)!;
            var tempi = paths.Any(p => Formats.Of(p) is HtmlFormat) ? TempiOf(wanted, score, people, cancellation) : null;
            var (asMidi, asNotation) = (midi.Read(parsed), notation.Read(parsed, people));
            IScoreFormat AsWanted(IScoreFormat format) => format switch
            {
                MidiFormat => new MidiFormat(asMidi),
                MusicXmlFormat => new MusicXmlFormat(asNotation),
                MxlFormat => new MxlFormat(asNotation),
                HtmlFormat => new HtmlFormat(HtmlOptions.Default with { Tempi = tempi?.Range }),
                _ => format,
            };
            var written = parsed.GetValue(answers) ? score.WithAnswers() : score;
            var wantedFiles = paths.Select(p => (Path: p, Format: AsWanted(Formats.Of(p)))).ToList();
            if (parsed.GetValue(contour) is { } path)
            {
                wantedFiles.Add((path, ContourFormat(path, paths, people)));
            }

            using (var progress = terminal.Working("writing the files"))
            {
                Formats.WriteTogether(wantedFiles.ConvertAll(f => Formats.File(f.Path, f.Format, written, cancellation, progress)), parsed.GetValue(force));
            }

            foreach (var (file, format) in wantedFiles)
            {
                Say($"wrote {file} ({format.Name})");
            }

            var files = parsed.GetValue(json) ? wantedFiles.ConvertAll(f => new WrittenFile(f.Path, f.Format.Name)) : null;
            if (climb.IsWanted(parsed))
            {
                var rounds = ClimbReport.Of(climb.Read(parsed, drill, wanted)!, score, people, s => need is null ? s : BreathOption.Plan(s, need, out _, cancellation), cancellation);
                if (files is not null)
                {
                    rounds.PrintJson(terminal, files);
                }
                else
                {
                    rounds.Print(terminal);
                }

                return rounds.Fits ? ExitCode.Fine : ExitCode.DoesNotFit;
            }

            var report = Report.Of(wanted, score, people, need, r => drill.ToOptions(r, parsed), cancellation);
            if (files is not null)
            {
                report.PrintJson(terminal, files);
            }
            else
            {
                report.Print(terminal);
            }

            return report.Fits ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    /// <summary>The tempi at which the singers can sing the drill, for the practice page's slider; none if they cannot be found.</summary>
    private static TempoInterval? TempiOf(Drill drill, Score score, ValueList<Singer> singers, CancellationToken cancellation)
    {
        if (singers.IsEmpty || score.NoteCount > TempoWindow.MostNotes)
        {
            return null;
        }

        var window = TempoWindow.OfSpeeds(drill, singers, cancellationToken: cancellation).FirstOrDefault(w => w.Speed == drill.Speeds[0]);
        IEnumerable<TempoInterval> intervals = window?.Intervals ?? [];
        return intervals.FirstOrDefault(i => i.Slowest <= drill.Tempo.Start && drill.Tempo.Start <= i.Fastest) ?? intervals.FirstOrDefault();
    }

    private static IScoreFormat ContourFormat(string path, IReadOnlyList<string> others, ValueList<Singer> singers)
    {
        var options = new ContourOptions { Band = singers.Count == 1 ? singers[0].Band : null };
        if (others.Any(p => Path.GetFullPath(p) == Path.GetFullPath(path)))
        {
            throw new InputException($"--out and --contour both name {path}");
        }

        return Formats.Of(path) switch
        {
            SvgFormat => new SvgFormat(options),
            PdfFormat => new PdfFormat(options),
            PngFormat => new PngFormat(options),
            _ => throw new InputException($"--contour must end in .svg, .pdf or .png, not '{path}'"),
        };
    }
}

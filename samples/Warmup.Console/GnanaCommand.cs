using System.CommandLine;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Sheets;

namespace Warmup.Cli;

/// <summary><c>warmup gnana</c>: lines to hear and write down, on sheets and pages with the svaras hidden and a key.</summary>
internal static class GnanaCommand
{
    private const int UsualLines = 8;

    // In a scale with a note and the same note raised the letter alone does not tell which.
    private static readonly Syllables Numbered = Syllables.Custom("svaras by number", degree => degree.ToString());

    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var drill = new DrillOptions(needsPattern: false);
        var level = new Option<string>("--difficulty") { Description = $"How hard the lines are, 1 to {SvaraGnana.HardestLevel}.", DefaultValueFactory = _ => "1" };
        var count = new Option<string>("--count") { Description = $"How many lines, 1 to {SvaraGnana.MostLines}.", DefaultValueFactory = _ => $"{UsualLines}" };
        var seed = new Option<string>("--seed") { Description = "The number that the lines are drawn from; the same number gives the same lines.", DefaultValueFactory = _ => "1" };
        var raised = new Option<bool>("--raised") { Description = "Name the raised note: the tonic, then the scale with one note raised by a semitone." };
        var files = new Option<string[]>("--out")
        {
            Description = "The file to write, .txt .html .svg .pdf .png with the svaras hidden and a key, .wav .mid to hear. Repeat it for more files.",
            Required = true,
            Arity = ArgumentArity.OneOrMore,
            AllowMultipleArgumentsPerToken = false,
        };
        var answers = new Option<bool>("--call-and-response") { Description = "Leave a silence as long as each line after it, to write it down or sing it." };
        var force = new Option<bool>("--force") { Description = "Replace files that exist." };
        var json = new Option<bool>("--json") { Description = "Print what was written as JSON." };
        var command = new Command("gnana", "Makes svara-gnana: lines to hear and write down, and their key.") { level, count, seed, raised, files, answers, force, json };
        drill.AddTo(command);
        command.SetAction(parsed =>
        {
            var wanted = Listening(
                drill.Read(parsed),
                drill.Title(parsed),
                OptionValue.Whole("--difficulty", parsed.GetValue(level)!, 1, SvaraGnana.HardestLevel),
                OptionValue.Whole("--count", parsed.GetValue(count)!, 1, SvaraGnana.MostLines),
                (ulong)OptionValue.Whole("--seed", parsed.GetValue(seed)!, 0, int.MaxValue),
                parsed.GetValue(raised));
            Score Made(Drill from) => parsed.GetValue(answers) ? from.ToScore(cancellation).WithAnswers() : from.ToScore(cancellation);
            var (shown, heard) = (Made(wanted), Made(wanted with { Syllables = Syllables.Vowel() }));
            var written = parsed.GetValue(files)!.Select(p => (Path: p, Format: Hidden(p, Formats.Of(p), parsed.GetValue(raised) ? Numbered : null))).ToList();
            Formats.WriteTogether(
                written.ConvertAll(f => Formats.File(f.Path, f.Format, f.Format.Extensions.Contains(".mid") ? heard : shown, cancellation)),
                parsed.GetValue(force));
            if (parsed.GetValue(json))
            {
                terminal.Json(new WrittenReport(WrittenReport.Name, shown.Title, written.ConvertAll(f => new WrittenFile(f.Path, f.Format.Name))), ConsoleJson.Default.WrittenReport);
                return ExitCode.Fine;
            }

            foreach (var (path, format) in written)
            {
                terminal.Out.WriteLine($"wrote {path} ({format.Name})");
            }

            return ExitCode.Fine;
        });
        return command;
    }

    private static Drill Listening(Drill drill, string? asked, int level, int lines, ulong seed, bool isRaised)
    {
        var title = asked ?? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{drill.Scale.Name}: {(isRaised ? "name the raised note" : "hear and write down")}, difficulty {level}, seed {seed}");
        if (!isRaised)
        {
            return drill with { Pattern = SvaraGnana.Lines(drill.Scale, level, lines, seed), Title = title };
        }

        try
        {
            var (scale, pattern) = SvaraGnana.RaisedNotes(drill.Scale, level, lines, seed);
            return drill with { Scale = scale, Pattern = pattern, Title = title };
        }
        catch (ArgumentException fault)
        {
            throw new InputException($"--raised: {fault.Message}");
        }
    }

    private static IScoreFormat Hidden(string path, IScoreFormat format, Syllables? letters) => format switch
    {
        TextSheetFormat => new TextSheetFormat(TextSheetOptions.Default with { HasHiddenNotes = true, Letters = letters }),
        HtmlFormat => new HtmlFormat(HtmlOptions.Default with { HasHiddenNotes = true, Letters = letters }),
        SvgFormat => new SvgFormat(new SheetOptions { HasHiddenNotes = true, Letters = letters }),
        PdfFormat => new PdfFormat(new SheetOptions { HasHiddenNotes = true, Letters = letters }),
        PngFormat => new PngFormat(new SheetOptions { HasHiddenNotes = true, Letters = letters }),
        MusicXmlFormat or MxlFormat => throw new InputException($"--out: notation shows every note, so '{path}' would be the answer; write .txt .html .svg .pdf .png .wav or .mid"),
        _ => format,
    };
}

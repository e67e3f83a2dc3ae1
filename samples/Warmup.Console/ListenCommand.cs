using System.CommandLine;
using Spectre.Console;
using Warmup.Takes;

namespace Warmup.Cli;

/// <summary><c>warmup listen</c>: holds a recording against its drill.</summary>
internal static class ListenCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var drill = new DrillOptions();
        var climb = new ClimbOptions();
        var singers = new SingerOptions(required: false);
        var take = new Option<string>("--take") { Description = "The recording: WAV, MP3, Ogg Vorbis or Ogg Opus; M4A and WebM where ffmpeg is installed. Half an hour at most.", Required = true };
        var breaths = new BreathOption();
        var answers = new Option<bool>("--call-and-response") { Description = "The singer answers each line in the silence after it." };
        var json = new Option<bool>("--json") { Description = "Print the report as JSON." };
        var command = new Command("listen", "Holds a recording against its drill, note by note.");
        command.Add(take);
        drill.AddTo(command);
        climb.AddTo(command);
        singers.AddTo(command);
        breaths.AddTo(command);
        command.Add(answers);
        command.Add(json);
        command.Add(CautionOption.Create());
        command.SetAction(parsed =>
        {
            var wanted = drill.Read(parsed);
            var people = singers.Read(parsed);
            var score = climb.ToScore(parsed, drill, wanted, cancellation);
            score = breaths.Read(parsed, people) is { } need ? BreathOption.Plan(score, need, out _, cancellation) : score;
            score = parsed.GetValue(answers) ? score.WithAnswers() : score;
            TakeReport report;
            using (terminal.Working($"listening to {parsed.GetValue(take)}"))
            {
                report = Hear(parsed.GetValue(take)!, score, cancellation);
            }

            if (parsed.GetValue(json))
            {
                terminal.Out.Write(TakeJson.Write(report));
            }
            else
            {
                Print(terminal, score, report);
            }

            return report.IsDrill ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    private static TakeReport Hear(string path, Score score, CancellationToken cancellation)
    {
        using var sound = TakeFile.Open("--take", path);
        try
        {
            return Listener.Hear(score, sound, cancellation);
        }
        catch (SoundException broken)
        {
            throw new InputException($"--take: {path}: {broken.Message}");
        }
    }

    private static void Print(Terminal terminal, Score score, TakeReport report)
    {
        foreach (var words in TakeSummary.Words(score, report))
        {
            terminal.Out.WriteLine(words);
        }

        if (!report.IsDrill)
        {
            return;
        }

        terminal.Out.WriteLine();
        var table = new Table().Border(TableBorder.Simple);
        foreach (var column in (string[])["line", "note", "from", "to", "cents", "late", "what was heard"])
        {
            table.AddColumn(column);
        }

        var rounds = report.Notes.Any(n => n.Round > 1);
        foreach (var note in report.Notes)
        {
            table.AddRow(
                rounds ? $"{note.Round}.{note.Line}" : $"{note.Line}",
                Terminal.Plain(note.Tone.ToString()),
                note.Onset is { } onset ? FormattableString.Invariant($"{onset:0.00} s") : string.Empty,
                note.End is { } end ? FormattableString.Invariant($"{end:0.00} s") : string.Empty,
                note.Cents is { } cents ? FormattableString.Invariant($"{cents:+0;-0;0}") : string.Empty,
                note.Late is { } late ? FormattableString.Invariant($"{late:+0;-0;0} ms") : string.Empty,
                Terminal.Plain(TakeMarks.Words(note)));
        }

        terminal.Rich.Write(table);
        Report.PrintCautions(terminal, score.Cautions);
    }
}

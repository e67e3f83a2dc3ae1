using System.CommandLine;
using Spectre.Console;
using Warmup.Plans;
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
        var files = new Option<string[]>("--out") { Description = $"Write the report to a file; its ending names the format: {TakeFiles.Endings}. Repeat it for more files.", AllowMultipleArgumentsPerToken = false };
        var force = new Option<bool>("--force") { Description = "Replace files that exist." };
        var log = new Option<string?>("--log") { Description = "With --date, note in this log that the drill was sung, at the tempo that was heard, and which lines stayed off. The next plan goes on from the log." };
        var date = new Option<string?>("--date") { Description = "The day of the take: 2026-12-01." };
        var tick = new Option<bool>("--tick") { Description = "With --log, the teacher's tick: the next plan may go on from this tempo. Without it the drill has its turn again." };
        var command = new Command("listen", "Holds a recording against its drill, note by note.");
        command.Add(take);
        drill.AddTo(command);
        climb.AddTo(command);
        singers.AddTo(command);
        breaths.AddTo(command);
        command.Add(answers);
        command.Add(json);
        command.Add(CautionOption.Create());
        command.Add(files);
        command.Add(force);
        command.Add(log);
        command.Add(date);
        command.Add(tick);
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

            LogEntry? entry = null;
            if (parsed.GetValue(log) is { } path && report.IsDrill)
            {
                var day = PlanOptions.ReadDate(parsed, date) ?? throw new InputException("--log needs the day of the take; add --date 2026-12-01");
                entry = Sung(day, drill.PatternName(parsed), wanted, report) with { IsTicked = parsed.GetValue(tick) };
                PlanLog.Append(path, entry);
            }

            var paths = parsed.GetValue(files) ?? [];
            Formats.WriteTogether([.. paths.Select(p => TakeFiles.Of(p, score, report))], parsed.GetValue(force));
            if (parsed.GetValue(json))
            {
                terminal.Out.Write(TakeJson.Write(report, score.Cautions));
            }
            else
            {
                Print(terminal, score, report);
                Say(terminal, parsed.GetValue(log), entry);
                foreach (var file in paths)
                {
                    terminal.Out.WriteLine($"wrote {file}");
                }
            }

            return report.IsDrill ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    /// <summary>The line of the log: at the tempo that was heard, and never a faster one than the drill's.</summary>
    private static LogEntry Sung(DateOnly day, string pattern, Drill drill, TakeReport report)
    {
        var tempi = report.Tempi.Select(t => t.Tempo).Order().ToList();
        var wanted = (int)Math.Round(drill.Tempo.Start.ToDouble());
        var heard = tempi.Count == 0 ? wanted : (int)Math.Round(tempi[tempi.Count / 2]);
        return new LogEntry
        {
            Date = day,
            ScaleName = drill.Scale.Name,
            ExerciseName = pattern.Length <= 100 ? pattern : pattern[..100],
            Tempo = Math.Clamp(heard, Math.Min(Tempo.Slowest, wanted), wanted),
            OffLines = TakeSummary.OffLines(report),
        };
    }

    private static void Say(Terminal terminal, string? log, LogEntry? entry)
    {
        if (entry is not null)
        {
            terminal.Out.WriteLine(entry.OffLines.IsEmpty
                ? $"noted in {log}: no line stayed off"
                : $"noted in {log}: of these lines more than a quarter stayed off: {string.Join(", ", entry.OffLines)}{(entry.IsTicked ? "; the tick overrules it" : "; the next plan gives the drill its turn again")}");
        }
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

using System.CommandLine;

namespace Warmup.Cli;

/// <summary><c>warmup check</c>: checks a drill against singers.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var drill = new DrillOptions();
        var climb = new ClimbOptions();
        var singers = new SingerOptions(required: true);
        var breaths = new BreathOption();
        var json = new Option<bool>("--json") { Description = "Print the findings as JSON." };
        var command = new Command("check", "Checks whether a drill fits singers, and finds what would make it fit.");
        drill.AddTo(command);
        climb.AddTo(command);
        singers.AddTo(command);
        breaths.AddTo(command);
        command.Add(json);
        command.Add(CautionOption.Create());
        command.SetAction(parsed =>
        {
            var wanted = drill.Read(parsed);
            var people = singers.Read(parsed);
            var need = breaths.Read(parsed, people);
            var score = climb.ToScore(parsed, drill, wanted, cancellation);
            var said = string.Empty;
            score = need is null ? score : BreathOption.Plan(score, need, out said, cancellation);
            if (climb.Read(parsed, drill, wanted) is { } rounds)
            {
                var report = ClimbReport.Of(rounds, score, people, s => need is null ? s : BreathOption.Plan(s, need, out _, cancellation), cancellation);
                if (parsed.GetValue(json))
                {
                    report.PrintJson(terminal);
                }
                else
                {
                    terminal.Out.Write(said.Length == 0 ? string.Empty : said + Environment.NewLine);
                    report.Print(terminal);
                }

                return report.Fits ? ExitCode.Fine : ExitCode.DoesNotFit;
            }

            var drillReport = Report.Of(wanted, score, people, need, r => drill.ToOptions(r, parsed), cancellation);
            if (parsed.GetValue(json))
            {
                drillReport.PrintJson(terminal);
            }
            else
            {
                terminal.Out.Write(said.Length == 0 ? string.Empty : said + Environment.NewLine);
                drillReport.Print(terminal, () => ClassTable.PrintInShort(terminal, wanted, people, cancellation));
            }

            return drillReport.Fits ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }
}

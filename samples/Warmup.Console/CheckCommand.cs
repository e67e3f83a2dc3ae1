using System.CommandLine;

namespace Warmup.Cli;

/// <summary><c>warmup check</c>: checks a drill against singers.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var drill = new DrillOptions();
        var singers = new SingerOptions(required: true);
        var json = new Option<bool>("--json") { Description = "Print the findings as JSON." };
        var command = new Command("check", "Checks whether a drill fits singers, and finds what would make it fit.");
        drill.AddTo(command);
        singers.AddTo(command);
        command.Add(json);
        command.SetAction(parsed =>
        {
            var wanted = drill.Read(parsed);
            var people = singers.Read(parsed);
            var score = wanted.ToScore(cancellation);
            var fits = parsed.GetValue(json)
                ? Report.PrintJson(terminal, score, people)
                : Report.Print(terminal, score, people, () => ClassTable.PrintInShort(terminal, wanted, people, cancellation));
            return fits ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }
}

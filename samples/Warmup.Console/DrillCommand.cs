using System.CommandLine;

namespace Warmup.Cli;

/// <summary><c>warmup drill</c>: makes a drill and writes it to files.</summary>
internal static class DrillCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var drill = new DrillOptions();
        var singers = new SingerOptions(required: false);
        var files = new Option<string[]>("--out")
        {
            Description = $"The file to write, by ending: {string.Join(" ", ((IEnumerable<IScoreFormat>)Formats.All).SelectMany(f => (IEnumerable<string>)f.Extensions))}. Repeat it for more files.",
            Required = true,
            Arity = ArgumentArity.OneOrMore,
            AllowMultipleArgumentsPerToken = false,
        };
        var breaths = new Option<bool>("--plan-breaths") { Description = "Put in the least costly breaths that all singers of --singers together can do with." };
        var force = new Option<bool>("--force") { Description = "Replace files that exist." };
        var answers = new Option<bool>("--call-and-response") { Description = "In the files, leave the time of each line silent behind it for the singer's answer." };
        var command = new Command("drill", "Makes a drill and writes it to files.");
        drill.AddTo(command);
        singers.AddTo(command);
        command.Add(files);
        command.Add(breaths);
        command.Add(force);
        command.Add(answers);
        command.SetAction(parsed =>
        {
            var wanted = drill.Read(parsed);
            var people = singers.Read(parsed);
            var score = wanted.ToScore(cancellation);
            if (parsed.GetValue(breaths))
            {
                score = WithPlannedBreaths(score, people, terminal, cancellation);
            }

            Formats.WriteAll(parsed.GetValue(answers) ? score.WithAnswers() : score, parsed.GetValue(files)!, parsed.GetValue(force), terminal, cancellation);
            return Report.Print(terminal, score, people) ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    private static Score WithPlannedBreaths(Score score, ValueList<Singer> singers, Terminal terminal, CancellationToken cancellation)
    {
        if (singers.IsEmpty)
        {
            throw new InputException("--plan-breaths needs the class that breathes; add --singers FILE");
        }

        if (!BreathPlan.TryMake(score, BreathNeed.Of(singers), out var plan, out var refusal, cancellation))
        {
            terminal.Out.WriteLine($"no breaths were put in: {refusal}");
            return score;
        }

        terminal.Out.WriteLine($"breaths: {plan}");
        return score.WithBreaths(plan!);
    }
}

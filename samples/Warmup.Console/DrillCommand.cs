using System.CommandLine;
using Warmup.Sheets;

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

            var paths = parsed.GetValue(files)!;
            var tempi = paths.Any(p => Formats.Of(p) is HtmlFormat) ? TempiOf(wanted, score, people, cancellation) : null;
            Formats.WriteAll(parsed.GetValue(answers) ? score.WithAnswers() : score, paths, parsed.GetValue(force), terminal, cancellation, tempi);
            return Report.Print(terminal, score, people) ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    /// <summary>The tempi at which the singers can sing the drill, for the practice page's slider; none where that cannot be told.</summary>
    private static TempoInterval? TempiOf(Drill drill, Score score, ValueList<Singer> singers, CancellationToken cancellation)
    {
        if (singers.IsEmpty || score.NoteCount > TempoWindow.MostNotes)
        {
            return null;
        }

        var window = ((IEnumerable<TempoWindow>)TempoWindow.OfSpeeds(drill, singers, cancellation)).FirstOrDefault(w => w.Speed == drill.Speed);
        IEnumerable<TempoInterval> intervals = window?.Intervals ?? [];
        return intervals.FirstOrDefault(i => i.Slowest <= drill.Tempo && drill.Tempo <= i.Fastest) ?? intervals.FirstOrDefault();
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

using System.CommandLine;
using Warmup.Drawing;

namespace Warmup.Cli;

/// <summary><c>warmup fit</c>: on which tonic, with which breaths and at what tempo a class can sing a drill.</summary>
internal static class FitCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var drill = new DrillOptions(needsTonic: false);
        var singers = new SingerOptions(required: true);
        var json = new Option<bool>("--json") { Description = "Print the report as JSON." };
        var chart = new Option<string?>("--chart") { Description = "Draw a chart of the singers' ranges and the drill's notes: an .svg file." };
        var force = new Option<bool>("--force") { Description = "Replace a chart that exists." };
        var command = new Command("fit", "Finds the tonic, the breaths and the tempi that suit singers, and draws their ranges.");
        drill.AddTo(command);
        singers.AddTo(command);
        command.Add(json);
        command.Add(chart);
        command.Add(force);
        command.Add(CautionOption.Create());
        command.SetAction(parsed =>
        {
            var wanted = drill.Read(parsed);
            var people = singers.Read(parsed);
            var path = parsed.GetValue(chart);
            if (path is not null)
            {
                RefuseChart(path, parsed.GetValue(force));
            }

            if (!drill.HasTonic(parsed))
            {
                wanted = OnTheBestTonic(wanted, people, cancellation);
            }

            var fit = ClassFit.Of(wanted, people, cancellation);
            if (path is not null)
            {
                AtomicFile.Write(path, stream => RangeChart.Write(fit.Score, RangeBars.Of(fit.Score, people), stream, cancellationToken: cancellation), parsed.GetValue(force));
            }

            if (parsed.GetValue(json))
            {
                terminal.Json(ClassJson.Of(fit), ConsoleJson.Default.ClassJson);
            }
            else
            {
                ClassTable.Print(terminal, fit);
                if (path is not null)
                {
                    terminal.Out.WriteLine($"wrote {path} (range chart)");
                }

                Report.PrintCautions(terminal, Cautions.All);
            }

            return fit.Report.IsFitForAll ? ExitCode.Fine : ExitCode.DoesNotFit;
        });
        return command;
    }

    private static Drill OnTheBestTonic(Drill drill, ValueList<Singer> singers, CancellationToken cancellation)
    {
        var tonics = drill.ToScore(cancellation).RankTonics(singers);
        return tonics.IsEmpty ? drill : drill with { Tonic = WrittenTonic.Of(tonics[0].Octaves.ConvertAll(o => o.Midi)) };
    }

    private static void RefuseChart(string path, bool force)
    {
        if (!Path.GetExtension(path).Equals(".svg", StringComparison.OrdinalIgnoreCase))
        {
            throw new InputException($"--chart must end in .svg, not '{path}'");
        }

        Formats.RefuseUnwritable(path, force);
    }
}

/// <summary>All that <c>warmup fit</c> prints.</summary>
internal sealed record ClassFit(
    Drill Drill, Score Score, ValueList<Singer> Singers, ClassReport Report, ValueList<TempoWindow> Windows, BreathPlan? Plan, Finding? NoPlan, ValueList<ClassBreath> ClassBreaths)
{
    /// <summary>The words of the talas or of solfege, as the drill's meter and syllables have it.</summary>
    public MeterWords Words => WordsOf(Drill);

    /// <summary>The words of the talas or of solfege for a drill.</summary>
    public static MeterWords WordsOf(Drill drill) => MeterWords.Of(drill.Meter, drill.Syllables == Syllables.Solfa || drill.Syllables == Syllables.LaBasedSolfa);

    public static ClassFit Of(Drill drill, ValueList<Singer> singers, CancellationToken cancellation)
    {
        var score = drill.ToScore(cancellation);
        BreathPlan.TryMake(score, BreathNeed.Of(singers), out var plan, out var refusal, cancellation);
        ValueList<TempoWindow> windows = score.NoteCount <= TempoWindow.MostNotes ? TempoWindow.OfSpeeds(drill, singers, cancellationToken: cancellation) : [];
        return new ClassFit(drill, score, singers, ClassReport.Of([drill], singers, cancellationToken: cancellation), windows, plan, refusal, ClassBreath.Of([score], singers, SingingTable.MostSingers, cancellation));
    }
}

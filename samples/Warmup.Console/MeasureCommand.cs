using System.CommandLine;
using System.Text.Json.Serialization;
using Warmup.Takes;

namespace Warmup.Cli;

/// <summary><c>warmup measure</c>: a voice's comfortable ends and sustained tone from recordings, as a dated measurement for the class's file.</summary>
internal static class MeasureCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var range = new Option<string>("--lowest-highest") { Description = "A recording of a slow glide, or of steps, from the middle down to the lowest and up to the highest comfortable note, alone in a silent room.", Required = true };
        var tones = new Option<string[]>("--sustained") { Description = "A recording of one sustained tone; repeat it for more. Three are usual, the longest counts.", Required = true, Arity = ArgumentArity.OneOrMore, AllowMultipleArgumentsPerToken = true };
        var singers = new SingerOptions(required: false);
        var date = new Option<string?>("--date") { Description = "The day of the measurement: 2026-12-01." };
        var file = new Option<string?>("--out") { Description = "With --singers, --alias and --date, write the class with the new measurement: .json or .csv." };
        var force = new Option<bool>("--force") { Description = "Replace a file that exists." };
        var json = new Option<bool>("--json") { Description = "Print what was measured as JSON." };
        var command = new Command("measure", "Measures a voice from recordings: the comfortable ends and the sustained tone.");
        command.Add(range);
        command.Add(tones);
        singers.AddTo(command);
        foreach (var option in (Option[])[date, file, force, json, CautionOption.Create()])
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var people = singers.ReadClass(parsed);
            var day = PlanOptions.ReadDate(parsed, date);
            var path = parsed.GetValue(file);
            if (path is not null && (people.IsEmpty || parsed.GetValue(singers.Alias) is null || day is null))
            {
                throw new InputException("--out needs --singers, --alias and --date: whose measurement it is, and of which day");
            }

            var who = path is null ? null : singers.Chosen(parsed, people)[0];
            var heard = Measured("--lowest-highest", parsed.GetValue(range)!, s => VoiceMeasuring.Range(s, cancellation));
            var trials = parsed.GetValue(tones)!.Select(t => Measured("--sustained", t, s => VoiceMeasuring.Sustained(s, cancellation))).ToValueList();
            var measurement = new Measurement(day ?? DateOnly.MinValue, heard.Low, heard.High, trials);
            if (parsed.GetValue(json))
            {
                terminal.Json(
                    new MeasureReport("urn:warmup:voice:1", Math.Round(heard.LowHz, 2), Math.Round(heard.HighHz, 2), $"{heard.Low}", $"{heard.High}", [.. trials.Select(t => t.ToDouble())], [.. MeasuringCautions.Texts]),
                    MeasureJson.Default.MeasureReport);
            }
            else
            {
                foreach (var step in MeasuringCautions.First)
                {
                    terminal.Out.WriteLine(step.Text);
                }

                Report.PrintCautions(terminal, Cautions.All);
                terminal.Out.WriteLine();
                terminal.Out.WriteLine($"comfortable range: {heard}");
                terminal.Out.WriteLine(FormattableString.Invariant($"sustained tones: {string.Join(", ", trials.Select(t => FormattableString.Invariant($"{t.ToDouble():0.00} s")))}; the longest counts: {measurement.SustainedSeconds.ToDouble():0.00} s"));
            }

            if (path is not null)
            {
                SingersCommand.Write(people.ConvertAll(s => s == who ? s.With(measurement) : s), path, parsed.GetValue(force));
                if (!parsed.GetValue(json))
                {
                    terminal.Out.WriteLine($"wrote {path}");
                }
            }

            return ExitCode.Fine;
        });
        return command;
    }

    private static T Measured<T>(string option, string path, Func<SoundSource, T> measure)
    {
        using var sound = TakeFile.Open(option, path);
        try
        {
            return measure(sound);
        }
        catch (SoundException refused)
        {
            throw new InputException($"{option}: {path}: {refused.Message}");
        }
    }
}

/// <summary>What is said before anything is measured.</summary>
internal static class MeasuringCautions
{
    public static IEnumerable<MeasuringStep> First => MeasuringSteps.All.Where(s => s.Part == MeasuringSteps.All[0].Part);

    public static IEnumerable<string> Texts => First.Select(s => s.Text).Concat(Cautions.All.Select(c => c.Text));
}

/// <summary>What was measured, as JSON.</summary>
internal sealed record MeasureReport(string Schema, double LowHz, double HighHz, string Low, string High, IReadOnlyList<double> SustainedSeconds, IReadOnlyList<string> Cautions);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(MeasureReport))]
internal sealed partial class MeasureJson : JsonSerializerContext;

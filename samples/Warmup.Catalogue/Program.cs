// Makes every drill of the catalogue as MIDI and MusicXML in memory, keeps none, and prints how many a second that is.
//
// Run it with: dotnet run -c Release --project samples/Warmup.Catalogue [-- --workers 1 --workers 2 --every 1]
// It exits with 1 if two numbers of workers make different bytes, and with 2 if the options are wrong.
using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using Warmup;
using Warmup.Samples;

namespace Warmup.WholeCatalogue;

internal static class Program
{
    private const int LargestStep = 1_000_000;

    // Enough drills for the runtime to compile the code that the others run.
    private const int WarmUpDrills = 2_000;

    public static int Main(string[] args) => Run(args, Console.Out, Console.Error);

    public static int Run(string[] args, TextWriter output, TextWriter error)
    {
        var workers = new Option<int[]>("--workers")
        {
            Description = $"How many drills are made at once, 1 to {OrderedParallel.MostWorkers}; repeat it to compare. 1 and 2 by default.",
            DefaultValueFactory = _ => [1, 2],
        };
        var every = new Option<int>("--every")
        {
            Description = $"Make only each n-th drill, 1 to {LargestStep}; 1 by default.",
            DefaultValueFactory = _ => 1,
        };
        var root = new RootCommand("Makes every drill of the catalogue and prints how many a second that is.") { workers, every };
        root.SetAction((parsed, stop) => Task.FromResult(Compare(parsed.GetValue(workers)!, parsed.GetValue(every), output, stop)));
        var read = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (read.Errors.Count > 0)
        {
            error.WriteLine(read.Errors[0].Message);
            return 2;
        }

        try
        {
            return read.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = output, Error = error });
        }
        catch (ArgumentOutOfRangeException refused)
        {
            error.WriteLine(refused.Message);
            return 2;
        }
    }

    private static int Compare(int[] workers, int every, TextWriter output, CancellationToken stop)
    {
        if (every is < 1 or > LargestStep)
        {
            throw new ArgumentOutOfRangeException(nameof(every), $"--every must be between 1 and {LargestStep}, not {every}");
        }

        var runs = workers.Select(count => new OrderedParallel { Workers = count }).ToList();
        output.WriteLine(Text($"{CatalogueDrills.Count} drills: {CatalogueDrills.Scales} scales x {CatalogueDrills.Tonics} tonics x {CatalogueDrills.Exercises.Count} patterns x {CatalogueDrills.Speeds.Count} speeds; {(every == 1 ? "all are made" : $"one in {every} is made")}"));
        _ = DrillFiles.Make(runs[0], CatalogueDrills.Each(Math.Max(every, CatalogueDrills.Count / WarmUpDrills)), stop);
        var totals = new List<Totals>();
        foreach (var run in runs)
        {
            var clock = Stopwatch.StartNew();
            var progress = new Progress($"making drills with {run.Workers} at once", ReferenceEquals(output, Console.Out) ? Progress.Terminal : null, TimeProvider.System);
            var total = DrillFiles.Make(run, CatalogueDrills.Each(every), stop, done => progress.Reach((double)done * every / CatalogueDrills.Count));
            var seconds = clock.Elapsed.TotalSeconds;
            progress.Dispose();
            if (totals.Count == 0)
            {
                Describe(total, output);
            }

            totals.Add(total);
            output.WriteLine(Text($"workers {run.Workers}: {total.Made / seconds:0} drills/s, {seconds:0.00} s, checksum {total.Checksum:x16}, peak memory {PeakMemory()} MB"));
        }

        if (totals.All(total => total.Equals(totals[0])))
        {
            return 0;
        }

        output.WriteLine("different numbers of workers made different bytes");
        return 1;
    }

    private static void Describe(Totals total, TextWriter output)
    {
        output.WriteLine(Text($"made {total.Made}, refused {total.Refused}"));
        foreach (var (reason, count) in total.Refusals.OrderByDescending(r => r.Value).ThenBy(r => r.Key, StringComparer.Ordinal))
        {
            output.WriteLine(Text($"  {count} refused: {reason}"));
        }

        var made = Math.Max(1, total.Made);
        output.WriteLine(Text($"notes {total.Notes}, {(double)total.Notes / made:0.0} a drill"));
        output.WriteLine(Text($"MIDI bytes {total.MidiBytes}, {total.MidiBytes / made} a drill"));
        output.WriteLine(Text($"MusicXML bytes {total.XmlBytes}, {total.XmlBytes / made} a drill"));
    }

    private static long PeakMemory()
    {
        using var self = Process.GetCurrentProcess();
        return self.PeakWorkingSet64 >> 20;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

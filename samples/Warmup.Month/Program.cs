using System.Runtime.InteropServices;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Plans;
using Warmup.Sheets;

namespace Warmup.Month;

/// <summary>Plans a month and writes a sheet, MIDI and MusicXML for each day. You, or a timer of the system, can stop it and start it again.</summary>
internal static class Program
{
    private const int Done = 0;
    private const int WrongInput = 2;
    private const int Stopped = 3;

    public static int Main(string[] args)
    {
        using var stop = new CancellationTokenSource();
        void Stop(PosixSignalContext signal)
        {
            signal.Cancel = true; // the program itself ends, after a whole file
            stop.Cancel();
        }

        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        return Run(args, Console.Out, Console.Error, stop.Token);
    }

    /// <summary>Runs the program.</summary>
    /// <returns>0 if all files are there, 2 on wrong input, 3 if it was stopped and can go on.</returns>
    public static int Run(string[] args, TextWriter output, TextWriter error, CancellationToken cancellation)
    {
        try
        {
            var options = MonthOptions.Read(args);
            var made = WarmupPlan.Make(options.Request, cancellation);
            foreach (var leftOut in made.LeftOut)
            {
                output.WriteLine(leftOut);
            }

            var work = new MonthWork(options.Folder, [new TextSheetFormat(), new MidiFormat(), new MusicXmlFormat()]);
            var report = work.Run(made.Plan, options.Overwrite, path => output.WriteLine($"wrote {path}"), cancellation);
            output.WriteLine(report);
            foreach (var caution in made.Cautions)
            {
                output.WriteLine(caution.Text);
            }

            return report.IsDone ? Done : Stopped;
        }
        catch (OperationCanceledException)
        {
            output.WriteLine("stopped before the first file");
            return Stopped;
        }
        catch (Exception refused) when (refused is ArgumentException or FormatException or PlanImpossibleException or IOException or UnauthorizedAccessException or ExportException)
        {
            error.WriteLine(refused is WarmupFormatException format ? format.Error.ToString() : refused.Message);
            return WrongInput;
        }
    }
}

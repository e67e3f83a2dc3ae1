using System.Buffers;
using System.Diagnostics;
using System.Globalization;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.Benchmarks;

/// <summary>
/// The first drill of a fresh process: the program starts itself again and again, and each time the new process tells the milliseconds
/// from its first call of the library to the bytes. The program of all libraries, tests/Warmup.Smoke, does it too, compiled beforehand.
/// </summary>
internal static class FirstDrill
{
    public const string Command = "first";

    private const int Processes = 15;
    private static readonly string[] Cases = ["written-out midi", "written-out musicxml", "by-name midi", "by-name musicxml"];

    /// <summary>Does what a command line asks for, where it asks for this.</summary>
    /// <returns>Whether it does.</returns>
    public static bool TryRun(string[] args)
    {
        switch (args)
        {
            case [Command]:
                Measure();
                return true;
            case [Command, var which]:
                Run(which);
                return true;
            default:
                return false;
        }
    }

    /// <summary>Measures all cases and prints them.</summary>
    public static void Measure()
    {
        Console.WriteLine($"| first drill of a fresh process ({Processes} processes each) | least | median | most |");
        Console.WriteLine("|---|---|---|---|");
        foreach (var which in Cases)
        {
            var times = Enumerable.Range(0, Processes).Select(_ => InNewProcess(which)).Order().ToArray();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {which} | {times[0]:0.0} ms | {times[Processes / 2]:0.0} ms | {times[^1]:0.0} ms |"));
        }
    }

    /// <summary>What the new process does.</summary>
    private static void Run(string which)
    {
        var buffer = new ArrayBufferWriter<byte>(1 << 17);
        var start = Stopwatch.GetTimestamp();
        var drill = new Drill
        {
            Scale = which.StartsWith("by-name", StringComparison.Ordinal) ? Catalogue.Default.Read("Mohanam") : Scale.Parse("S R2 G3 P D2 S'"),
            Pattern = Pattern.Parse("ladder + ladder.reversed + ladder.ends"),
            Tonic = Tonic.Parse("G3"),
        };
        var score = drill.ToScore();
        if (which.EndsWith("midi", StringComparison.Ordinal))
        {
            new MidiFormat().Write(score, buffer);
        }
        else
        {
            new MusicXmlFormat().Write(score, buffer);
        }

        Console.WriteLine(Stopwatch.GetElapsedTime(start).TotalMilliseconds.ToString(CultureInfo.InvariantCulture));
    }

    private static double InNewProcess(string which)
    {
        // Started as this process was: by its own launcher, or by the dotnet command.
        var info = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true };
        if (Path.GetFileNameWithoutExtension(info.FileName) == "dotnet")
        {
            info.ArgumentList.Add(Environment.GetCommandLineArgs()[0]);
        }

        info.ArgumentList.Add(Command);
        info.ArgumentList.Add(which);
        using var process = Process.Start(info)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return double.Parse(text, CultureInfo.InvariantCulture);
    }
}

using System.Globalization;
using System.Runtime.CompilerServices;
using BenchmarkDotNet.Running;

namespace Warmup.Benchmarks;

internal static class Program
{
    public static void Main(string[] args)
    {
        switch (args)
        {
            case [FirstDrill.Command, ..] when FirstDrill.TryRun(args):
                break;
            case [Report.JobCommand]:
                Report.PrintJob();
                Report.PrintGrowth();
                break;
            case [Report.Command]:
                Report.Print();
                break;
            case [PageReport.Command]:
                PageReport.Print(stride: 1009);
                break;
            case [PageReport.Command, var stride]:
                PageReport.Print(int.Parse(stride, CultureInfo.InvariantCulture));
                break;
            default:
                Choose(args);
                break;
        }
    }

    // Not inlined, so that a fresh process that measures its first drill loads nothing of the benchmarks.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Choose(string[] args) => BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}

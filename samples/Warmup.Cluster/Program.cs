// Works through a pattern enumeration on many processes or machines, with an Akka.NET cluster.
//
//   dotnet run -c Release --project samples/Warmup.Cluster -- count --size 12
//   dotnet run -c Release --project samples/Warmup.Cluster -- alone --size 5
//   dotnet run -c Release --project samples/Warmup.Cluster -- sample --size 10 --most 1000000000 --range 100000
//   dotnet run -c Release --project samples/Warmup.Cluster -- local --size 5 --workers 2
//
// For real machines, each with its own certificate (docs/scale.md):
//   certificates --out FOLDER --nodes first worker
//   coordinator --host ADDRESS --port 4053 --journal FILE --certificate FOLDER/first.pem
//   worker --join akka.ssl.tcp://warmup@ADDRESS:4053 --host ADDRESS --certificate FOLDER/worker.pem
// Exit codes: 0 done, 1 not done, 2 wrong usage.
using System.CommandLine;

namespace Warmup.ManyMachines;

internal static class Program
{
    public static int Main(string[] args)
    {
        var read = Commands.Create().Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (read.Errors.Count > 0)
        {
            Console.Error.WriteLine(read.Errors[0].Message);
            return 2;
        }

        try
        {
            return read.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (UsageException wrong)
        {
            Console.Error.WriteLine(wrong.Message);
            return 2;
        }
        catch (InvalidOperationException failed)
        {
            Console.Error.WriteLine(failed.Message);
            return 1;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("stopped");
            return 1;
        }
    }
}

/// <summary>Wrong usage, with what is allowed in the message.</summary>
internal sealed class UsageException(string message) : Exception(message);

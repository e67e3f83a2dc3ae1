using Akka.Actor;
using Akka.Dispatch;
using Akka.Event;

namespace Warmup.ManyMachines;

/// <summary>Writes the warnings of Akka.NET to the error stream, one line each, so that the output holds only results.</summary>
internal sealed class ErrorLog : ReceiveActor, IRequiresMessageQueue<ILoggerMessageQueueSemantics>
{
    public ErrorLog()
    {
        Receive<InitializeLogger>(_ => Sender.Tell(new LoggerInitialized()));
        Receive<LogEvent>(e => Console.Error.WriteLine($"{(e.LogLevel() == LogLevel.ErrorLevel ? "error" : "warning")}: {FirstLine(e.Message.ToString())}"));
    }

    private static string FirstLine(string? text) => text?.Split('\n', 2)[0].TrimEnd() ?? string.Empty;
}

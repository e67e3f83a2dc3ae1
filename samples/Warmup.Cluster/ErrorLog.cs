using Akka.Actor;
using Akka.Dispatch;
using Akka.Event;

namespace Warmup.ManyMachines;

/// <summary>Writes the engine's warnings to the error stream, a line each, so that the output holds results alone.</summary>
internal sealed class ErrorLog : ReceiveActor, IRequiresMessageQueue<ILoggerMessageQueueSemantics>
{
    public ErrorLog()
    {
        Receive<InitializeLogger>(_ => Sender.Tell(new LoggerInitialized()));
        Receive<LogEvent>(e => Console.Error.WriteLine($"{(e.LogLevel() == LogLevel.ErrorLevel ? "error" : "warning")}: {FirstLine(e.Message.ToString())}"));
    }

    private static string FirstLine(string? text) => text?.Split('\n', 2)[0].TrimEnd() ?? string.Empty;
}

using Akka.Actor;
using Akka.Dispatch;
using Akka.Event;

namespace Warmup.ManyMachines;

/// <summary>Writes the engine's warnings to the error stream, so that the output holds results alone.</summary>
internal sealed class ErrorLog : ReceiveActor, IRequiresMessageQueue<ILoggerMessageQueueSemantics>
{
    public ErrorLog()
    {
        Receive<InitializeLogger>(_ => Sender.Tell(new LoggerInitialized()));
        Receive<LogEvent>(e => Console.Error.WriteLine(e));
    }
}
